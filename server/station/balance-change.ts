import type { Piece } from "../weighing/piece.ts";

/** What a person has to look at when the balance changes under a piece; undefined when there is nothing. */
export function whatToLookAt(
  name: string,
  piece: Piece | undefined,
  how: "opened" | "heard-all-along",
): string | undefined {
  if (how === "opened")
    return "The balance was exchanged or opened anew while a piece is on the bench. Check its zero before weighing on.";
  const others = piece?.captures.filter(({ setAside, balance }) => !setAside && balance !== name) ?? [];
  return others.length === 0
    ? undefined
    : "Readings of this piece came from another balance, and an error that both readings share cancels on one balance only. Check that both show the same for one check weight, and the zero of this one.";
}
