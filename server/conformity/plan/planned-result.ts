import type { Message, Param } from "../../../calibration/message.ts";
import type { NotExcluded } from "../conformity.ts";
import type { State } from "../state.ts";
import type { Remedy } from "./remedies.ts";

/** What a weighing would show if the claim were true. */
export interface Plan {
  claim: string;
  /** false when the scale cannot see the displaced mass at all; only `says` and `remedies` then mean anything */
  possible: boolean;
  expected: { dryG: number; displacedG: number; immersedG: number; gPerCm3: number };
  /** half-width of the interval, and the same in per cent of the density */
  expandedGPerCm3: number;
  expandedPercent: number;
  intervalGPerCm3: readonly [number, number];
  /** where the claim of a piece that is what it is said to be would stand; null where nothing can be seen */
  state: State | null;
  /** cheaper metals that this weighing would exclude, likeliest first, then nearest in density */
  excludes: { id: string; called: Param }[];
  /** every metal of the library it would not exclude, the claim and recipes of a family among them */
  fitting: readonly string[];
  /** the alternatives it would leave, each with why and with what separates it */
  cannotExclude: NotExcluded[];
  /** what would exclude those of them that density can exclude */
  remedies: Remedy[];
  /** with several pieces weighed together: how many of a kind that is excluded alone would hide in their mean */
  pooled: { id: string; called: Param; hidden: number }[];
  /** the plan in a few sentences */
  message: readonly Message[];
}
