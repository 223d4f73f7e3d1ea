import { scaleLinear } from "d3-scale";
import type { Locale } from "../messages/language.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";
import { fixed } from "../numbers.ts";
import { type Drawing, PlotFigure } from "./figure.tsx";
import { spread, textWidth } from "./lanes.ts";
import { Legend, Mark, type Shape } from "./marks.tsx";

/** One check as it was made, passed or not. */
export interface CheckPoint {
  /** when, written as it shall be read */
  when: string;
  value: number;
  /** 1 for the first try of an occasion, 2 for the second; every one is drawn */
  attempt: number;
  outcome: "no-limits" | "inside" | "warning" | "action" | "failed";
  note?: string;
}

/** A stretch of time with its own accepted mean and limits. Old ones stay visible; nothing is recomputed silently. */
export interface Epoch {
  /** index of the first check that belongs to it; the number of checks while it has none */
  from: number;
  mean: number;
  /** standard deviation behind the limits */
  s: number;
  /** why it began: "moved to the window bench", "first 12 checks" */
  because: string;
  since: string;
}

export interface ControlChartPlot {
  id: string;
  caption: string;
  points: readonly CheckPoint[];
  epochs: readonly Epoch[];
  /** lowest and highest value that the check itself lets pass */
  allowed?: readonly number[];
  unit: string;
  decimals: number;
  locale?: Locale;
}

const shapes: Record<CheckPoint["outcome"], Shape> = {
  "no-limits": "ring",
  inside: "full",
  warning: "square",
  action: "failed",
  failed: "failed",
};

/** In the order of the legend. */
const outcomes = ["no-limits", "inside", "warning", "action", "failed"] as const;

/** Checks in order with the limits 2 s and 3 s of each epoch about its accepted mean. */
export function ControlChart(asked: ControlChartPlot) {
  const spoken = useLocale();
  const plot = { ...asked, locale: asked.locale ?? spoken };
  const { id, caption, points, unit, decimals, locale } = plot;
  const t = tellerOf(locale);
  const count = (outcome: CheckPoint["outcome"]) =>
    points.filter((point) => point.outcome === outcome).length;
  return (
    <PlotFigure
      id={id}
      caption={caption}
      message={t("plots.chart-is", {
        count: points.length,
        warned: count("warning"),
        stopped: count("action") + count("failed"),
      })}
      locale={locale}
      draw={(width) => draw(plot, width)}
      table={{
        head: [t("plots.when"), unit, t("plots.attempt"), t("plots.state")],
        rows: points.map((point) => [
          point.when,
          fixed(point.value, decimals, locale),
          `${point.attempt}`,
          point.note ? `${t(`plots.${point.outcome}`)}; ${point.note}` : t(`plots.${point.outcome}`),
        ]),
      }}
    />
  );
}

