import { message } from "../../calibration/message.ts";
import { mass, massBesideLimit } from "./amounts.ts";
import { atLeast, type CheckedBy, type CheckResult, shownGrams } from "./check.ts";

const mostPerReadability = 3;

/** Where on the pan a load is set away from the middle, in the order the test asks for. */
export const panPlaces = ["front-left", "back-left", "back-right", "front-right", "middle-again"] as const;

export interface EccentricityTest {
  loadGrams: number;
  /** reading with the load in the middle, g, as shown */
  centre: string;
  /** readings with the same load away from the middle; `place` is one of `panPlaces`, or as somebody names it */
  places: readonly { place: string; reading: string }[];
  readabilityGrams: number;
  mostGrams?: number;
}

export interface EccentricityFound {
  largestGrams: number;
  place: string;
  /** standard uncertainty per gram of load, for a load not centred with care: |ΔR|/(2√3 L), EURAMET cg-18 v4.0 7.1 [clause from memory] */
  uPerGram: number;
}

/** Corner load: how far the reading moves when the load stands off-centre. Throws Refusal below three places. */
export function eccentricity(test: EccentricityTest, checked: CheckedBy): CheckResult<EccentricityFound> {
  const { loadGrams, centre, places, readabilityGrams } = test;
  atLeast(3, places);
  const moved = places.map(({ place, reading }) => ({
    place,
    grams: shownGrams(reading) - shownGrams(centre),
  }));
  const worst = moved.reduce((a, b) => (Math.abs(b.grams) > Math.abs(a.grams) ? b : a));
  const largestGrams = Math.abs(worst.grams);
  const most = test.mostGrams ?? mostPerReadability * readabilityGrams;
  const passed = largestGrams <= most;
  const { found, limit } = massBesideLimit(largestGrams, most);
  return {
    ...checked,
    kind: "eccentricity",
    passed,
    says: message("bench-check.eccentricity.found", {
      load: mass(loadGrams),
      place: placeTold(worst.place),
      moved: found,
      passed: String(passed),
      limit,
    }),
    todo: message(passed ? "bench-check.eccentricity.passed" : "bench-check.eccentricity.failed"),
    found: { largestGrams, place: worst.place, uPerGram: largestGrams / (2 * Math.sqrt(3) * loadGrams) },
  };
}

function placeTold(place: string) {
  const known = panPlaces.find((one) => one === place);
  return known === undefined ? place : message(`bench-check.place.${known}`);
}
