import type { Entry } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { lotOf } from "../lots/evolve.ts";
import type { Lot } from "../lots/lot.ts";
import type { LotItem } from "../lots/lot-item.ts";
import type { LotRepository } from "../lots/lot-repository.ts";
import { type LotSums, lotSums } from "../lots/totals.ts";
import { type TotalsAtClosing, totalsAtClosing } from "../lots/totals-at-closing.ts";
import type { WeighedMass } from "../lots/weighed-mass.ts";
import type { Melt } from "../melts/melt.ts";
import { meltsWith, yieldsOf } from "../melts/melt-repository.ts";
import type { Library } from "../metals/library.ts";
import { settlementOf } from "./evolve.ts";
import { evidenceOf, type ItemEvidence } from "./item-evidence.ts";
import { closingQuestions } from "./questions.ts";
import { settle } from "./settle.ts";
import { currentPrices, type Settled, type Settlement } from "./settlement.ts";

/** The settlement of one lot as it stands, with everything it rests on. */
export interface LotSettlement {
  lot: Lot;
  /** entries about the lot */
  entries: readonly Entry[];
  items: readonly LotItem[];
  sums: LotSums;
  evidence: readonly ItemEvidence[];
  settlement: Settlement;
  /** undefined while no price is promised */
  settled: Settled | undefined;
  questions: ReturnType<typeof closingQuestions>;
  /** what the lot comes to beside what is paid for it */
  totals: TotalsAtClosing;
  /** the melts that the lot went into */
  melts: readonly Melt[];
}

/** Reads it; undefined where no such lot was opened. */
export async function lotSettlement(
  id: string,
  { ledger, lots, library }: { ledger: Ledger; lots: LotRepository; library: Library },
): Promise<LotSettlement | undefined> {
  const entries = await ledger.entriesOf(id);
  const items = await lots.items(id, library);
  const melts = await meltsWith(ledger, id);
  return settlementAfter(entries, items, { elsewhere: await lots.weighedElsewhere(id), melts });
}

/** The same for entries that were not written yet: what a change would come to. */
export function settlementAfter(
  entries: readonly Entry[],
  items: readonly LotItem[],
  { elsewhere = [], melts = [] }: { elsewhere?: readonly WeighedMass[]; melts?: readonly Melt[] } = {},
): LotSettlement | undefined {
  const lot = lotOf(entries);
  if (!lot) return undefined;
  const settlement = settlementOf(entries);
  const evidence = evidenceOf(items, yieldsOf(melts));
  const settled = currentPrices(settlement).length === 0 ? undefined : settle(evidence, settlement);
  const sums = lotSums(lot, items, elsewhere);
  const questions = closingQuestions(lot, items, { sums, settled, settlement });
  return {
    lot,
    entries,
    items,
    sums,
    evidence,
    settlement,
    settled,
    questions,
    totals: totalsAtClosing(lot, items, sums),
    melts,
  };
}
