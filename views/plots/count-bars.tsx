import type { Code } from "../../calibration/message.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";
import { fixed } from "../numbers.ts";
import { type Drawing, PlotFigure } from "./figure.tsx";
import { shortened, textWidth } from "./lanes.ts";

/** How many records came out how. */
export interface CountBar {
  name: string;
  consistent: number;
  notUnique: number;
  excluded: number;
  /** cannot tell, no claim, no valid measurement */
  undecided: number;
  mass_g: number;
  /** mean of U/ρ, null where there is none */
  relativeExpanded: number | null;
}

export interface CountBarsPlot {
  id: string;
  caption: string;
  /** what the bars stand for: "Operator" */
  of: string;
  bars: readonly CountBar[];
  /** bars that are drawn; the table has them all */
  most?: number;
}

const parts = [
  { of: "consistent", class: "bar", word: "state.consistent" },
  { of: "notUnique", class: "band-not-excluded", word: "state.consistent-not-unique" },
  { of: "excluded", class: "band-excluded", word: "state.excluded" },
  { of: "undecided", class: "band-open", word: "plots.undecided" },
] as const satisfies readonly { of: keyof CountBar; class: string; word: Code }[];

const countOf = (bar: CountBar): number => parts.reduce((sum, { of }) => sum + bar[of], 0);

/** Records counted by one thing, a bar each, parted by how they came out. */
export function CountBars({ id, caption, of, bars, most = 12 }: CountBarsPlot) {
  const locale = useLocale();
  const t = tellerOf(locale);
  const words = parts.map(({ word }) => t(word));
  const more = bars.length > most ? t("plots.more-in-data") : undefined;
  return (
    <PlotFigure
      id={id}
      caption={caption}
      captionUnseen
      message={bars
        .map((bar) => `${bar.name}: ${countOf(bar)}`)
        .slice(0, most)
        .join("; ")}
      draw={(width) => draw({ bars: bars.slice(0, most), words, more }, width)}
      table={{
        head: [of, t("plots.records"), ...words, t("plots.mass-g"), t("plots.mean-relative")],
        rows: bars.map((bar) => [
          bar.name,
          `${countOf(bar)}`,
          ...parts.map(({ of: part }) => `${bar[part]}`),
          fixed(bar.mass_g, 2, locale),
          bar.relativeExpanded === null ? "–" : fixed(100 * bar.relativeExpanded, 2, locale),
        ]),
      }}
    />
  );
}

const legendLine = 22;

interface Drawn {
  bars: readonly CountBar[];
  words: readonly string[];
  /** what is not drawn, in words */
  more: string | undefined;
}

function draw({ bars, words, more }: Drawn, width: number): Drawing {
  const beside = width >= 500;
  const left = beside ? Math.min(240, Math.max(...bars.map(({ name }) => textWidth(name))) + 12) : 0;
  const right = width - textWidth(`${Math.max(...bars.map(countOf))}`) - 10;
  const most = Math.max(1, ...bars.map(countOf));
  const rowHeight = beside ? 24 : 38;
  const lines = legendLines(words, width);
  const top = lines.length * legendLine + 4;
  const barTop = beside ? 4 : 20;
  return {
    height: top + (bars.length + (more === undefined ? 0 : 1)) * rowHeight + 2,
    content: (
      <>
        {lines.flatMap((line, row) =>
          line.map(({ word, at, part }) => (
            <g key={word}>
              <rect x={at} y={row * legendLine + 4} width={18} height={11} class={part} />
              <text x={at + 24} y={row * legendLine + 14}>
                {word}
              </text>
            </g>
          )),
        )}
        {more !== undefined && (
          <text x={0} y={top + bars.length * rowHeight + 14} class="faint">
            {more}
          </text>
        )}
        {bars.map((bar, index) => {
          let from = left;
          return (
            <g key={index} transform={`translate(0 ${top + index * rowHeight})`}>
              <text x={0} y={14}>
                {shortened(bar.name, beside ? left - 10 : width - 80)}
              </text>
              {parts.map(({ of, class: part }) => {
                const long = (bar[of] / most) * (right - left);
                const x = from;
                from += long;
                // the rim of a part stays inside it
                return long === 0 ? null : (
                  <rect
                    key={of}
                    x={x + 0.75}
                    y={barTop}
                    width={Math.max(1, long - 1.5)}
                    height={13}
                    class={part}
                  />
                );
              })}
              <text x={width} y={14} text-anchor="end" class="strong">
                {countOf(bar)}
              </text>
            </g>
          );
        })}
      </>
    ),
  };
}

/** The legend in as many lines as its words need. */
function legendLines(words: readonly string[], width: number) {
  const lines: { word: string; at: number; part: string }[][] = [[]];
  let at = 1;
  for (const [place, word] of words.entries()) {
    const long = 24 + textWidth(word);
    if (at > 1 && at + long > width) {
      lines.push([]);
      at = 1;
    }
    lines.at(-1)!.push({ word, at, part: parts[place]!.class });
    at += long + 16;
  }
  return lines;
}
