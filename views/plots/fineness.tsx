import { scaleLinear } from "d3-scale";
import type { Locale } from "../messages/language.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";
import { fixed } from "../numbers.ts";
import { type Drawing, PlotFigure } from "./figure.tsx";
import { clampLabel, lanes, textWidth } from "./lanes.ts";

/** A usual fineness to compare with, in parts per thousand. */
export interface Standard {
  fineness: number;
  name: string;
  claimed?: boolean;
}

export interface FinenessPlot {
  id: string;
  caption?: string;
  /** whole interval over recipe and measurement, ‰ */
  interval: readonly [number, number];
  /** the interval under each recipe of the rest: "all silver", "half and half", "all copper" */
  recipes: readonly { name: string; low: number; high: number }[];
  standards: readonly Standard[];
  locale?: Locale;
}

/** What fineness a density leaves open when the recipe of the rest is free. */
export function Fineness(asked: FinenessPlot) {
  const spoken = useLocale();
  const plot = { ...asked, locale: asked.locale ?? spoken };
  const { id, caption, interval, recipes, standards, locale } = plot;
  const t = tellerOf(locale);
  const whole = (value: number) => fixed(value, 0, locale);
  const inside = standards.filter(({ fineness }) => fineness >= interval[0] && fineness <= interval[1]);
  const range = `${whole(interval[0])} – ${whole(interval[1])}`;
  return (
    <PlotFigure
      id={id}
      caption={caption ?? t("plots.fineness")}
      message={[
        t("plots.fineness-is", { interval: range }),
        inside.length > 0
          ? t("plots.standards-inside", { names: inside.map(({ name }) => name).join(", ") })
          : t("plots.no-standard-inside"),
      ].join(" ")}
      locale={locale}
      draw={(width) => draw(plot, width)}
      table={{
        head: [t("plots.recipe"), t("plots.fineness")],
        rows: recipes.map(({ name, low, high }) => [name, `${whole(low)} – ${whole(high)}`]),
      }}
    />
  );
}

function draw({ interval, recipes, standards, locale = "en" }: FinenessPlot, width: number): Drawing {
  const [low, high] = interval;
  const margin = Math.max(25, (high - low) * 0.5);
  const scale = scaleLinear()
    .domain([Math.max(0, low - margin), Math.min(1000, high + margin)])
    .range([4, width - 4]);
  const x = (at: number) => Math.round(scale(at) * 10) / 10;
  const top = 8;
  const rowHeight = 36;
  const axis = top + recipes.length * rowHeight + 8;
  const shown = standards.filter(({ fineness }) => x(fineness) >= 0 && x(fineness) <= width);
  const labels = shown.map(({ name, fineness, claimed }) => {
    const text = claimed ? `${name} (${tellerOf(locale)("plots.claimed")})` : name;
    const left = clampLabel(x(fineness) - textWidth(text) / 2, textWidth(text), 0, width);
    return { text, left, right: left + textWidth(text), at: x(fineness), claimed };
  });
  const rows = lanes(labels);
  const ticks = scale.ticks(Math.floor(width / 80));
  return {
    height: axis + 34 + (labels.length > 0 ? (Math.max(...rows) + 1) * 20 + 14 : 0),
    content: (
      <>
        <rect x={x(low)} y={top} width={x(high) - x(low)} height={axis - top} class="interval" />
        {recipes.map((recipe, index) => (
          <g key={recipe.name} transform={`translate(0 ${top + index * rowHeight})`}>
            <text x={clampLabel(x(recipe.low), textWidth(recipe.name), 0, width)} y={13}>
              {recipe.name}
            </text>
            <rect
              x={x(recipe.low)}
              y={18}
              width={Math.max(3, x(recipe.high) - x(recipe.low))}
              height={11}
              class="band-not-excluded"
            />
          </g>
        ))}
        <line x1={0} x2={width} y1={axis} y2={axis} class="axis" />
        {ticks.map((at) => (
          <g key={at}>
            <line x1={x(at)} x2={x(at)} y1={axis} y2={axis + 6} class="tick" />
            <text x={x(at)} y={axis + 20} text-anchor="middle">
              {at}
            </text>
          </g>
        ))}
        {labels.map(({ text, left, at, claimed }, index) => (
          <g key={text}>
            <line x1={at} x2={at} y1={axis - 8} y2={axis} class={claimed ? "mean" : "tick"} />
            <text x={left} y={axis + 44 + (rows[index] ?? 0) * 20} class={claimed ? "strong" : "faint"}>
              {text}
            </text>
          </g>
        ))}
      </>
    ),
  };
}
