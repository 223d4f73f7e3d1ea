import { mean } from "../../../calibration/mean.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { grams, rises, type Situation, seconds } from "./situation.ts";

/** Long enough to tell a drift from settling. */
const watchedSeconds = 10;

/** Slope of the live readings in g/s with its standard uncertainty, by least squares. */
function slope(live: NonNullable<Situation["live"]>): { gPerS: number; uGPerS: number } {
  const x = live.map(seconds);
  const y = live.map(grams);
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
    (timed, place) =>
      place > 0 && Math.abs(grams(timed) - grams(live[place - 1]!)) > loadInPlaces * balance.readabilityGrams,
  );
  return put < 0 ? live : live.slice(put);
}

/**
 * The live reading keeps moving one way during an immersion by more than d in ten seconds (common practice: read when
 * the drift is below that), clearly beyond its own noise.
 */
export const driftImmersed: ProcedureCheck = {
  code: "check.drift-immersed",
  detect(situation) {
    const live = sinceTheLoad(situation);
    if (live.length < 5 || seconds(live.at(-1)!) - seconds(live[0]!) < watchedSeconds) return undefined;
    const { gPerS, uGPerS } = slope(live);
    if (Math.abs(gPerS) * 10 <= situation.balance.readabilityGrams || Math.abs(gPerS) <= 4 * uGPerS)
      return undefined;
    const heavier = gPerS > 0;
    const lost = rises(situation) && !heavier;
    return {
      severity: "warn",
      params: {
        moves: heavier ? "up" : "down",
        g_per_minute: Math.abs(gPerS) * 60,
        cause: lost ? "lost" : rises(situation) !== heavier ? "leaving" : "growing",
      },
      remedies: lost
        ? [
            { code: "check.remedy.zero-reading-zero", offer: { do: "repeat", role: "zero" } },
            { code: "check.remedy.narrow-cup" },
          ]
        : [{ code: "check.remedy.wait-for-rest" }, { code: "check.remedy.never-rests" }],
    };
  },
};
