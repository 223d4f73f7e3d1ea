import { exactly, product, ratio } from "../../calibration/fraction.ts";
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
 * What a settled melt gave back of each metal, over what went in. It tells of a lot only where that lot alone was melted:
 * how a melt of several lots is shared among their sellers, no assay of it says.
 */
export function yieldsOf(melts: readonly Melt[]): MeltYield[] {
  return melts.flatMap(({ name, lots, settled }) => {
    if (!settled || lots.length > 1) return [];
    const { before_g, after_g, results } = settled.body;
    return results.map(({ metal, permille }) => ({
      metal,
      share: ratio(product(exactly(after_g), exactly(permille)), product(exactly(before_g), thousand)),
      melt: name,
      entry: settled.id,
    }));
  });
}
