import type { BodyOf } from "../ledger/kinds.ts";
import { photoKey } from "../photos/photo-folder.ts";
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

/** Sets a photo of the piece aside. Throws Refusal without a reason, or for a photo that is not there any more. */
export function asidePhoto(piece: Piece, entry: string, reason: string, by = ""): BodyOf<"voiding"> {
  const before = piece.photosAside.find((photo) => photo.entry.id === entry);
  if (before) throw new Refusal(`That photo was already set aside: ${before.reason}.`);
  if (!piece.photos.some(({ id }) => id === entry))
    throw new Refusal("That photo does not belong to this piece. Reload the page.");
  if (reason.trim() === "")
    throw new Refusal("Setting a photo aside needs a reason, such as: it shows another piece.", "reason");
  return { entry, reason: reason.trim(), ...(by.trim() === "" ? {} : { by: by.trim() }) };
}

/** The key a photo is kept under: the same picture is kept once, and once more after it was set aside. */
export function keyOfPhoto({ id, photosAside }: Piece, hash: string): string {
  const times = photosAside.filter(({ entry }) => entry.body.hash === hash).length;
  return times === 0 ? photoKey(id, hash) : `${photoKey(id, hash)}-again-${times}`;
}
