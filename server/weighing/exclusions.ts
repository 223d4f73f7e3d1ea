import type { Code, Reason } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import { photoKey } from "../photos/photo-folder.ts";
import type { Item } from "./item.ts";

interface Exclusion {
  entry: string;
  reason: Reason;
  by?: string;
}

/** Excludes a reading; it stays with its reason. Throws Refusal for one that is not there, or without a reason. */
export function excludedReading(item: Item, asked: Exclusion): BodyOf<"voiding"> {
  const capture = item.captures.find(({ id }) => id === asked.entry);
  if (!capture) throw new Refusal("weighing.reading.unknown");
  if (capture.excluded)
    throw new Refusal("weighing.reading.already-excluded", { reason: capture.excluded.reason });
  return excluded(asked, "weighing.reading.reason-missing");
}

/** Excludes another test. Throws Refusal for one that is not there, or without a reason. */
export function excludedTest(item: Item, asked: Exclusion): BodyOf<"voiding"> {
  const test = item.tests.find(({ entry }) => entry.id === asked.entry);
  if (!test) throw new Refusal("weighing.test.unknown");
  if (test.excluded !== undefined)
    throw new Refusal("weighing.test.already-excluded", { reason: test.excluded });
  return excluded(asked, "weighing.test.reason-missing", `reason-${asked.entry}`);
}

/** Excludes a photo. Throws Refusal for one that is not there, or without a reason. */
export function excludedPhoto(item: Item, asked: Exclusion): BodyOf<"voiding"> {
  const before = item.excludedPhotos.find(({ entry }) => entry.id === asked.entry);
  if (before) throw new Refusal("weighing.photo.already-excluded", { reason: before.reason });
  if (!item.photos.some(({ id }) => id === asked.entry)) throw new Refusal("weighing.photo.unknown");
  return excluded(asked, "weighing.photo.reason-missing");
}

/** Excludes a laboratory result. Throws Refusal for one that is not there, or without a reason. */
export function excludedAssay(item: Item, asked: Exclusion): BodyOf<"voiding"> {
  if (!item.assays.includes(asked.entry)) throw new Refusal("weighing.assay.unknown");
  return excluded(asked, "weighing.assay.reason-missing", `reason-${asked.entry}`);
}

function excluded({ entry, reason, by = "" }: Exclusion, missing: Code, at = "reason"): BodyOf<"voiding"> {
  const why = typeof reason === "string" ? reason.trim() : reason;
  if (why === "") throw new Refusal(missing, {}, at);
  return { entry, reason: why, ...(by.trim() === "" ? {} : { by: by.trim() }) };
}

/** The key a photo is kept under: the same picture is kept once, and once more after it was excluded. */
export function keyOfPhoto({ id, excludedPhotos }: Item, hash: string): string {
  const times = excludedPhotos.filter(({ entry }) => entry.body.hash === hash).length;
  return times === 0 ? photoKey(id, hash) : `${photoKey(id, hash)}-again-${times}`;
}
