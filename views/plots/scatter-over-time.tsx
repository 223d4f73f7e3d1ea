import { scaleLinear } from "d3-scale";
import type { Locale } from "../messages/language.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";
import { fixed } from "../numbers.ts";
import { type Drawing, PlotFigure } from "./figure.tsx";
import { textWidth } from "./lanes.ts";
import { Legend, Mark } from "./marks.tsx";

/** The scatter of repeats in one stretch of time. */
export interface ScatterPoint {
  /** place of its stretch among all that are shown, from 0 */
  place: number;
  load: "dry" | "wet";
  /** pooled standard deviation of one reading, mg */
  s_mg: number;
  dof: number;
}

export interface ScatterOverTimePlot {
  id: string;
  caption: string;
  /** the stretches of time, oldest first: "2026-03" */
  stretches: readonly string[];
  points: readonly ScatterPoint[];
}

const shapes = { dry: "ring", wet: "full" } as const;
const loads = ["dry", "wet"] as const;

/** Pooled standard deviations of repeats, dry and in water, stretch by stretch. */
export function ScatterOverTime(plot: ScatterOverTimePlot) {
  const { id, caption, stretches, points } = plot;
  const locale = useLocale();
  const t = tellerOf(locale);
  return (
    <PlotFigure
      id={id}
      caption={caption}
      message={t("plots.scatter-is", { count: points.length })}
      draw={(width) => draw(plot, width, locale)}
      table={{
        head: [t("plots.when"), t("plots.load"), "s, mg", t("plots.dof")],
        rows: points.map(({ place, load, s_mg, dof }) => [
          stretches[place] ?? "",
          t(`plots.load-${load}`),
          fixed(s_mg, decimalsOf(s_mg), locale),
          `${dof}`,
        ]),
      }}
    />
  );
}

/** Two significant digits. */
const decimalsOf = (value: number): number =>
  value > 0 ? Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(value) + 1e-9))) : 2;

function draw({ stretches, points }: ScatterOverTimePlot, width: number, locale: Locale): Drawing {
  const t = tellerOf(locale);
  const most = Math.max(...points.map(({ s_mg }) => s_mg), 1e-6);
  const scale = scaleLinear().domain([0, most]).nice(4).range([186, 30]);
  const ticks = scale.ticks(4);
  const decimals = Math.max(0, Math.min(6, -Math.floor(Math.log10(ticks[1] ?? 1))));
  const left = Math.max(...ticks.map((at) => textWidth(fixed(at, decimals, locale)))) + 14;
  const span = Math.max(1, stretches.length - 1);
  const x = (place: number) => left + 14 + (place * (width - left - 40)) / span;
  const every = Math.max(
    1,
    Math.ceil((stretches.length * (textWidth(stretches[0] ?? "") + 14)) / (width - left)),
  );
  return {
    height: 244,
    content: (
      <>
        <text x={0} y={14} class="head">
          s, mg
        </text>
        {ticks.map((at) => (
          <g key={at}>
            <line x1={left} x2={width} y1={scale(at)} y2={scale(at)} class="grid" />
            <text x={left - 6} y={scale(at) + 4.5} text-anchor="end">
              {fixed(at, decimals, locale)}
            </text>
          </g>
        ))}
        {stretches.map((stretch, place) =>
          place % every === 0 ? (
            <text
              key={stretch}
              x={Math.min(width - textWidth(stretch) / 2, x(place))}
              y={208}
              text-anchor="middle"
              class="faint"
            >
              {stretch}
            </text>
          ) : null,
        )}
        {points.map(({ place, load, s_mg }) => (
          <Mark key={`${place} ${load}`} shape={shapes[load]} x={x(place)} y={scale(s_mg)} />
        ))}
        <Legend
          entries={loads.map((load) => ({ shape: shapes[load], word: t(`plots.load-${load}`) }))}
          y={236}
        />
      </>
    ),
  };
}
