import { Refusal } from "../../calibration/refusal.ts";

/** Somebody who may sign in at this house. */
export interface NamedPerson {
  id: string;
  name: string;
  initials: string;
}

const bare = (name: string) => name.normalize("NFKC").replace(/[\s.]/g, "").toLowerCase();

/** Whether two names or initials are of one person, as far as they are written. */
export const isSamePerson = (one: string, other: string): boolean => bare(one) === bare(other);

/** Who says it. Throws Refusal when nobody is named. */
export function namedBy(by: string | undefined): string {
  const name = by?.trim() ?? "";
  if (name === "") throw new Refusal("settlement.by-missing", {}, "by");
  return name;
}

/** Why. Throws Refusal when nothing is said. */
export function reasonOf(reason: string | undefined): string {
  const words = reason?.trim() ?? "";
  if (words === "") throw new Refusal("settlement.reason-missing", {}, "reason");
  return words;
}

/**
 * A second person, other than the first. Where people sign in at this house, both are among them, and are two. Throws
 * Refusal when none is named, or the same one, or nobody that is known.
 */
export function secondTo(
  by: string,
  second: string | undefined,
  { limit, people = [] }: { limit?: string; people?: readonly NamedPerson[] | undefined } = {},
): string {
  const name = second?.trim() ?? "";
  if (name === "")
    throw limit === undefined
      ? new Refusal("settlement.second-missing", {}, "second")
      : new Refusal("settlement.second-missing-above", { limit }, "second");
  mustBeTwo([by, "by"], [name, "second"], people);
  return name;
}

/** Throws Refusal at the second field where two names are those of one person, or where one of them is nobody's. */
export function mustBeTwo(
  [one, at]: readonly [who: string, at: string],
  [other, otherAt]: readonly [who: string, at: string],
  people: readonly NamedPerson[] = [],
): void {
  const ids = people.length === 0 ? [] : [idOf(one, at, people), idOf(other, otherAt, people)];
  if (isSamePerson(one, other) || (ids.length === 2 && ids[0] === ids[1]))
    throw new Refusal("settlement.second-same", { who: other }, otherAt);
}

function idOf(who: string, at: string, people: readonly NamedPerson[]): string {
  const found = people.find(({ name, initials }) => isSamePerson(who, initials) || isSamePerson(who, name));
  if (!found) throw new Refusal("settlement.person-unknown", { who }, at);
  return found.id;
}
