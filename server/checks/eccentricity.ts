import { massWords } from "./amounts.ts";
import { atLeast, type CheckedBy, type CheckResult, shownGrams } from "./check.ts";

const mostPerReadability = 3;

export interface EccentricityTest {
  loadGrams: number;
  /** reading with the load in the middle, g, as shown */
  centre: string;
  /** readings with the same load away from the middle ("front left", "hook swung") */
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

/** Corner load: how far the reading moves when the load stands off-centre. Throws RangeError below three places. */
export function eccentricity(test: EccentricityTest, checked: CheckedBy): CheckResult<EccentricityFound> {
  const { loadGrams, centre, places, readabilityGrams } = test;
  atLeast(3, places, "An eccentricity test");
  const moved = places.map(({ place, reading }) => ({
    place,
    grams: shownGrams(reading) - shownGrams(centre),
  }));
  const worst = moved.reduce((a, b) => (Math.abs(b.grams) > Math.abs(a.grams) ? b : a));
  const largestGrams = Math.abs(worst.grams);
  const most = test.mostGrams ?? mostPerReadability * readabilityGrams;
  const passed = largestGrams <= most;
  return {
    ...checked,
    kind: "eccentricity",
    passed,
    says: `With ${massWords(loadGrams)} ${worst.place} the reading moves by ${massWords(worst.grams)}, ${passed ? "within" : "more than"} ${massWords(most)}.`,
    todo: passed
      ? "Keep beaker and hook in the same place for zero and reading; then even this cancels."
      : "Level the balance, look for something touching the pan, and repeat. Until it passes, centre every load with care.",
    found: { largestGrams, place: worst.place, uPerGram: largestGrams / (2 * Math.sqrt(3) * loadGrams) },
  };
}
