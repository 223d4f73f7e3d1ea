import type { Code, Params } from "../../../calibration/message.ts";
import { methods } from "../../methods/index.ts";
import type { CheckCode } from "../../methods/method.ts";

export type { CheckCode };

/** What the checks that all methods share recognise; one file each in this folder, listed in index.ts. */
const shared = [
  "check.units-mixed",
  "check.decimals-changed",
  "check.fahrenheit",
  "check.water-unlike-room",
  "check.sensor-silent",
  "check.temperature-jumped",
  "check.sensor-display-changed",
  "check.thermometers-differ",
  "check.mass-not-expected",
  "check.display-stuck",
  "check.moved-on",
  "check.creeping",
  "check.creep-possible",
  "check.dry-readings-differ",
  "check.boxes-swapped",
  "check.displaced-for-immersed",
  "check.displacement-negative",
  "check.floats",
  "check.nothing-on-hook",
  "check.rests-on-bottom",
  "check.not-covered",
  "check.denser-than-osmium",
  "check.hanger-in-dry",
  "check.hanger-in-immersed",
  "check.tare-while-immersed",
  "check.zero-moved",
  "check.scatter-contradicts",
  "check.scatter-above-assumed",
  "check.trend",
  "check.readings-alike",
  "check.scatters-little",
  "check.still-climbing",
  "check.climbed",
  "check.bubbles-growing",
  "check.drift-immersed",
  "check.dry-mass-changed",
  "check.void-or-lighter",
  "check.lower-than-claim",
  "check.higher-than-claim",
  "check.repeats-exhausted",
] as const satisfies readonly CheckCode[];

/** Everything that is recognised, those of the methods too. */
export const checkCodes: readonly CheckCode[] = [
  ...shared,
  ...Object.values(methods).flatMap(({ checks = [] }) => checks.map(({ code }) => code)),
];

/**
 * Something a page may offer to do at one touch once the person agrees. A check itself changes nothing: an offer
 * taken up becomes an amendment or a voiding with its reason, and the original stays.
 */
export type Offer =
  | { do: "swap-dry-and-wet" }
  | { do: "read-as-displaced" }
  | { do: "read-as-immersed" }
  | { do: "set-celsius"; celsius: number }
  | { do: "exclude"; role: "dry" | "wet"; places: readonly number[] }
  // instead: in place of the last reading of the load, which cannot be right and is excluded
  | { do: "repeat"; role: "dry" | "wet" | "zero"; instead?: true };

/** What to do about a check. */
export interface Remedy {
  code: Code;
  params?: Params;
  offer?: Offer;
}

/** stop: no record and no verdict while it stands; warn: told beside the result */
export type Severity = "stop" | "warn";

/** What looks wrong about how a piece was weighed. It never changes a number. `CODE.ask` is its question to the person. */
export interface Check {
  code: CheckCode;
  severity: Severity;
  params: Params;
  /** most likely remedy first */
  remedies: readonly Remedy[];
}

/**
 * Checks that no answer settles, since no weighing of any metal gives such readings: they are repeated, swapped, read as
 * what they are, or excluded instead.
 */
export const impossible: ReadonlySet<string> = new Set<CheckCode>([
  "check.boxes-swapped",
  "check.displaced-for-immersed",
  "check.displacement-negative",
  "check.nothing-on-hook",
  "check.floats",
  "check.denser-than-osmium",
]);
