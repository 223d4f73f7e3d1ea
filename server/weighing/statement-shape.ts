import type { Code, Message, Params } from "../../calibration/message.ts";
import type { CandidateKind } from "../conformity/candidate.ts";
import type { Decision } from "../conformity/decision-rule.ts";
import type { ExcludedByTest } from "../conformity/evidence/weighed-evidence.ts";
import type { NextTest } from "../conformity/next-test.ts";
import type { HarmlessTest, Separation } from "../conformity/separation.ts";
import type { State } from "../conformity/state.ts";
import type { FamilyFineness } from "../metals/fineness/family-fineness.ts";
import type { Occurrence } from "../metals/worth-table.ts";
import type { Remedy, Severity } from "./checks/check.ts";

/** Fineness and fine mass over the recipes a claim allows; entries of earlier versions hold no parts. */
export type StatedFineness = Omit<FamilyFineness, "parts"> & Partial<Pick<FamilyFineness, "parts">>;

/** One check as a statement tells it: of the procedure, or of the measurement. */
export interface StatedCheck {
  code: Code;
  severity: Severity;
  params: Params;
  remedies: readonly Remedy[];
}

/** One line of the budget; the input is a code with its values. */
export interface BudgetLine {
  input: string;
  unit: string;
  value: number;
  u: number;
  sensitivity: number;
  contribution_g_cm3: number;
  share: number;
}

/** The numbers of a measurement, full precision, in the units of their names. */
export interface StatedDensity {
  density_g_cm3: number;
  u_g_cm3: number;
  /** null when every uncertainty is taken as known */
  dof: number | null;
  k: number;
  expanded_g_cm3: number;
  interval_g_cm3: [number, number];
  interval_from: "gum" | "monte-carlo";
  density_20_g_cm3: number;
  relative_density: { d20_4: number; apparent: number };
  mass_g: number;
  u_mass_g: number;
  volume_cm3: number;
  u_volume_cm3: number;
  /** null where no liquid was needed */
  liquid_density_g_cm3: number | null;
  air_density_kg_m3: number;
  budget: BudgetLine[];
}

/** The claim's band as limits under the rule agreed before measuring. */
export interface StatedDecision {
  rule: Decision["rule"];
  limits_g_cm3: [number, number];
  /** null when the guard bands leave nothing between them */
  acceptance_g_cm3: [number, number] | null;
  verdict: Decision["verdict"];
  conformance_probability: number;
  specific_risk: number;
  worst_acceptance_risk: number;
}

export interface StatedConformity {
  /** id of the metal; null where nothing is claimed */
  claim: string | null;
  state: State;
  /** why, with the numbers behind it; left out without a claim */
  says?: Message;
  decision?: StatedDecision;
  /**
   * the fewest harmless tests, each found as the claim shows it, that would leave the claim alone; null when something
   * stays beside it whatever is found
   */
  consistent_after?: readonly HarmlessTest[] | null;
  /** what the rule leaves undone over many pieces offered as the claim, shares of all of them */
  global_risk?: { consumers: number; producers: number; beyond_density: number };
  /** half-width that would decide, where a finer density would */
  needed_half_width_g_cm3?: number;
}

/** What is left after density and tests; the claim itself is beside nothing. */
export interface StatedAlternative {
  id: string;
  kind: CandidateKind;
  occurrence: Occurrence;
  likelihood_ratio: number;
  /** why it is left beside the claim, and what would tell it from it */
  why?: Message;
  separated_by?: Separation;
}

/** What a statement says beside the numbers of the density. */
export interface StatedMeaning {
  id: string;
  checks: StatedCheck[];
  conformity: StatedConformity;
  not_excluded: StatedAlternative[];
  excluded_by_tests: ExcludedByTest[];
  fineness: StatedFineness | null;
  /** of an alloy set in something else: masses of both, if the alloy is the claim */
  set_in?: { alloy_g: [number, number]; body_g: [number, number] };
  cautions: string[];
  next_tests: NextTest[];
  answer: Message;
  versions: { library: string };
}

/** What one weighing says, made once; every page, report, file and answer draws it. */
export type Statement = StatedMeaning & StatedDensity;

/** The same where the readings cannot be those of a density: the checks say why. */
export type NoReading = StatedMeaning & { budget: BudgetLine[] } & {
  [K in Exclude<keyof StatedDensity, "budget">]: null;
};
