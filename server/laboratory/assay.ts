import type { Entry, EntryOf } from "../ledger/entry.ts";

export type AssayEntry = EntryOf<"laboratory-assay">;

/** An assay among those of its piece. */
export interface AssayOfItem {
  entry: AssayEntry;
  /** set aside with this reason; it stays to be read */
  excluded?: string;
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

/** The assay that counts: the newest that was not set aside. */
export function standingAssay(entries: readonly Entry[]): AssayEntry | undefined {
  return assaysOf(entries).findLast(({ excluded }) => excluded === undefined)?.entry;
}

/** Standard uncertainty of the fineness as stated, ‰; 0 where none was stated. */
export function uPermille({ body }: Pick<AssayEntry, "body">): number {
  return Number(body.expanded_permille ?? 0) / Number(body.coverage_factor ?? 2);
}
