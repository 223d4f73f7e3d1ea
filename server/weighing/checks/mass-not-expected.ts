import { gramsPerUnit, massUnits } from "../../../calibration/units.ts";
import { massWords } from "../../checks/amounts.ts";
import { meanGrams } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** A dry mass no piece has, or not the mass the ticket gives: wrong piece, wrong unit, or a slip of the point. */
export const massNotExpected: Watch = {
  kind: "mass-not-expected",
  look({ dry, expectedMass }) {
    const mass = meanGrams(dry);
    const unit = dry[0]?.unit;
    if (mass === undefined || unit === undefined) return undefined;
    if (mass <= 0)
      return {
        says: `The dry reading is ${massWords(mass)}: no piece weighs that.`,
        ask: "Was the balance zeroed with the piece on the pan?",
        remedies: [
          { says: "Zero the empty pan, then weigh the piece again.", offer: { do: "repeat", role: "dry" } },
        ],
        blocking: true,
      };
    if (expectedMass === undefined) return undefined;
    const { lowGrams, highGrams, from } = expectedMass;
    if (mass >= lowGrams && mass <= highGrams) return undefined;
    const shown = mass / Number(gramsPerUnit[unit]);
    const fits = (grams: number) => grams >= lowGrams && grams <= highGrams;
    const meant = massUnits.find((other) => other !== unit && fits(shown * Number(gramsPerUnit[other])));
    const shifted = [0.01, 0.1, 10, 100].find((factor) => fits(mass * factor));
    return {
      says:
        `The piece weighs ${massWords(mass)}; the ${from} says ${massWords(lowGrams)} to ${massWords(highGrams)}.` +
        (meant === undefined ? "" : ` Read as ${meant}, it would fit.`) +
        (meant === undefined && shifted !== undefined
          ? " With the point one or two places over, it would fit."
          : ""),
      ask:
        meant === undefined
          ? "Is this the piece of that ticket, dry and alone on the pan?"
          : `Does the balance show ${meant} rather than ${unit}?`,
      remedies: [
        { says: "Compare the piece with its photograph and ticket: mass is the fingerprint of a piece." },
        { says: "Look at the unit the balance shows, and at the decimal point of a typed reading." },
      ],
      blocking: true,
    };
  },
};
