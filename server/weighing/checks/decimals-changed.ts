import { lastPlace } from "../../../calibration/decimal.ts";
import { gramsPerUnit } from "../../../calibration/units.ts";
import { grams, type WatchedReading } from "./situation.ts";
import type { Watch } from "./watch.ts";

/**
 * Readings that stand for the same thing show different last places. Coarser at a heavier load is what a balance of
 * two ranges does and is not asked about; anything else is another balance, a changed setting or a typing slip.
 */
export const decimalsChanged: Watch = {
  kind: "decimals-changed",
  look({ dry, wet, flaskFull = [], dryAfter = [] }) {
    const readings = [...dry, ...flaskFull, ...wet, ...dryAfter];
    for (const [place, reading] of readings.entries())
      for (const other of readings.slice(place + 1)) {
        const [fine, coarse] = stepGrams(reading) < stepGrams(other) ? [reading, other] : [other, reading];
        const same = Math.abs(stepGrams(fine) / stepGrams(coarse) - 1) < 1e-6;
        const heavier = Math.abs(grams(coarse)) > Math.abs(grams(fine)) + 2 * stepGrams(coarse);
        if (same || heavier || fine.unit !== coarse.unit) continue;
        return {
          says: `The readings changed their decimals: ${fine.text} ${fine.unit} and ${coarse.text} ${coarse.unit}.`,
          ask: "Is it the same balance in the same setting, or did a typed reading lose its last figures?",
          remedies: [
            {
              says: "If figures were lost in typing (10.40 typed as 10.4), amend the reading as it was shown.",
            },
            { says: "If another balance or setting came in, take all readings of this piece again on one." },
          ],
          blocking: false,
        };
      }
    return undefined;
  },
};

const stepGrams = ({ text, unit }: WatchedReading) => lastPlace(text) * Number(gramsPerUnit[unit]);
