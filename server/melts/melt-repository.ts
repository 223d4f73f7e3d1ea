import { compared, exactly, product, ratio } from "../../calibration/fraction.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { MeltYield } from "../settlements/item-evidence.ts";
import { thousand } from "../settlements/mass-text.ts";
import { meltOf } from "./evolve.ts";
import type { Melt } from "./melt.ts";

/** Melts looked at, newest first. */
const mostLookedAt = 500;

/** The melts of a ledger, newest first. */
export async function newestMelts(ledger: Ledger, limit = mostLookedAt): Promise<Melt[]> {
  const made = await ledger.entries({ kind: "melt-made", newestFirst: true, limit });
  const melts: Melt[] = [];
  for (const { subject } of made) {
    const melt = meltOf(await ledger.entriesOf(subject));
    if (melt) melts.push(melt);
  }
  return melts;
}

/** The melts that a lot went into, newest first. */
export async function meltsWith(ledger: Ledger, lot: string): Promise<Melt[]> {
  const made = await ledger.entries({ kind: "melt-made", newestFirst: true, limit: mostLookedAt });
  const melts: Melt[] = [];
  for (const { subject, kind, body } of made) {
    if (kind !== "melt-made" || !body.lots.includes(lot)) continue;
    const melt = meltOf(await ledger.entriesOf(subject));
    if (melt) melts.push(melt);
  }
  return melts;
}

/**
 * What a settled melt gave back of each metal, over what the lot weighs by its pieces, so that all of them together are
 * paid the fine metal that was found and no more; over what went in where that is more, since the rest is not the lot's.
 * It tells of a lot only where that lot alone was melted: how a melt of several lots is shared among their sellers, no
 * assay of it says.
 */
export function yieldsOf(melts: readonly Melt[]): MeltYield[] {
  return melts.flatMap(({ name, lots, lots_g, settled }) => {
    if (!settled || lots.length > 1) return [];
    const { before_g, after_g, results } = settled.body;
    const [before, ofPieces] = [exactly(before_g), exactly(lots_g)];
    const over = compared(before, ofPieces) > 0 ? before : ofPieces;
    return results.map(({ metal, permille }) => ({
      metal,
      share: ratio(product(exactly(after_g), exactly(permille)), product(over, thousand)),
      melt: name,
      entry: settled.id,
    }));
  });
}