function draw(plot: ControlChartPlot, width: number): Drawing {
  const { points, allowed = [], decimals, unit, locale = "en" } = plot;
  // Limits replaced before a single check was made under them have no stretch of the chart to stand on.
  const epochs = plot.epochs.filter((epoch, index, all) => all[index + 1]?.from !== epoch.from);
  const t = tellerOf(locale);
  const ends = [
    ...points.map(({ value }) => value),
    ...allowed,
    ...epochs.flatMap(({ mean, s }) => [mean - 3.5 * s, mean + 3.5 * s]),
  ];
  const scale = scaleLinear()
    .domain([Math.min(...ends), Math.max(...ends)])
    .range([196, 30]);
  const y = (at: number) => Math.round(scale(at) * 10) / 10;
  const ticks = scale.ticks(5);
  const left = Math.max(...ticks.map((at) => fixed(at, decimals).length)) * 8.2 + 8;
  const right = width - Math.max(...limitWords(locale).map(textWidth)) - 6;
  // Limits without a check yet get an empty place after the last point, never the ground of older points.
  const places = Math.max(points.length, ...epochs.map(({ from }) => from + 1));
  const span = Math.max(1, places - 1);
  const x = (index: number) => left + 12 + (index * (right - left - 24)) / span;
  const begin = (from: number) => (from === 0 ? left : (x(from - 1) + x(from)) / 2);
  const used = outcomes.filter((outcome) => points.some((point) => point.outcome === outcome));
  const stacked = width < 500;
  return {
    height: 238 + (stacked ? used.length * 22 : 22),
    content: (
      <>
        <text x={0} y={14} class="head">
          {unit}
        </text>
        {ticks.map((at) => (
          <text key={at} x={left - 6} y={y(at) + 4.5} text-anchor="end">
            {fixed(at, decimals, locale)}
          </text>
        ))}
        <line x1={left} x2={left} y1={22} y2={204} class="axis" />
        {allowed.map((at) => (
          <line key={at} x1={left} x2={right} y1={y(at)} y2={y(at)} class="allowed" />
        ))}
        {/* its word stands at the line's end, unless the words of signed limits stand there */}
        {allowed.length > 0 && epochs.length === 0 && (
          <text x={right + 5} y={y(Math.max(...allowed)) + 4.5} class="faint">
            {t("plots.tolerance")}
          </text>
        )}
        {epochs.map((epoch, index) => (
          <EpochLines
            key={epoch.from}
            epoch={epoch}
            y={y}
            from={begin(epoch.from)}
            to={epochs[index + 1] ? begin(epochs[index + 1]!.from) : right}
            first={epoch.from === 0}
            last={index === epochs.length - 1}
            locale={locale}
          />
        ))}
        {datesOf(points, right - left).map((index) => (
          <text key={index} x={x(index)} y={220} text-anchor="middle" class="faint">
            {points[index]!.when.slice(0, 10)}
          </text>
        ))}
        <polyline
          points={points.map(({ value }, index) => `${x(index).toFixed(1)},${y(value).toFixed(1)}`).join(" ")}
          class="thread"
        />
        {points.map((point, index) => (
          <g key={index}>
            <Mark shape={shapes[point.outcome]} x={x(index)} y={y(point.value)} />
            {(point.outcome === "action" || point.outcome === "failed") && (
              <FailedWord
                x={x(index)}
                y={y(point.value)}
                left={left + 4}
                right={right}
                word={t("plots.failed-at", { value: fixed(point.value, decimals, locale) })}
              />
            )}
          </g>
        ))}
        {used.map((outcome, index) => (
          <Legend
            key={outcome}
            y={238 + (stacked ? index * 22 : 0) + 8}
            entries={
              stacked
                ? [{ shape: shapes[outcome], word: t(`plots.${outcome}`) }]
                : index === 0
                  ? used.map((each) => ({ shape: shapes[each], word: t(`plots.${each}`) }))
                  : []
            }
          />
        ))}
      </>
    ),
  };
}

/** Room of one date under the axis, user units. */
const dateWidth = 96;

/** The points whose dates are written: as many as there is room for, evenly spread. */
function datesOf(points: readonly CheckPoint[], width: number): number[] {
  const most = Math.min(points.length, Math.max(1, Math.floor(width / dateWidth)));
  const step = Math.max(1, Math.ceil((points.length - 1) / Math.max(1, most - 1)));
  return points.flatMap((_, index) => (index % step === 0 ? [index] : []));
}

const limitWords = (locale: Locale) =>
  (["plots.mean", "plots.two-s", "plots.three-s"] as const).map((code) => tellerOf(locale)(code));

/** A failed check with its word and value, under its mark and inside the chart. */
function FailedWord({
  x,
  y,
  left,
  right,
  word,
}: {
  x: number;
  y: number;
  left: number;
  right: number;
  word: string;
}) {
  const half = textWidth(word) / 2;
  return (
    <text x={Math.max(left + half, Math.min(right - half, x))} y={y + 22} text-anchor="middle" class="failed">
      {word}
    </text>
  );
}

/** Room of one label beside a limit, user units; limits drawn nearer to each other than that keep readable labels. */
const labelHeight = 13;

interface EpochLinesParts {
  epoch: Epoch;
  y(at: number): number;
  from: number;
  to: number;
  first: boolean;
  last: boolean;
  locale: Locale;
}

function EpochLines({ epoch, y, from, to, first, last, locale }: EpochLinesParts) {
  const t = tellerOf(locale);
  const lines = [
    { at: epoch.mean, kind: "mean", word: t("plots.mean") },
    { at: epoch.mean + 2 * epoch.s, kind: "warning-limit", word: t("plots.two-s") },
    { at: epoch.mean - 2 * epoch.s, kind: "warning-limit", word: t("plots.two-s") },
    { at: epoch.mean + 3 * epoch.s, kind: "action-limit", word: t("plots.three-s") },
    { at: epoch.mean - 3 * epoch.s, kind: "action-limit", word: t("plots.three-s") },
  ];
  const heights = spread(
    lines.map(({ at }) => y(at)),
    labelHeight,
  );
  return (
    <>
      {lines.map(({ at, kind, word }, index) => (
        <g key={`${kind} ${at}`}>
          <line x1={from} x2={to} y1={y(at)} y2={y(at)} class={kind} />
          {last && (
            <text x={to + 5} y={heights[index]! + 4.5} class="faint">
              {word}
            </text>
          )}
        </g>
      ))}
      {!first && (
        <>
          <line x1={from} x2={from} y1={22} y2={204} class="epoch" />
          <text x={from} y={14} text-anchor="middle" class="head">
            {epoch.since}
          </text>
        </>
      )}
    </>
  );
}
