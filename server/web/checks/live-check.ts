import { Refusal } from "../../../calibration/refusal.ts";
import { isMassUnit, toGrams } from "../../../calibration/units.ts";
import { type CheckKind, entryName, type GuideEntry, guideOf } from "../../../views/checks/guides.ts";
import { rolesOf } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import { isUnmovedSince } from "../lots/second-press.ts";

type Fields = Readonly<Record<string, string>>;

/** Entries of a guided check that the balance shows. */
const shown = new Set(["reading", "before", "after", "dry", "full", "wet"]);

/** True for an entry of a load that the method in use does not weigh. */
export function isOfOtherMethod({ name }: GuideEntry, method: Parameters<typeof rolesOf>[0]): boolean {
  const loads = rolesOf(method).length;
  return (name === "full" && loads < 3) || (name === "wet" && loads < 2);
}

/** The entries of a check that are taken from the balance, in the order they are taken, by the names of their fields. */
export function readingsOf(kind: CheckKind, method: Parameters<typeof rolesOf>[0]): string[] {
  const { perRow, rows } = guideOf(kind);
  const taken = perRow.filter(
    (entry) => entry.unit === "mass" && shown.has(entry.name) && !isOfOtherMethod(entry, method),
  );
  return rows.flatMap((_, index) => taken.map((entry) => entryName(entry, index + 1)));
}

/** The readings of one unit: the first one taken chooses it. */
function unitOf(fields: Fields, names: readonly string[], read: string): string {
  return names.some((name) => (fields[name] ?? "").trim() !== "") ? (fields.unit ?? "g") : read;
}

/**
 * The form with the next reading filled in as the balance gives it once it rests. Throws Refusal without a balance, for
 * another unit than before, and while the load has not moved since the reading before: that would be the same one twice.
 */
export async function withNextReading(kind: CheckKind, fields: Fields, bench: Bench): Promise<Fields> {
  const { scale, waitingFor, preferences } = bench;
  if (!scale || waitingFor) throw new Refusal("lot.balance-not-free");
  const names = readingsOf(kind, preferences.method);
  const next = names.find((name) => (fields[name] ?? "").trim() === "");
  if (next === undefined) throw new Refusal("bench-check.entry.all-taken");
  const { takenAt = "", taken = "", unit = "g" } = fields;
  if (takenAt !== "" && isMassUnit(unit) && fields[taken]) {
    const text = fields[taken];
    const decimal = text.replace(",", ".");
    const last = { text, unit, grams: toGrams(decimal, unit), at: takenAt };
    if (isUnmovedSince(scale.live(), last)) throw new Refusal("bench-check.entry.not-moved");
  }
  const read = await scale.take().settled;
  const chosen = unitOf(fields, names, read.unit);
  if (read.unit !== chosen) throw new Refusal("form.unit.two", { typed: read.unit, chosen }, "unit");
  return { ...fields, unit: chosen, [next]: read.text, taken: next, takenAt: new Date().toISOString() };
}
