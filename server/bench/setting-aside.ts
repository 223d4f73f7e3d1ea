import type { BodyOf } from "../ledger/kinds.ts";
import type { Piece } from "./piece.ts";
import { Refusal } from "./refusal.ts";

/** Sets a reading of the piece aside. Throws Refusal without a reason, or for a reading that is not there any more. */
export function asideReading(piece: Piece, captureId: string, reason: string): BodyOf<"voiding"> {
  const capture = piece.captures.find(({ id }) => id === captureId);
  if (!capture) throw new Refusal("That reading does not belong to the piece on the bench. Reload the page.");
  if (capture.setAside) throw new Refusal(`That reading was already set aside: ${capture.setAside.reason}.`);
  if (reason.trim() === "")
    throw new Refusal("Setting a reading aside needs a reason, such as: bubble on the edge.", "reason");
  return { entry: captureId, reason: reason.trim() };
}

/** Sets another test of the piece aside. Throws Refusal without a reason. */
export function asideTest(piece: Piece, entry: string, reason: string): BodyOf<"voiding"> {
  if (!piece.tests.some((test) => test.entry.id === entry))
    throw new Refusal("That test does not belong to the piece on the bench. Reload the page.");
  if (reason.trim() === "")
    throw new Refusal(
      "Setting a test aside needs a reason, such as: magnet touched a steel clasp.",
      `reason-${entry}`,
    );
  return { entry, reason: reason.trim() };
}
