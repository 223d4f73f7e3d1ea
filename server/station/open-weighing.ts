import type { Ledger } from "../ledger/ledger.ts";
import { weighingOf } from "../weighing/evolve.ts";
import type { Item } from "../weighing/item.ts";

/** The weighing that was started last at this bench, whether it still goes on or not. */
export async function lastWeighing(ledger: Ledger): Promise<Item | undefined> {
  const [started] = await ledger.entries({ kind: "piece-opened", own: true, newestFirst: true, limit: 1 });
  return started && weighingOf(await ledger.entriesOf(started.subject));
}

/** The weighing that goes on. */
export async function openWeighing(ledger: Ledger): Promise<Item | undefined> {
  const last = await lastWeighing(ledger);
  return last?.closed ? undefined : last;
}
