import type { BenchClosed } from "../checks/bench-closed.ts";
import type { BenchParts } from "./bench-parts.ts";
import type { Piece } from "./piece.ts";

/**
 * How the bench stood in its checks while this piece was weighed, for its record: closed at any of its readings or now,
 * by the balance each reading came from. Undefined when nothing is to be said.
 */
export function checkedWhile(
  { captures }: Piece,
  { closed }: Pick<BenchParts, "closed">,
): { closed: BenchClosed } | undefined {
  if (closed === undefined) return undefined;
  const standing = captures.filter(({ setAside }) => setAside === undefined);
  const balances = [...new Set(standing.map(({ balance }) => balance))];
  const found =
    balances.map((balance) => closed(balance)).find(Boolean) ??
    standing.map(({ balance, at }) => closed(balance, at)).find(Boolean);
  return found && { closed: found };
}
