import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, curveMonotoneX, line } from "d3-shape";
import type { Locale } from "../messages/language.ts";
import { tellerOf } from "../messages/tell.ts";
import { type Band, BandRows, nameWidth, rowsOf } from "./bands.tsx";
import type { CurvePoint } from "./curve.ts";
import { FullAxis, PartAxis } from "./density-axis.tsx";
import { domainOf } from "./density-domain.ts";
import type { DensityPlot, MeasuredCurve } from "./density-plot.ts";
import type { Drawing } from "./figure.tsx";
import { textWidth } from "./lanes.ts";

/** From this width on the names of the bands stand before their bars. */
const roomBeside = 500;
const edge = 6;
/** where the fan of the full axis ends, and how high the curve stands under it, user units */
const fan = 46;
const hill = 66;

const rounded = (value: number) => Math.round(value * 10) / 10;

/** Half the coverage interval: the ± that every page tells, never the standard uncertainty. */
export function halfWidth({ interval: [low, high] }: MeasuredCurve): number {
  return (high - low) / 2;
}

/** Draws the axis for a width: above the line what was measured, under the line what it may be. */
export function drawDensity(plot: DensityPlot, width: number): Drawing {
  const { measured, expected, bands, claimId, mostRows, locale = "en" } = plot;
  const domain = domainOf(plot);
  const beside = width >= roomBeside;
  const rows = rowsOf({ bands, domain, ...omit(claimId, measured, mostRows) });
  const names = beside ? Math.min(0.38 * width, nameWidth(rows, claimId, locale) + 14) : 0;
  const left = beside ? Math.max(120, Math.ceil(names)) : edge;
  const right = width - edge;
  const scale = scaleLinear().domain(domain).range([left, right]);
  const x = (at: number) => rounded(scale(at));
  const axis = fan + (measured || expected ? hill : 32);
  const claim = bands.find(({ id }) => id === claimId);
  const under = BandRows({
    ...{ bands, x, domain, left, right, beside, locale, top: axis + 34 },
    ...omit(claimId, measured, mostRows),
  });
  const height = axis + 34 + under.height;
  return {
    height,
    content: (
      <>
        {measured && <Strip {...{ x, domain }} interval={measured.interval} top={axis} bottom={height} />}
        <FullAxis {...{ left, right, domain }} foot={fan} />
        {expected && <Expected {...{ x, expected, left, right, locale }} foot={axis} />}
        {measured && <Hill {...{ measured, x, domain }} foot={axis} />}
        <PartAxis {...{ scale, left, right, locale }} y={axis} />
        {claim && <Brackets {...{ claim, domain, scale }} y={axis} />}
        {under.content}
      </>
    ),
  };
}

function omit(
  claimId: string | undefined,
  measured: MeasuredCurve | undefined,
  mostRows: number | undefined,
): { claimId?: string; measured?: MeasuredCurve; mostRows?: number } {
  return {
    ...(claimId === undefined ? {} : { claimId }),
    ...(measured === undefined ? {} : { measured }),
    ...(mostRows === undefined ? {} : { mostRows }),
  };
}

/** The interval as it falls through the bands. */
function Strip({
  x,
  domain: [from, to],
  interval: [low, high],
  top,
  bottom,
}: {
  x(at: number): number;
  domain: readonly [number, number];
  interval: readonly [number, number];
  top: number;
  bottom: number;
}) {
  const start = x(Math.max(low, from));
  const end = x(Math.min(high, to));
  if (end < start) return null;
  return (
    <rect
      x={start}
      y={top}
      width={Math.max(2, rounded(end - start))}
      height={bottom - top}
      class="interval"
    />
  );
}

/** How wide the interval will be, before anything is measured. Its word stands beside it where there is room, else in it. */
function Expected({
  x,
  expected: { value, halfWidth: half },
  left,
  right,
  foot,
  locale,
}: {
  x(at: number): number;
  expected: NonNullable<DensityPlot["expected"]>;
  left: number;
  right: number;
  foot: number;
  locale: Locale;
}) {
  const word = tellerOf(locale)("plots.expected-width");
  const [start, end] = [x(value - half), x(value + half)];
  const [at, anchor] =
    end + 10 + textWidth(word) < right
      ? [end + 10, "start" as const]
      : start - 10 - textWidth(word) > left
        ? [start - 10, "end" as const]
        : [rounded((start + end) / 2), "middle" as const];
  return (
    <>
      <rect x={start} y={foot - 34} width={Math.max(3, rounded(end - start))} height={34} class="expected" />
      <text x={at} y={foot - 13} class="faint" text-anchor={anchor}>
        {word}
      </text>
    </>
  );
}

/** The claim's ends, marked on the axis itself. */
function Brackets({
  claim: { low, high },
  domain: [from, to],
  scale,
  y,
}: {
  claim: Band;
  domain: readonly [number, number];
  scale: ScaleLinear<number, number>;
  y: number;
}) {
  const end = (at: number, inwards: number) =>
    at < from || at > to ? "" : `M${rounded(scale(at)) + inwards} ${y - 7}h${-inwards}v14h${inwards}`;
  const d = end(low, 5) + end(high, -5);
  return d === "" ? null : <path d={d} class="brackets" />;
}

function Hill({
  measured,
  x,
  domain: [from, to],
  foot,
}: {
  measured: MeasuredCurve;
  x(at: number): number;
  domain: readonly [number, number];
  foot: number;
}) {
  const top = Math.max(...measured.curve.map(({ height }) => height), Number.MIN_VALUE);
  const y = (height: number) => foot - 1 - (height / top) * (hill - 8);
  const [low, high] = [Math.max(measured.interval[0], from), Math.min(measured.interval[1], to)];
  const shown = measured.curve.filter(({ gPerCm3 }) => gPerCm3 >= from && gPerCm3 <= to);
  if (shown.length < 2) return null;
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
  return (
    <>
      {high > low && <path d={filled(inside) ?? ""} class="area" />}
      <path d={outline(shown) ?? ""} class="curve" />
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
