import { standingAssay } from "../laboratory/assay.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { Lot } from "./lot.ts";
import type { LotItem } from "./lot-item.ts";

/** Laboratory results looked at, newest first. */
const mostLookedAt = 2000;

/**
 * The terms of a lot with what laboratories found in its pieces: a result written on the record of a piece states its
 * fineness, unless the lot's own terms stated one later.
 */
export async function termsWithLaboratory(
  ledger: Ledger,
  lot: Lot,
  items: readonly LotItem[],
): Promise<Lot["terms"]> {
  const written = await ledger.entries({
    kind: "laboratory-assay",
    newestFirst: true,
    limit: mostLookedAt,
  });
  const subjects = new Set(written.map(({ subject }) => subject));
  const terms = { ...lot.terms };
  for (const { id, metal } of items) {
    if (!subjects.has(id)) continue;
    const assay = standingAssay(await ledger.entriesOf(id));
    const stated = terms[id];
    if (assay?.body.metal !== metal || !assay || (stated?.fineness && stated.statedAt > assay.at)) continue;
    const fineness = { permille: assay.body.permille, saidBy: "laboratory" as const };
    terms[id] = { ...stated, piece: id, fineness, statedAt: assay.at };
  }
  return terms;
}
