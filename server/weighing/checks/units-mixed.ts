import { grams, type WatchedReading } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** The unit key was pressed in mid-run: readings of one piece carry different units. */
export const unitsMixed: Watch = {
  kind: "units-mixed",
  look({ dry, wet, flaskFull = [], dryAfter = [], zeros = [] }) {
    const readings = [...dry, ...flaskFull, ...zeros, ...wet, ...dryAfter].sort(byTime);
    const first = readings[0];
    const other = readings.find(({ unit }) => unit !== first?.unit);
    if (first === undefined || other === undefined) return undefined;
    return {
      says: `The unit changed in mid-run: ${first.text} ${first.unit}, then ${other.text} ${other.unit} (${grams(other)} g).`,
      ask: `Did the balance really change to ${other.unit}, or was the unit typed wrong?`,
      remedies: [
        { says: `Set the balance back to ${first.unit} and take the reading again.` },
        { says: "If both units are as shown, keep the readings: each is converted by itself." },
      ],
      blocking: true,
    };
  },
};

const byTime = (a: WatchedReading, b: WatchedReading) => a.at.localeCompare(b.at);
