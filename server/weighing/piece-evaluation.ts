import { type Evaluated, type Evaluation, inEnglish, isRefused } from "../compute/evaluation.ts";
import { rolesOf } from "../methods/index.ts";
import type { BenchParts } from "../station/bench-parts.ts";
import { type Piece, standing } from "./piece.ts";
import { Refusal } from "./refusal.ts";
import { requestFor } from "./request.ts";
import { roleNames } from "./role-names.ts";

type Evaluating = Pick<BenchParts, "conditions" | "profileOf" | "evaluate">;

/** What the readings of a piece come to so far; undefined while one is missing. */
export async function evaluationOfPiece(piece: Piece, bench: Evaluating): Promise<Evaluation | undefined> {
  const request = requestFor(piece, bench.conditions(), bench.profileOf);
  return request === undefined ? undefined : bench.evaluate(request);
}

/** The same for a record. Throws Refusal that names what is missing, or why the readings cannot be evaluated. */
export async function wholeEvaluation(piece: Piece, bench: Evaluating): Promise<Evaluated> {
  const evaluation = await evaluationOfPiece(piece, bench);
  if (evaluation && !isRefused(evaluation)) return evaluation;
  if (evaluation) throw new Refusal(`The record was not written. ${inEnglish(evaluation)}`);
  const missing = rolesOf(piece.method)
    .filter((role) => standing(piece, role).length === 0)
    .map((role) => `the ${roleNames[role]} reading`)
    .concat(piece.waterCelsius === undefined ? ["the water temperature"] : []);
  throw new Refusal(`The record needs ${missing.join(" and ")} first.`);
}
