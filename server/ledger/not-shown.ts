import { type Message, message } from "../../calibration/message.ts";
import type { Signed, Trust } from "./signature-walk.ts";

/** What a check of a ledger that was found good does not show, as it is told to a person. */
export function unshown(
  entries: number,
  signed: Signed,
  { keyId, checkpoints = [] }: Trust,
  shared: boolean,
): Message[] {
  const outside = Math.max(0, ...checkpoints.map(({ seq }) => seq));
  const found: Message[] = [];
  if (keyId === undefined) found.push(message("ledger.not-shown.key"));
  // The checkpoint itself is a row that nothing signed yet; with it at the end all that was recorded is signed.
  if (entries > signed.upTo + 1)
    found.push(
      shared && signed.byAnyUpTo > signed.upTo
        ? message("ledger.not-shown.other-keys", { from: signed.upTo + 1, to: entries })
        : message("ledger.not-shown.tail", { from: signed.upTo + 1, to: entries }),
    );
  if (outside < entries - 1) found.push(message("ledger.not-shown.end", { row: outside, last: entries }));
  return found;
}
