import type { Locale } from "../messages/language.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";
import { fixed, share as shareText } from "../numbers.ts";
import { type Drawing, PlotFigure } from "./figure.tsx";

/** One named input of the budget. */
export interface BudgetInput {
  /** the input's name in words, such as "repeatability, immersed" */
  input: string;
  /** value with unit as it shall be read, "31.1035 g" */
  value: string;
  /** standard uncertainty with unit, "0.0001 g" */
  u: string;
  /** contribution to the density's standard uncertainty, g/cm³ */
  contribution: number;
  /** share of the variance, 0 to 1 */
  share: number;
}

export interface BudgetPlot {
  id: string;
  inputs: readonly BudgetInput[];
  caption?: string;
  /** how many bars are drawn before the rest is summed; the table has them all */
  bars?: number;
  captionUnseen?: boolean;
  locale?: Locale;
}

/** The uncertainty budget as bars, largest first, each with its name and share. */
export function BudgetBars({ id, inputs, caption, bars = 7, captionUnseen = false, ...asked }: BudgetPlot) {
  const spoken = useLocale();
  const locale = asked.locale ?? spoken;
  const t = tellerOf(locale);
  const sorted = [...inputs].sort((a, b) => b.share - a.share);
  const first = sorted[0];
  return (
    <PlotFigure
      id={id}
      caption={caption ?? t("plots.budget")}
      message={first ? t("plots.largest", { name: first.input, part: shareText(first.share, locale) }) : ""}
      captionUnseen={captionUnseen}
      locale={locale}
      draw={(width) => draw(sorted, bars, width, locale)}
      table={{
        head: [
          t("plots.input"),
          t("plots.value"),
          t("plots.uncertainty"),
          t("plots.contribution"),
          t("plots.share"),
        ],
        rows: sorted.map((one) => [
          one.input,
          one.value,
          one.u,
          fixed(one.contribution, decimalsFor(one.contribution), locale),
          shareText(one.share, locale),
        ]),
      }}
    />
  );
}

/** Two significant digits, at most eight decimals. */
function decimalsFor(value: number): number {
  if (value === 0) return 0;
  return Math.max(0, Math.min(8, 1 - Math.floor(Math.log10(Math.abs(value)))));
}

function draw(sorted: readonly BudgetInput[], bars: number, width: number, locale: Locale): Drawing {
  const small = sorted.slice(bars);
  const rest = small.reduce((sum, one) => sum + one.share, 0);
  const rows = sorted.slice(0, bars).map(({ input, share }) => ({ input, share }));
  if (small.length > 0)
    rows.push({ input: tellerOf(locale)("plots.rest", { count: small.length }), share: rest });
  const rowHeight = 38;
  return {
    height: rows.length * rowHeight + 2,
    content: rows.map(({ input, share }, index) => (
      <g key={input} transform={`translate(0 ${index * rowHeight})`}>
        <text x={0} y={14}>
          {input}
        </text>
        <text x={width} y={14} text-anchor="end" class="strong">
          {shareText(share, locale)}
        </text>
        <rect x={0} y={20} width={width} height={10} class="bar-back" />
        <rect x={0} y={20} width={Math.max(1.5, share * width)} height={10} class="bar" />
      </g>
    )),
  };
}
