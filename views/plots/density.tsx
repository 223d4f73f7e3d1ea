import type { Locale } from "../messages/language.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";
import { fixed, fromTo, plusMinus } from "../numbers.ts";
import { type Band, notExcludedInSight } from "./bands.tsx";
import { drawDensity, halfWidth } from "./density-drawing.tsx";
import type { DensityPlot } from "./density-plot.ts";
import { PlotFigure } from "./figure.tsx";

/** The density axis with the measured distribution above it and the metals' bands below it. */
export function DensityAxis(asked: DensityPlot) {
  const spoken = useLocale();
  const plot = { ...asked, locale: asked.locale ?? spoken };
  const { id, locale, bands, claimId, captionUnseen = false } = plot;
  const t = tellerOf(locale);
  return (
    <PlotFigure
      id={id}
      caption={plot.caption ?? t("plots.density-axis")}
      message={densityInWords(plot)}
      captionUnseen={captionUnseen}
      locale={locale}
      draw={(width) => drawDensity(plot, width)}
      table={{
        head: [t("plots.metal"), t("plots.from"), t("plots.to"), t("plots.state")],
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

/** The plot in sentences: value, interval, claim, what is not excluded, how many are ruled out. */
export function densityInWords({ measured, bands, claimId, locale = "en" }: DensityPlot): string {
  const t = tellerOf(locale);
  const claim = bands.find((band) => band.id === claimId);
  const left = notExcludedInSight(
    bands.filter((band) => band !== claim),
    measured?.value,
  );
  const excluded = bands.filter((band) => band.notExcluded === false);
  const sentences: string[] = [];
  if (measured)
    sentences.push(
      t("plots.measured", {
        value: plusMinus(measured.value, halfWidth(measured), locale),
        confidence: `${fixed(measured.confidence * 100, 2, locale)} %`,
        interval: fromTo(measured.interval[0], measured.interval[1], locale),
      }),
    );
  else sentences.push(t("plots.not-measured"));
  if (claim)
    sentences.push(t("plots.claim-is", { name: claim.name, band: fromTo(claim.low, claim.high, locale) }));
  if (left.shown.length > 0)
    sentences.push(
      t("plots.not-excluded-are", {
        names: left.shown.map(({ name }) => name).join(", "),
        more: left.hidden,
      }),
    );
  else if (measured && claim?.notExcluded !== true) sentences.push(t("plots.none-left"));
  if (excluded.length > 0) sentences.push(t("plots.excluded-are", { count: excluded.length }));
  return sentences.join(" ");
}

function stateWord(band: Band, claimed: boolean, locale: Locale): string {
  const t = tellerOf(locale);
  const state =
    band.notExcluded === undefined ? "–" : band.notExcluded ? t("plots.not-excluded") : t("plots.excluded");
  return claimed ? `${t("plots.claimed")}; ${state}` : state;
}
