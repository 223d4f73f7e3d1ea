import { Refusal } from "../../calibration/refusal.ts";

/** Whether two names or initials are of one person, as far as they are written. */
export function isSamePerson(one: string, other: string): boolean {
  const bare = (name: string) => name.replace(/[\s.]/g, "").toLowerCase();
  return bare(one) === bare(other);
}

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

/** A second person, other than the first. Throws Refusal when none is named, or the same one. */
export function secondTo(by: string, second: string | undefined, limit?: string): string {
  const name = second?.trim() ?? "";
  if (name === "")
    throw limit === undefined
      ? new Refusal("settlement.second-missing", {}, "second")
      : new Refusal("settlement.second-missing-above", { limit }, "second");
  if (isSamePerson(by, name)) throw new Refusal("settlement.second-same", { who: name }, "second");
  return name;
}
