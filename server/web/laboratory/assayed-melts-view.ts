import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { fixed } from "../../../views/numbers.ts";
import type { AssayedMelts } from "../../melts/assayed-melts.ts";
import { componentDensity } from "../../metals/component-density.ts";
import { goldLike } from "../../metals/fineness/family-fineness.ts";
import type { PermilleRange } from "../../metals/fineness/fineness.ts";
import {
  fewestResults,
  type RestOfResults,
  restOfResults,
} from "../../metals/fineness/laboratory-results.ts";

/** What the melts of this house foretell of one further melt, in words, with its rest once enough are assayed. */
export function meltsSay(
  { results, silent }: AssayedMelts,
  confidence: number,
  locale: Locale,
): { message: string; rest?: RestOfResults } | undefined {
  const t = tellerOf(locale);
  const notCounted = silent > 0 ? [t("assay.own-melts.silent", { count: silent })] : [];
  if (results.length === 0) return silent > 0 ? { message: notCounted.join(" ") } : undefined;
  const melts = results.length;
  const rest = restOfResults("Au", results, confidence);
  if (!rest)
    return {
      message: [t("assay.own-melts.few", { melts, needed: fewestResults }), ...notCounted].join(" "),
    };
  const finenesses = results.map(({ permille }) => permille);
  const whole = (of: number) => fixed(of, 0, locale);
  const volume = (cm3PerG: number) => fixed(cm3PerG, 4, locale);
  const [low, high] = rest.cm3PerG;
  return {
    message: [
      t("assay.own-melts.typical", {
        melts,
        low: whole(Math.min(...finenesses)),
        high: whole(Math.max(...finenesses)),
      }),
      ...notCounted,
      t("assay.own-melts.next", {
        confidence: `${fixed(100 * confidence, 2, locale)} %`,
        low: volume(low),
        high: volume(high),
        silver: volume(1 / componentDensity("Ag").gPerCm3),
        copper: volume(1 / componentDensity("Cu").gPerCm3),
      }),
    ].join(" "),
    rest,
  };
}

/** What the melts of this house say of a density of gold alloy. */
export interface MeltsForetell {
  message: readonly string[];
  /** the fineness that a melt with such a rest would have; left out while too few are assayed, or where none has the density */
  permille?: PermilleRange;
}

/** In words, for a density of gold alloy; undefined while no melt of this house was assayed. */
export function meltsForetell(
  melts: AssayedMelts,
  { measured, celsius }: { measured: MeasuredDensity; celsius: number },
  locale: Locale,
): MeltsForetell | undefined {
  const t = tellerOf(locale);
  const { confidence } = measured;
  const foretold = meltsSay(melts, confidence, locale);
  if (!foretold?.rest) return foretold && { message: [foretold.message] };
  // of one gram, since a fineness asks for no mass
  const found = goldLike(
    foretold.rest,
    { measured, celsius, massG: 1, uMassG: 0, commonShare: 1 },
    confidence,
  );
  const only = t("assay.own-melts.only");
  if (!found) return { message: [foretold.message, t("assay.own-melts.impossible"), only] };
  const [low, high] = found.permille;
  const whole = (of: number) => fixed(of, 0, locale);
  const narrower = t("assay.own-melts.narrower", {
    low: whole(Math.floor(low)),
    high: whole(Math.ceil(high)),
  });
  return { message: [foretold.message, narrower, only], permille: { low, high } };
}
