import { type Message, message } from "../../calibration/message.ts";
import type { Piece } from "../weighing/piece.ts";

/** What a person has to look at when the balance changes under a piece; undefined when there is nothing. */
export function whatToLookAt(
  name: string,
  piece: Piece | undefined,
  how: "opened" | "heard-all-along",
): Message | undefined {
  if (how === "opened") return message("balance.check.exchanged");
  const isOther = piece?.captures.some(({ setAside, balance }) => !setAside && balance !== name);
  return isOther ? message("balance.check.other-readings") : undefined;
}
