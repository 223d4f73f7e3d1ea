import { scaleLinear } from "d3-scale";
import type { Locale } from "../messages/language.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";
import { fixed } from "../numbers.ts";
import { type Drawing, PlotFigure } from "./figure.tsx";
import { Legend, Mark } from "./marks.tsx";

/** One repeat as it came. */
export interface Repeat {
  value: number;
  state: "kept" | "left-out" | "voided";
  /** why it was voided or left out */
  because?: string;
}

export interface RepeatsPlot {
  id: string;
  repeats: readonly Repeat[];
  unit: string;
  /** decimals to write the values with */
  decimals: number;
  /** mean of the kept ones, when there is one worth stating */
  mean?: number;
  /** standard deviation of one repeat: drawn as the strip mean ± s */
  s?: number;
  /** what follows from the order, in a sentence: still climbing, agree, more will not help */
  trend?: string;
  caption?: string;
  locale?: Locale;
}

/** Repeats in the order they were made: a climb tells of bubbles leaving, which a mean would hide. */
export function Repeats(asked: RepeatsPlot) {
  const spoken = useLocale();
  const plot = { ...asked, locale: asked.locale ?? spoken };
  const { id, repeats, unit, decimals, caption, trend, locale } = plot;
  const t = tellerOf(locale);
  const states = {
    kept: t("plots.kept"),
    "left-out": t("plots.left-out"),
    voided: t("plots.voided"),
  };
  const says = [t("plots.repeats-are", { count: repeats.length, unit }), trend].filter(Boolean).join(" ");
  return (
    <PlotFigure
      id={id}
      caption={caption ?? t("plots.repeats")}
      says={says}
      locale={locale}
      draw={(width) => draw(plot, states, width)}
      table={{
        head: [t("plots.order"), unit, t("plots.state")],
        rows: repeats.map((one, index) => [
          `${index + 1}`,
          fixed(one.value, decimals, locale),
          one.because ? `${states[one.state]}: ${one.because}` : states[one.state],
        ]),
      }}
    />
  );
}

function draw(plot: RepeatsPlot, states: Record<Repeat["state"], string>, width: number): Drawing {
  const { repeats, mean, s, decimals, locale = "en" } = plot;
  const values = repeats.map(({ value }) => value);
  if (mean !== undefined) values.push(mean - (s ?? 0), mean + (s ?? 0));
  const step = 10 ** -decimals;
  const low = Math.min(...values) - 2 * step;
  const high = Math.max(...values) + 2 * step;
  const labelWidth = Math.max(...values.map((value) => fixed(value, decimals).length)) * 8.2 + 8;
  const scale = scaleLinear().domain([low, high]).range([150, 12]);
  const y = (at: number) => Math.round(scale(at) * 10) / 10;
  const ticks = scale.ticks(4);
  const right = width - 14;
  const x = (index: number) =>
    repeats.length < 2
      ? (labelWidth + right) / 2
      : labelWidth + 14 + (index * (right - labelWidth - 14)) / (repeats.length - 1);
  const kept = repeats.flatMap(({ value, state }, index) =>
    state === "voided" ? [] : [`${x(index).toFixed(1)},${y(value).toFixed(1)}`],
  );
  const used = (["kept", "left-out", "voided"] as const).filter((state) =>
    repeats.some((one) => one.state === state),
  );
  return {
    height: 198,
    content: (
      <>
        {mean !== undefined && s !== undefined && (
          <rect
            x={labelWidth}
            width={width - labelWidth}
            y={y(mean + s)}
            height={Math.max(1, y(mean - s) - y(mean + s))}
            class="interval"
          />
        )}
        {ticks.map((at) => (
          <g key={at}>
            <line x1={labelWidth} x2={width} y1={y(at)} y2={y(at)} class="grid" />
            <text x={labelWidth - 6} y={y(at) + 4.5} text-anchor="end">
              {fixed(at, decimals, locale)}
            </text>
          </g>
        ))}
        <line x1={labelWidth} x2={labelWidth} y1={4} y2={156} class="axis" />
        {mean !== undefined && <line x1={labelWidth} x2={width} y1={y(mean)} y2={y(mean)} class="mean" />}
        <polyline points={kept.join(" ")} class="thread" />
        {repeats.map((one, index) => (
          <g key={index}>
            <Mark shape={shapes[one.state]} x={x(index)} y={y(one.value)} />
            {(repeats.length <= 12 || index % 5 === 4) && (
              <text x={x(index)} y={172} text-anchor="middle" class="faint">
                {index + 1}
              </text>
            )}
          </g>
        ))}
        <Legend y={192} entries={used.map((state) => ({ shape: shapes[state], word: states[state] }))} />
      </>
    ),
  };
}

const shapes = { kept: "full", "left-out": "ring", voided: "cross" } as const;
