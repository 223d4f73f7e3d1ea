import type { Ledger } from "../ledger/ledger.ts";
import {
  pointsOf,
  type WeighedItem,
  type WeighingPoint,
  weighingKinds,
  withEntry,
} from "./weighing-points.ts";

/** So many of the newest entries about pieces are looked at when charts are first asked for: days of a busy counter. */
const firstLook = 20_000;

/** What the pieces weighed at this bench give to its charts. */
export interface WeighingPointRepository {
  /** every point of the pieces looked at, oldest first; the ledger is read on from where it was left. Throws LedgerError. */
  now(): Promise<{ points: readonly WeighingPoint[]; olderAreLeftOut: boolean }>;
}

/** Reads the pieces of a ledger when charts are asked for, once each: a start of the bench does not wait for them. */
export function weighingPointRepository(ledger: Ledger, lookAt = firstLook): WeighingPointRepository {
  const items = new Map<string, WeighedItem>();
  let readTo: number | undefined;
  let olderAreLeftOut = false;
  const readOn = async () => {
    const kind = [...weighingKinds];
    const entries =
      readTo === undefined
        ? (await ledger.entries({ kind, own: true, newestFirst: true, limit: lookAt })).reverse()
        : await ledger.entries({ kind, own: true, after: readTo });
    if (readTo === undefined) olderAreLeftOut = entries.length === lookAt;
    for (const entry of entries) {
      const item = withEntry(items.get(entry.subject), entry);
      if (item) items.set(entry.subject, item);
    }
    readTo = entries.at(-1)?.seq ?? readTo ?? 0;
  };
  let reading: Promise<void> = Promise.resolve();
  return {
    async now() {
      const turn = reading.then(readOn);
      reading = turn.catch(() => undefined);
      await turn;
      const points = [...items.values()].flatMap(pointsOf).sort((a, b) => a.at.localeCompare(b.at));
      return { points, olderAreLeftOut };
    },
  };
}
