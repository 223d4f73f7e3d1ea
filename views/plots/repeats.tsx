import { scaleLinear } from "d3-scale";
import type { Locale } from "../messages/language.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";
import { fixed } from "../numbers.ts";
import { type Sentence, sentenceText } from "../sentence.tsx";
import { type Drawing, PlotFigure } from "./figure.tsx";
import { shortened, textWidth } from "./lanes.ts";
import { Mark } from "./marks.tsx";

/** One repeat as it came. */
export interface Repeat {
  value: number;
  state: "kept" | "left-out" | "voided";
  /** why it was voided or left out */
  because?: Sentence;
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
  captionUnseen?: boolean;
  locale?: Locale;
}

/**
 * Repeats in the order they were made, one a row: a climb tells of bubbles leaving, which a mean would hide. An excluded
 * reading stands in its row with its reason, outside the scale.
 */
export function Repeats(asked: RepeatsPlot) {
  const spoken = useLocale();
  const plot = { ...asked, locale: asked.locale ?? spoken };
  const { id, repeats, unit, decimals, caption, captionUnseen = false, trend, locale } = plot;
  const t = tellerOf(locale);
  const states = {
    kept: t("plots.kept"),
    "left-out": t("plots.left-out"),
    voided: t("plots.voided"),
  };
  const message = [t("plots.repeats-are", { count: repeats.length, unit }), trend].filter(Boolean).join(" ");
  return (
    <PlotFigure
      id={id}
      caption={caption ?? t("plots.repeats")}
      message={message}
      captionUnseen={captionUnseen}
      locale={locale}
      draw={(width) => draw(plot, width)}
      table={{
        head: [t("plots.order"), unit, t("plots.state")],
        rows: repeats.map((one, index) => [
          `${index + 1}`,
          fixed(one.value, decimals, locale),
          one.because ? `${states[one.state]}: ${sentenceText(one.because, locale)}` : states[one.state],
        ]),
      }}
    />
  );
}

const rowHeight = 22;
const axisAt = 24;

function draw(plot: RepeatsPlot, width: number): Drawing {
  const { repeats, mean, s, decimals, locale = "en" } = plot;
  const t = tellerOf(locale);
  const inScale = repeats.filter(({ state }) => state !== "voided").map(({ value }) => value);
  const values = inScale.length > 0 ? inScale : repeats.map(({ value }) => value);
  if (mean !== undefined) values.push(mean - (s ?? 0), mean + (s ?? 0));
  const step = 10 ** -decimals;
  const left = textWidth(`${repeats.length}`) + 18;
  const scale = scaleLinear()
    .domain([Math.min(...values) - 2 * step, Math.max(...values) + 2 * step])
    .range([left + 10, width - 10]);
  const x = (at: number) => Math.round(scale(at) * 10) / 10;
  const tickWidth = textWidth(fixed(values[0] ?? 0, decimals));
  const ticks = scale
    .ticks(Math.max(2, Math.min(5, Math.floor((width - left) / (1.6 * tickWidth)))))
    .filter((at) => x(at) - tickWidth / 2 > left - 10 && x(at) + tickWidth / 2 < width);
  const foot = axisAt + repeats.length * rowHeight;
  return {
    height: foot + 6,
    content: (
      <>
        {mean !== undefined && s !== undefined && (
          <rect
            x={x(mean - s)}
            width={Math.max(1, x(mean + s) - x(mean - s))}
            y={axisAt}
            height={foot - axisAt}
            class="interval"
          />
        )}
        <line x1={left} x2={width} y1={axisAt} y2={axisAt} class="axis" />
        {ticks.map((at) => (
          <g key={at}>
            <line x1={x(at)} x2={x(at)} y1={axisAt - 5} y2={axisAt} class="tick" />
            <text x={x(at)} y={axisAt - 10} text-anchor="middle" class="faint">
              {fixed(at, decimals, locale)}
            </text>
          </g>
        ))}
        {mean !== undefined && <line x1={x(mean)} x2={x(mean)} y1={axisAt} y2={foot} class="mean" />}
        {repeats.map(({ value, state, because }, index) => {
          const y = axisAt + (index + 0.5) * rowHeight + 2;
          return (
            <g key={index}>
              <text x={0} y={y + 4.5} class="faint">
                {index + 1}
              </text>
              {state === "voided" ? (
                <>
                  <Mark shape="cross" x={left + 6} y={y} />
                  <text x={left + 18} y={y + 4.5} class="faint">
                    {shortened(
                      because === undefined
                        ? fixed(value, decimals, locale)
                        : t("plots.excluded-reading", { value: fixed(value, decimals, locale), because }),
                      width - left - 18,
                    )}
                  </text>
                </>
              ) : (
                <Mark shape={shapes[state]} x={x(value)} y={y} />
              )}
            </g>
          );
        })}
      </>
    ),
  };
}

const shapes = { kept: "full", "left-out": "ring" } as const;
