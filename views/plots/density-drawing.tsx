import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, curveMonotoneX, line } from "d3-shape";
import type { Locale } from "../messages/language.ts";
import { tellerOf } from "../messages/tell.ts";
import { inLocale, plusMinus } from "../numbers.ts";
import { BandRows } from "./bands.tsx";
import type { CurvePoint } from "./curve.ts";
import { domainOf } from "./density-domain.ts";
import type { DensityPlot, MeasuredCurve } from "./density-plot.ts";
import type { Drawing } from "./figure.tsx";
import { textWidth } from "./lanes.ts";

const edge = 6; // user units kept free at both ends of the axis

/** Where the parts stand, in user units from the top. */
interface Layout {
  /** foot of the hill */
  hill: number;
  /** the axis that carries the bands */
  axis: number;
  /** domain of the hill's own, widened axis, when it has one */
  widened?: readonly [number, number];
  /** how many times wider that axis is */
  times: number;
}

/** A hill that would be a needle on the common axis gets its own, widened piece of it above. */
function layoutOf(
  measured: MeasuredCurve | undefined,
  domain: readonly [number, number],
  width: number,
): Layout {
  if (!measured) return { hill: 0, axis: 30, times: 1 };
  const perUnit = (width - 2 * edge) / (domain[1] - domain[0]);
  const hillWidth = 8 * measured.u * perUnit;
  if (hillWidth > 56) return { hill: 132, axis: 132, times: 1 };
  const widened = [measured.value - 6 * measured.u, measured.value + 6 * measured.u] as const;
  return {
    hill: 112,
    axis: 186,
    widened,
    times: Math.round((domain[1] - domain[0]) / (widened[1] - widened[0])),
  };
}

const rounded = (value: number) => Math.round(value * 10) / 10;

/** Half the coverage interval: the ± that every page tells, never the standard uncertainty. */
export function halfWidth({ interval: [low, high] }: MeasuredCurve): number {
  return (high - low) / 2;
}

/** Draws the axis for a width: hill above, bands below. */
export function drawDensity(plot: DensityPlot, width: number, id: string): Drawing {
  const { measured, locale = "en" } = plot;
  const t = tellerOf(locale);
  const domain = domainOf(plot);
  const { hill, axis, widened, times } = layoutOf(measured, domain, width);
  const across = (ends: readonly [number, number]) =>
    scaleLinear()
      .domain(ends)
      .range([edge, width - edge]);
  const scale = across(domain);
  const x = (at: number) => rounded(scale(at));
  const hillScale = widened ? across(widened) : scale;
  const hillX = (at: number) => rounded(hillScale(at));
  const rows = BandRows({ ...plot, x, domain, width, top: axis + 34, id });
  const height = axis + 34 + rows.height;
  return {
    height,
    content: (
      <>
        {measured && <Hill measured={measured} x={hillX} width={width} foot={hill} locale={locale} />}
        {widened && (
          <>
            <Axis scale={hillScale} y={hill} width={width} locale={locale} />
            <path
              d={`M0 ${hill + 26}L${x(widened[0])} ${axis}M${width} ${hill + 26}L${x(widened[1])} ${axis}`}
              class="thread"
            />
            <text x={0} y={axis - 8} class="faint">
              {t("plots.widened", { times })}
            </text>
          </>
        )}
        {measured?.interval.map((end) => (
          <line key={end} x1={x(end)} x2={x(end)} y1={axis} y2={height - 4} class="interval-edge" />
        ))}
        <Axis scale={scale} y={axis} width={width} locale={locale} />
        {!measured && (
          <text x={width} y={axis - 8} text-anchor="end" class="faint">
            g/cm³
          </text>
        )}
        {rows.content}
      </>
    ),
  };
}

function Axis({
  scale,
  y,
  width,
  locale,
}: {
  scale: ScaleLinear<number, number>;
  y: number;
  width: number;
  locale: Locale;
}) {
  const ticks = scale.ticks(Math.max(3, Math.floor(width / 90)));
  const form = scale.tickFormat(ticks.length);
  return (
    <>
      <line x1={0} x2={width} y1={y} y2={y} class="axis" />
      {ticks.map((at) => (
        <g key={at}>
          <line x1={rounded(scale(at))} x2={rounded(scale(at))} y1={y} y2={y + 6} class="tick" />
          <text x={clampMiddle(rounded(scale(at)), form(at), width)} y={y + 20} text-anchor="middle">
            {inLocale(form(at), locale)}
          </text>
        </g>
      ))}
    </>
  );
}

/** Middle of a label that stays inside the drawing. */
function clampMiddle(at: number, text: string, width: number): number {
  const half = textWidth(text) / 2;
  return Math.max(half, Math.min(width - half, at));
}

interface HillParts {
  measured: MeasuredCurve;
  x(at: number): number;
  width: number;
  foot: number;
  locale: Locale;
}

function Hill({ measured, x, width, foot, locale }: HillParts) {
  const top = Math.max(...measured.curve.map(({ height }) => height), Number.MIN_VALUE);
  const y = (height: number) => foot - 1 - (height / top) * (foot - 34);
  const [low, high] = measured.interval;
  const shown = measured.curve.filter(({ gPerCm3 }) => x(gPerCm3) >= 0 && x(gPerCm3) <= width);
  const inside = [
    { gPerCm3: low, height: heightAt(measured.curve, low) },
    ...shown.filter(({ gPerCm3 }) => gPerCm3 > low && gPerCm3 < high),
    { gPerCm3: high, height: heightAt(measured.curve, high) },
  ];
  const outline = line<CurvePoint>()
    .digits(1)
    .x(({ gPerCm3 }) => x(gPerCm3))
    .y(({ height }) => y(height))
    .curve(curveMonotoneX);
  const filled = area<CurvePoint>()
    .digits(1)
    .x(({ gPerCm3 }) => x(gPerCm3))
    .y0(foot)
    .y1(({ height }) => y(height))
    .curve(curveMonotoneX);
  const label = `${plusMinus(measured.value, halfWidth(measured), locale)} g/cm³`;
  return (
    <>
      <path d={filled(inside) ?? ""} class="interval" />
      <path d={outline(shown) ?? ""} class="curve" />
      {[low, high].map((end) => (
        <line key={end} x1={x(end)} x2={x(end)} y1={foot - 40} y2={foot} class="interval-edge" />
      ))}
      <text x={clampMiddle(x(measured.value), label, width)} y={18} text-anchor="middle" class="strong">
        {label}
      </text>
    </>
  );
}

/** Height of the curve between its points, by straight lines; 0 beyond its ends. */
function heightAt(curve: readonly CurvePoint[], at: number): number {
  const next = curve.findIndex(({ gPerCm3 }) => gPerCm3 >= at);
  const right = curve[next];
  const left = curve[next - 1];
  if (!right) return 0;
  if (!left) return right.gPerCm3 === at ? right.height : 0;
  const share = (at - left.gPerCm3) / (right.gPerCm3 - left.gPerCm3);
  return left.height + share * (right.height - left.height);
}
