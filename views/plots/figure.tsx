import type { ComponentChildren } from "preact";
import type { Locale } from "../messages/language.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";

/** One drawing at a given width in user units. */
export interface Drawing {
  height: number;
  content: ComponentChildren;
}

/** The same data as rows of text; the first cell of each row heads it. */
export interface PlotTable {
  head: readonly string[];
  rows: readonly (readonly string[])[];
}

export interface FigureParts {
  /** unique on the page; the ids of title and description grow from it */
  id: string;
  caption: string;
  /** the plot in words, its description for whoever cannot see it */
  message: string;
  /** draws for a width; called for a phone and for a page */
  draw(width: number, id: string): Drawing;
  table: PlotTable;
  /** true where the words around it name the plot already */
  captionUnseen?: boolean;
  locale?: Locale;
}

/** Widths the plots are drawn for, in user units: a phone and a page. CSS shows the one that fits. */
export const plotWidths = { narrow: 344, wide: 800 } as const;

/**
 * A plot as a figure: caption, a drawing for narrow and one for wide places, and folded its data as a table. The script
 * of the page offers there to take the drawing out, with these data, as SVG or PNG. Letters keep their size on a phone,
 * since nothing wide is shrunk to fit.
 */
export function PlotFigure({ id, caption, message, draw, table, captionUnseen, ...asked }: FigureParts) {
  const spoken = useLocale();
  const locale = asked.locale ?? spoken;
  const t = tellerOf(locale);
  return (
    <figure class="plot" id={id}>
      <figcaption {...(captionUnseen ? { class: "unseen" } : {})}>{caption}</figcaption>
      {(["narrow", "wide"] as const).map((size) => {
        const own = `${id}-${size}`;
        const { height, content } = draw(plotWidths[size], own);
        return (
          <svg
            key={size}
            class={size}
            viewBox={`0 0 ${plotWidths[size]} ${Math.ceil(height)}`}
            role="img"
            aria-labelledby={`${own}-title ${own}-desc`}
          >
            <title id={`${own}-title`}>{caption}</title>
            <desc id={`${own}-desc`}>{message}</desc>
            {content}
          </svg>
        );
      })}
      <details>
        <summary>
          {t("frame.table")}
          <span class="unseen">: {caption}</span>
        </summary>
        <p class="row take-out" data-take-out={id} hidden>
          <span>{t("frame.take-out")}</span>
          {(["SVG", "PNG", "CSV"] as const).map((form) => (
            <button key={form} type="button" class="plain" data-form={form}>
              {form}
            </button>
          ))}
        </p>
        <DataTable {...table} caption={caption} />
      </details>
    </figure>
  );
}

/** A table of text whose first column heads the rows; scrolls by itself when it is too wide. */
function DataTable({ head, rows, caption }: PlotTable & { caption: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard
    <section class="table" tabIndex={0} aria-label={caption}>
      <table>
        <thead>
          <tr>
            {head.map((cell) => (
              <th key={cell} scope="col">
                {cell}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={index}>
              {row.map((cell, column) =>
                column === 0 ? (
                  <th key={head[column]} scope="row">
                    {cell}
                  </th>
                ) : (
                  <td key={head[column]}>{cell}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
