import { scaleLinear } from "d3-scale";
import { area, curveMonotoneX, line } from "d3-shape";
import { fixed, fromTo, plusMinus } from "../numbers.ts";
import { type Locale, words } from "../words/index.ts";
import { type Band, BandRows } from "./bands.tsx";
import type { CurvePoint } from "./curve.ts";
import { type Drawing, PlotFigure } from "./figure.tsx";

export type { Band } from "./bands.tsx";
export type { CurvePoint } from "./curve.ts";

/** What was measured, as the plot needs it. All densities in g/cm³. */
export interface MeasuredCurve {
  value: number;
  /** standard uncertainty, above 0 */
  u: number;
  interval: readonly [number, number];
  /** coverage probability, such as 0.9545 */
  confidence: number;
  /** the distribution from left to right; see curveOf */
  curve: readonly CurvePoint[];
}

export interface DensityPlot {
  id: string;
  caption?: string;
  measured?: MeasuredCurve;
  bands: readonly Band[];
  /** id of the band that the piece is said to be */
  claimId?: string;
  /** part of the axis to show; found from the data when left out */
  domain?: readonly [number, number];
  locale?: Locale;
}

/** The density axis with the measured distribution above it and the metals' bands below it. */
export function DensityAxis(plot: DensityPlot) {
  const { id, locale = "en", bands, claimId } = plot;
  const say = words(locale).plots;
  return (
    <PlotFigure
      id={id}
      caption={plot.caption ?? say.densityAxis}
      says={densityInWords(plot)}
      locale={locale}
      draw={(width, own) => draw(plot, width, own)}
      table={{
        head: [say.metal, say.from, say.to, say.state],
        rows: [...bands]
          .sort((a, b) => a.low - b.low)
          .map((band) => [
            band.name,
            fixed(band.low, 3, locale),
            fixed(band.high, 3, locale),
            stateWord(band, band.id === claimId, locale),
          ]),
      }}
    />
  );
}

/** The plot in sentences: value, interval, claim, what is alive, how many are ruled out. */
export function densityInWords({ measured, bands, claimId, locale = "en" }: DensityPlot): string {
  const say = words(locale).plots;
  const claim = bands.find((band) => band.id === claimId);
  const alive = bands.filter((band) => band.alive === true && band !== claim);
  const excluded = bands.filter((band) => band.alive === false);
  const sentences: string[] = [];
  if (measured)
    sentences.push(
      say.measured(
        plusMinus(measured.value, measured.u, locale),
        `${fixed(measured.confidence * 100, 2, locale)} %`,
        fromTo(measured.interval[0], measured.interval[1], locale),
      ),
    );
  else sentences.push(say.notMeasured);
  if (claim) sentences.push(say.claimIs(claim.name, fromTo(claim.low, claim.high, locale)));
  if (alive.length > 0) sentences.push(say.aliveAre(alive.map(({ name }) => name).join(", ")));
  else if (measured && claim?.alive !== true) sentences.push(say.noneAlive);
  if (excluded.length > 0) sentences.push(say.excludedAre(excluded.length));
  return sentences.join(" ");
}

function stateWord(band: Band, claimed: boolean, locale: Locale): string {
  const say = words(locale).plots;
  const state = band.alive === undefined ? "–" : band.alive ? say.alive : say.excluded;
  return claimed ? `${say.claimed}; ${state}` : state;
}

/** Everything alive, the claim, the interval and the nearest neighbour on either side, with a margin. */
export function domainOf({ measured, bands, claimId, domain }: DensityPlot): readonly [number, number] {
  if (domain) return domain;
  const near = bands.filter((band) => band.alive !== false || band.id === claimId);
  const ends = near.flatMap(({ low, high }) => [low, high]);
  if (measured) {
    ends.push(measured.value - 4 * measured.u, measured.value + 4 * measured.u);
    const lower = Math.max(
      ...bands.filter((band) => band.alive === false && band.high < measured.value).map(({ high }) => high),
    );
    const upper = Math.min(
      ...bands.filter((band) => band.alive === false && band.low > measured.value).map(({ low }) => low),
    );
    const far = 0.12 * measured.value; // a neighbour further away would squeeze the curve to a needle
    if (measured.value - lower < far) ends.push(lower - 0.05);
    if (upper - measured.value < far) ends.push(upper + 0.05);
  }
  const finite = ends.filter(Number.isFinite);
  if (finite.length === 0) return [0, 23];
  const low = Math.min(...finite);
  const high = Math.max(...finite);
  const margin = Math.max((high - low) * 0.06, 0.02);
  return [Math.max(0, low - margin), high + margin];
}

const axisAt = 132; // y of the axis line, user units

function draw(plot: DensityPlot, width: number, id: string): Drawing {
  const { measured, locale = "en" } = plot;
  const edge = 6;
  const scale = scaleLinear()
    .domain(domainOf(plot))
    .range([edge, width - edge]);
  const x = (at: number) => Math.round(scale(at) * 10) / 10;
  const axis = measured ? axisAt : 30;
  const ticks = scale.ticks(Math.max(3, Math.floor(width / 90)));
  const form = scale.tickFormat(ticks.length);
  const rows = BandRows({ ...plot, x, width, top: axis + 34, id });
  const height = axis + 34 + rows.height;
  return {
    height,
    content: (
      <>
        {measured && <Hill measured={measured} x={x} width={width} foot={height - 4} locale={locale} />}
        <line x1={0} x2={width} y1={axis} y2={axis} class="axis" />
        {ticks.map((at) => (
          <g key={at}>
            <line x1={x(at)} x2={x(at)} y1={axis} y2={axis + 6} class="tick" />
            <text x={x(at)} y={axis + 20} text-anchor="middle">
              {locale === "de" ? form(at).replace(".", ",") : form(at)}
            </text>
          </g>
        ))}
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

interface HillParts {
  measured: MeasuredCurve;
  x(at: number): number;
  width: number;
  foot: number;
  locale: Locale;
}

function Hill({ measured, x, width, foot, locale }: HillParts) {
  const top = Math.max(...measured.curve.map(({ height }) => height), Number.MIN_VALUE);
  const y = (height: number) => axisAt - 1 - (height / top) * (axisAt - 34);
  const [low, high] = measured.interval;
  const inside = measured.curve.filter(({ gPerCm3 }) => gPerCm3 >= low && gPerCm3 <= high);
  const outline = line<CurvePoint>()
    .digits(1)
    .x(({ gPerCm3 }) => x(gPerCm3))
    .y(({ height }) => y(height))
    .curve(curveMonotoneX);
  const filled = area<CurvePoint>()
    .digits(1)
    .x(({ gPerCm3 }) => x(gPerCm3))
    .y0(axisAt)
    .y1(({ height }) => y(height))
    .curve(curveMonotoneX);
  const label = `${plusMinus(measured.value, measured.u, locale)} g/cm³`;
  const half = label.length * 4.2;
  const at = Math.max(half, Math.min(width - half, x(measured.value)));
  return (
    <>
      <path d={filled(inside) ?? ""} class="interval" />
      <path d={outline([...measured.curve]) ?? ""} class="curve" />
      {[low, high].map((end) => (
        <line key={end} x1={x(end)} x2={x(end)} y1={axisAt - 40} y2={foot} class="interval-edge" />
      ))}
      <text x={at} y={18} text-anchor="middle" class="strong">
        {label}
      </text>
    </>
  );
}
