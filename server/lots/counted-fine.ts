import { type AssayEntry, uPermille } from "../laboratory/assay.ts";
import type { FineEnd } from "../metals/fineness/fine-parts.ts";
import { fineOf, type LotFine } from "./lot-fine.ts";
import type { LotItem } from "./lot-item.ts";

/** Confidence of a fine mass where only a laboratory says it: that of a bench nobody has changed. */
const usualConfidence = 0.9545;

/**
 * Fine metal of a piece as its lot counts it, for each metal: by what a laboratory found in it, else by its density. Of a
 * piece that is excluded, or that does not count, nothing.
 */
export function countedFine(item: LotItem): LotFine[] {
  if (!item.counts || item.state === "excluded") return [];
  const assayed = item.assays.map((assay) => byLaboratory(assay, item));
  const isAssayed = assayed.some(({ metal }) => metal === item.fine?.metal);
  return [...(item.fine && !isAssayed ? [item.fine] : []), ...assayed];
}

/** Over the dry mass, as it is paid for, with the uncertainty that the laboratory states. */
function byLaboratory(assay: AssayEntry, { dryG, fine }: LotItem): LotFine {
  const permille = Number(assay.body.permille);
  const end: FineEnd = {
    middle_g: (dryG * permille) / 1000,
    common_g: 0,
    own_g: (dryG * uPermille(assay)) / 1000,
    law_g: 0,
  };
  const parts = { low: end, high: end, expected: end, freedom_g: 0, most_g: dryG };
  const confidence = fine?.confidence ?? usualConfidence;
  const { lowG, highG } = fineOf([{ parts, confidence }]);
  const of = (grams: number) => (1000 * grams) / dryG;
  return {
    metal: assay.body.metal,
    lowG,
    highG,
    permille: { low: of(lowG), high: of(highG) },
    parts,
    confidence,
  };
}
