import type { Reason } from "../../calibration/message.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";

export type AssayEntry = EntryOf<"laboratory-assay">;

/** An assay among those of its piece. */
export interface AssayOfItem {
  entry: AssayEntry;
  /** set aside with this reason; it stays to be read */
  excluded?: Reason;
}

/** Every laboratory assay of a piece, oldest first, from the entries about it. */
export function assaysOf(entries: readonly Entry[]): AssayOfItem[] {
  const reasons = new Map(
    entries.flatMap((entry) =>
      entry.kind === "voiding" ? [[entry.body.entry, entry.body.reason] as const] : [],
    ),
  );
  return entries.flatMap((entry) => {
    if (entry.kind !== "laboratory-assay") return [];
    const excluded = reasons.get(entry.id);
    return [{ entry, ...(excluded === undefined ? {} : { excluded }) }];
  });
}

/** The assays that count: of each metal the newest that was not set aside, oldest first. */
export function standingAssays(entries: readonly Entry[]): AssayEntry[] {
  const standing = assaysOf(entries).flatMap(({ entry, excluded }) =>
    excluded === undefined ? [entry] : [],
  );
  return standing.filter(
    (one, place) => !standing.slice(place + 1).some(({ body }) => body.metal === one.body.metal),
  );
}

/** The assay for one metal that counts. */
export function standingAssay(
  entries: readonly Entry[],
  metal: AssayEntry["body"]["metal"],
): AssayEntry | undefined {
  return standingAssays(entries).find(({ body }) => body.metal === metal);
}

/** Standard uncertainty of the fineness as stated, ‰; 0 where none was stated. */
export function uPermille({ body }: Pick<AssayEntry, "body">): number {
  return Number(body.expanded_permille ?? 0) / Number(body.coverage_factor ?? 2);
}
