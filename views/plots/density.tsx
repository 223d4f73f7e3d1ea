import { fixed, fromTo, plusMinus } from "../numbers.ts";
import { type Locale, words } from "../words/index.ts";
import { useLocale } from "../words/spoken.ts";
import { aliveInSight, type Band } from "./bands.tsx";
import type { CurvePoint } from "./curve.ts";
import { drawDensity, halfWidth } from "./density-drawing.tsx";
import { PlotFigure } from "./figure.tsx";

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
export function DensityAxis(asked: DensityPlot) {
  const spoken = useLocale();
  const plot = { ...asked, locale: asked.locale ?? spoken };
  const { id, locale, bands, claimId } = plot;
  const say = words(locale).plots;
  return (
    <PlotFigure
      id={id}
      caption={plot.caption ?? say.densityAxis}
      says={densityInWords(plot)}
      locale={locale}
      draw={(width, own) => drawDensity(plot, width, own)}
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
  const alive = aliveInSight(
    bands.filter((band) => band !== claim),
    measured?.value,
  );
  const excluded = bands.filter((band) => band.alive === false);
  const sentences: string[] = [];
  if (measured)
    sentences.push(
      say.measured(
        plusMinus(measured.value, halfWidth(measured), locale),
        `${fixed(measured.confidence * 100, 2, locale)} %`,
        fromTo(measured.interval[0], measured.interval[1], locale),
      ),
    );
  else sentences.push(say.notMeasured);
  if (claim) sentences.push(say.claimIs(claim.name, fromTo(claim.low, claim.high, locale)));
  if (alive.shown.length > 0)
    sentences.push(say.aliveAre(alive.shown.map(({ name }) => name).join(", "), alive.hidden));
  else if (measured && claim?.alive !== true) sentences.push(say.noneAlive);
  if (excluded.length > 0) sentences.push(say.excludedAre(excluded.length));
  return sentences.join(" ");
}

function stateWord(band: Band, claimed: boolean, locale: Locale): string {
  const say = words(locale).plots;
  const state = band.alive === undefined ? "–" : band.alive ? say.alive : say.excluded;
  return claimed ? `${say.claimed}; ${state}` : state;
}
