import { massWords } from "../../checks/amounts.ts";
import { grams, type Situation, seconds } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** Long enough to tell a drift from settling. */
const watchedSeconds = 10;

/** Slope of the live readings in g/s with its standard uncertainty, by least squares. */
function slope(live: NonNullable<Situation["live"]>): { gPerS: number; uGPerS: number } {
  const x = live.map(seconds);
  const y = live.map(grams);
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [x0, y0] = [mean(x), mean(y)];
  const sxx = x.reduce((sum, value) => sum + (value - x0) ** 2, 0);
  const gPerS = x.reduce((sum, value, place) => sum + (value - x0) * (y[place]! - y0), 0) / sxx;
  const rest = x.reduce((sum, value, place) => sum + (y[place]! - y0 - gPerS * (value - x0)) ** 2, 0);
  return { gPerS, uGPerS: Math.sqrt(rest / (x.length - 2) / sxx) };
}

/** A change between two looks of more than so many last places is a load put on or taken off, no drift. */
const loadInPlaces = 20;

function sinceTheLoad({ live = [], balance }: Situation): NonNullable<Situation["live"]> {
  const put = live.findLastIndex(
    (look, place) =>
      place > 0 && Math.abs(grams(look) - grams(live[place - 1]!)) > loadInPlaces * balance.readabilityGrams,
  );
  return put < 0 ? live : live.slice(put);
}

/**
 * The live reading keeps moving one way during an immersion by more than d in ten seconds (common practice: read when
 * the drift is below that), clearly beyond its own noise.
 */
export const driftImmersed: Watch = {
  kind: "drift-immersed",
  look(situation) {
    const live = sinceTheLoad(situation);
    if (live.length < 5 || seconds(live.at(-1)!) - seconds(live[0]!) < watchedSeconds) return undefined;
    const { gPerS, uGPerS } = slope(live);
    if (Math.abs(gPerS) * 10 <= situation.balance.readabilityGrams || Math.abs(gPerS) <= 4 * uGPerS)
      return undefined;
    const perMinute = `${massWords(Math.abs(gPerS) * 60)} a minute`;
    const heavier = gPerS > 0;
    const lost = situation.method === "displaced" && !heavier;
    return {
      says: `While the piece hangs in the water the reading ${heavier ? "rises" : "falls"} by ${perMinute}.`,
      ask: lost
        ? "Does water evaporate from the beaker, in a draught or from a wide cup?"
        : (situation.method === "displaced") !== heavier
          ? "Do bubbles leave the piece, or does water go into it?"
          : "Do bubbles grow on the piece, or does it slowly swing, sink or touch?",
      remedies: lost
        ? [
            {
              says: "Take zero, reading, zero quickly; the loss between the zeros is then known.",
              offer: { do: "repeat", role: "zero" },
            },
            { says: "Use a narrow high cup with a slotted lid, out of the draught." },
          ]
        : [
            { says: "Wait until it moves less than one last place in ten seconds, then read." },
            {
              says: "If it never rests: lift the piece out, dry it and weigh it dry. A gain means water inside.",
            },
          ],
      blocking: false,
    };
  },
};
