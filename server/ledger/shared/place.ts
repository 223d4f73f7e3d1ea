import { hash } from "node:crypto";
import { placesAMs } from "./schema.ts";

/** The place of a record in a list of many benches: by the moment it states; within a millisecond by its subject. */
export function placeOf({ at, subject }: { at: string; subject: string }): number {
  return placeAt(at) + (Number.parseInt(hash("sha256", subject, "hex").slice(0, 8), 16) % placesAMs);
}

/** The first place of a moment, ISO 8601. */
export const placeAt = (at: string): number => Date.parse(at) * placesAMs;
