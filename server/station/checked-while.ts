import type { BodyOf } from "../ledger/kinds.ts";
import type { Item } from "../weighing/item.ts";
import type { BenchParts } from "./bench-parts.ts";

type Checks = Pick<BenchParts, "closed" | "currentProfiles">;

/**
 * What the checks say for the record of this piece: whether the bench was closed at any of its readings or is now, by
 * the balance each reading came from, and which versions of the profiles its budget rests on. Undefined when nothing is
 * to be said. Throws LedgerError.
 */
export async function checkedWhile(
  { captures }: Item,
  { closed, currentProfiles }: Checks,
): Promise<BodyOf<"result">["checked"]> {
  const standing = captures.filter(({ excluded }) => excluded === undefined);
  const balances = [...new Set(standing.map(({ balance }) => balance))];
  const closedNow = balances.map((balance) => closed?.(balance)).find(Boolean);
  const closedBy = closedNow ?? standing.map(({ balance, at }) => closed?.(balance, at)).find(Boolean);
  const profiles = ((await currentProfiles?.(balances)) ?? []).map(({ of, version, entry, validUntil }) => ({
    of,
    version,
    entry,
    validUntil,
  }));
  if (closedBy === undefined && profiles.length === 0) return undefined;
  const mark = closedBy && { since: closedBy.since, says: closedBy.says, todo: closedBy.todo };
  return { ...(mark && { closed: mark }), ...(profiles.length > 0 && { profiles }) };
}
