import type { ComponentChildren } from "preact";

/** A framed part of a page with its heading. */
export function Sheet({ id, title, children }: { id: string; title: string; children: ComponentChildren }) {
  return (
    <section class="sheet" aria-labelledby={`${id}-heading`}>
      <h2 id={`${id}-heading`}>{title}</h2>
      {children}
    </section>
  );
}

/** A part of a page that opens on demand; the figure that matters stands beside its title. */
export function Fold({
  id,
  title,
  note,
  open = false,
  remember,
  oneOf,
  children,
}: {
  id?: string;
  title: string;
  note?: ComponentChildren;
  open?: boolean | undefined;
  /** a browser keeps under this name whether it was open */
  remember?: string;
  /** of the folds under this name one is open at a time */
  oneOf?: string;
  children: ComponentChildren;
}) {
  return (
    <details class="fold" id={id} name={oneOf} data-remember={remember} open={open || undefined}>
      <summary {...(id !== undefined && { id: `${id}-heading` })}>
        {title} {note !== undefined && <span class="note">{note}</span>}
      </summary>
      {children}
    </details>
  );
}

/** Names with their values, one line each. Left-out values are not drawn. */
export function Facts({ facts }: { facts: readonly (readonly [name: string, value: ComponentChildren])[] }) {
  return (
    <dl class="facts">
      {facts
        .filter(([, value]) => value !== undefined && value !== null && value !== "")
        .map(([name, value]) => (
          <>
            <dt key={name}>{name}</dt>
            <dd>{value}</dd>
          </>
        ))}
    </dl>
  );
}

/** A caution where it matters: what can be hurt, and who decides. */
export function Caution({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <aside class="caution" aria-label={title}>
      <p>
        <strong>{title}</strong>
      </p>
      {children}
    </aside>
  );
}

/** A column of a table. */
export interface Column {
  head: ComponentChildren;
  /** figures stand at the right */
  number?: boolean;
}

/** A table with a caption; the first cell of a row heads it. Scrolls by itself when it is too wide. */
export function Rows({
  caption,
  columns,
  rows,
  foot,
  empty,
  id,
}: {
  caption: string;
  columns: readonly Column[];
  rows: readonly { key: string; cells: readonly ComponentChildren[]; voided?: boolean }[];
  foot?: readonly ComponentChildren[];
  /** what is said when there are no rows */
  empty: string;
  id?: string;
}) {
  if (rows.length === 0) return <p id={id}>{empty}</p>;
  const kind = (column: number) => (columns[column]?.number ? { class: "number" } : {});
  const headed = (column: number) => {
    const head = columns[column]?.head;
    return { ...kind(column), ...(typeof head === "string" && head !== "" ? { "data-head": head } : {}) };
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard
    <section class={columns.length > 2 ? "table stacks" : "table"} tabIndex={0} aria-label={caption} id={id}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ head }, column) => (
              <th key={String(column)} scope="col" {...kind(column)}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells, voided }) => (
            <tr key={key} class={voided ? "voided-row" : undefined}>
              {cells.map((cell, column) =>
                column === 0 ? (
                  <th key="head" scope="row" {...headed(column)}>
                    {cell}
                  </th>
                ) : (
                  <td key={String(column)} {...headed(column)}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
        {foot && (
          <tfoot>
            <tr>
              {foot.map((cell, column) => (
                <td key={String(column)} {...headed(column)}>
                  {cell}
                </td>
              ))}
            </tr>
          </tfoot>
        )}
      </table>
    </section>
  );
}
