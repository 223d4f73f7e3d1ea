import type { Evaluation } from "../compute/evaluation.ts";
import type { Library } from "../metals/library.ts";
import { rolesOf } from "../methods/index.ts";
import type { Check } from "./checks/check.ts";
import { checksOf } from "./checks/index.ts";
import type { SituationReading } from "./checks/situation.ts";
import type { Conditions } from "./conditions.ts";
import { type Item, standing } from "./item.ts";
import { balanceFor, type ProfileOf } from "./request.ts";
import { situationOf } from "./situation.ts";

/** What the checks on the procedure look at beside the weighing itself. */
export interface WeighingSituation {
  conditions: Conditions;
  profileOf?: ProfileOf | undefined;
  evaluation?: Evaluation | undefined;
  library: Library;
  /** what the balance showed while the immersion that goes on was waited for */
  live?: readonly SituationReading[];
}

/** What looks wrong about a weighing as far as it goes, the same at the bench, in a lot and for a record. */
export function procedureChecks(item: Item, situation: WeighingSituation): Check[] {
  const { conditions, profileOf, evaluation, library, live = [] } = situation;
  const dry = standing(item, "dry");
  if (dry.length === 0) return [];
  const wet = rolesOf(item.method)
    .filter((role) => role !== "dry")
    .flatMap((role) => standing(item, role));
  const balance = balanceFor({ dry, wet, steps: item.details.steps }, conditions, profileOf);
  return checksOf({ ...situationOf(item, balance, evaluation, library), live });
}
