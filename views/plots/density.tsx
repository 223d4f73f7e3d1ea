import { fixed, fromTo, plusMinus } from "../numbers.ts";
import { type Locale, words } from "../words/index.ts";
import { useLocale } from "../words/spoken.ts";
import { aliveInSight, type Band } from "./bands.tsx";
import { drawDensity, halfWidth } from "./density-drawing.tsx";
import type { DensityPlot } from "./density-plot.ts";
import { PlotFigure } from "./figure.tsx";

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
