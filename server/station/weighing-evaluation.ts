import type { Evaluation } from "../compute/evaluation.ts";
import type { Piece } from "../weighing/piece.ts";
import { requestFor } from "../weighing/request.ts";
import type { BenchParts } from "./bench-parts.ts";

/** What the readings of a piece come to so far; undefined while one is missing. */
export async function evaluationOfPiece(
  piece: Piece,
  bench: Pick<BenchParts, "conditions" | "profileOf" | "evaluate">,
): Promise<Evaluation | undefined> {
  const request = requestFor(piece, bench.conditions(), bench.profileOf);
  return request === undefined ? undefined : bench.evaluate(request);
}
