import { decimalsShown } from "../../calibration/decimal.ts";
import { mean } from "../../calibration/mean.ts";
import { stepGrams, toGrams } from "../../calibration/units.ts";
import type { Entry } from "./entry.ts";
import { excludedIn } from "./excluded.ts";
import type { RecordRow } from "./tables.ts";

/**
 * What the balance showed for the piece dry, as a receipt has it: the one reading in its unit with its decimals, or
 * the mean of several; less the hanger where the dry readings hold it. Without a reading, no text, and `massG` (g).
 */
export function dryMass(entries: readonly Entry[], massG: number): Pick<RecordRow, "dry" | "dry_g"> {
  const excluded = excludedIn(entries);
  const readings = entries.flatMap((entry) =>
    entry.kind === "capture" && entry.body.what === "dry" && !excluded.has(entry.id)
      ? [entry.body.reading]
      : [],
  );
  const [first] = readings;
  if (first === undefined) return { dry: "", dry_g: massG };
  const details = entries.findLast((entry) => entry.kind === "weighing-details");
  const hanger = details?.kind === "weighing-details" ? details.body.hanger?.in_air : undefined;
  const hangerG = hanger === undefined ? 0 : Number(toGrams(hanger.text, hanger.unit));
  // no more digits than the sum of decimal readings has
  const grams = Number((mean(readings.map((reading) => Number(reading.grams))) - hangerG).toPrecision(12));
  if (hanger === undefined && readings.every(({ unit }) => unit === first.unit)) {
    const decimals = Math.max(...readings.map(({ text }) => decimalsShown(text)));
    const shown =
      readings.length === 1 ? first.text : mean(readings.map(({ text }) => Number(text))).toFixed(decimals);
    return { dry: `${shown} ${first.unit}`, dry_g: grams };
  }
  const stepG = Math.max(...readings.map(({ text, unit }) => stepGrams(text, unit)));
  return { dry: `${grams.toFixed(Math.max(0, Math.ceil(-Math.log10(stepG))))} g`, dry_g: grams };
}
