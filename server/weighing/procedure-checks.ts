import type { Evaluation } from "../compute/evaluation.ts";
import type { Library } from "../metals/library.ts";
import { rolesOf } from "../methods/index.ts";
import type { Check } from "./checks/check.ts";
import { checksOf } from "./checks/index.ts";
import type { SituationReading } from "./checks/situation.ts";
import type { Conditions } from "./conditions.ts";
import { type Piece, standing } from "./piece.ts";
import { balanceFor, type ProfileOf } from "./request.ts";
import { situationOf } from "./situation.ts";

/** What the checks on the procedure look at beside the weighing itself. */
export interface Watched {
  conditions: Conditions;
  profileOf?: ProfileOf | undefined;
  evaluation?: Evaluation | undefined;
  library: Library;
  /** what the balance showed while the immersion that goes on was waited for */
  live?: readonly SituationReading[];
}

/** What looks wrong about a weighing as far as it goes, the same at the bench, in a lot and for a record. */
export function procedureChecks(piece: Piece, watched: Watched): Check[] {
  const { conditions, profileOf, evaluation, library, live = [] } = watched;
  const dry = standing(piece, "dry");
  if (dry.length === 0) return [];
  const wet = rolesOf(piece.method)
    .filter((role) => role !== "dry")
    .flatMap((role) => standing(piece, role));
  const balance = balanceFor({ dry, wet, steps: piece.details.steps }, conditions, profileOf);
  return checksOf({ ...situationOf(piece, balance, evaluation, library), live });
}
