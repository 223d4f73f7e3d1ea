import type { BenchClosed } from "../checks/bench-closed.ts";
import type { Evaluate } from "../compute/evaluation.ts";
import type { Plan } from "../conformity/plan/planned-result.ts";
import type { PlannedWeighing } from "../conformity/plan/planned-weighing.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { Library } from "../metals/library.ts";
import type { NamedPerson } from "../settlements/person.ts";
import type { Conditions } from "../weighing/conditions.ts";
import type { ProfileOf } from "../weighing/request.ts";
import type { SensorsNow } from "../weighing/sensor-value.ts";
import type { AdjustmentOpen } from "./adjustment-repository.ts";
import type { BenchSettings } from "./bench-settings.ts";
import type { ProfileVersion } from "./profile-versions.ts";
import type { Scale } from "./scale.ts";

/** What a bench is made of. */
export interface BenchParts {
  ledger: Ledger;
  scale: Scale | undefined;
  /** whether the readings come from an invented balance */
  simulated: boolean;
  evaluate: Evaluate;
  conditions: () => Conditions;
  versions: Record<string, string>;
  /** what the checks say of a balance; without it the conditions alone count */
  profileOf?: ProfileOf;
  /** why the checks of a balance close the bench, now or at a moment; without it the bench is never closed */
  closed?: (balance: string, at?: string) => BenchClosed | undefined;
  /** the adjustment of a balance that asks for the reference piece; without it none is known */
  adjusted?: (balance: string) => AdjustmentOpen | undefined;
  /** the versions of the profiles that budgets take their numbers from; without it records name none */
  currentProfiles?: (balances: readonly string[]) => Promise<readonly ProfileVersion[]>;
  /** the metals in force; the built-in ones when left out */
  library?: () => Library;
  /** what the sensors beside the balance show at this moment; without it there are none */
  sensors?: () => SensorsNow;
  /** the balances that are heard although the bench takes from another one */
  others?: () => readonly { address: string; name: string }[];
  /** what a weighing will show before the piece is wet; without it nothing is foretold */
  plan?: (weighing: PlannedWeighing) => Promise<Plan>;
  /** how a new piece begins; a new bench's when left out */
  preferences?: () => Preferences;
  /** who may sign in at this house; nobody where nobody signs in */
  people?: () => readonly NamedPerson[];
}

/** What a new piece takes from the settings. */
export type Preferences = Pick<BenchSettings, "method" | "metal" | "decisionRule" | "secondPerson" | "place">;
