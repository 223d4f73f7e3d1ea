import type { Entry } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { MeasurementRecord } from "../ledger/records.ts";
import type { Library } from "../metals/library.ts";
import { lotOf } from "./evolve.ts";
import type { Lot } from "./lot.ts";
import { type LotItem, lotItemOf } from "./lot-item.ts";

/** Rows asked for at once. */
const pageSize = 500;

/** The lots of a ledger with their pieces. What a piece comes to is kept until something more is written about it. */
export class LotRepository {
  readonly #ledger: Ledger;
  readonly #known = new Map<string, { key: string; item: LotItem }>();

  constructor(ledger: Ledger) {
    this.#ledger = ledger;
  }

  async lot(id: string): Promise<Lot | undefined> {
    return lotOf(await this.#ledger.entriesOf(id));
  }

  /** The newest lots, with the entries about each and how many pieces it has. */
  async newest(limit: number): Promise<{ lot: Lot; entries: readonly Entry[]; pieces: number }[]> {
    const opened = await this.#ledger.entries({ kind: "lot-opened", newestFirst: true, limit });
    const found: { lot: Lot; entries: readonly Entry[]; pieces: number }[] = [];
    for (const { subject } of opened) {
      const entries = await this.#ledger.entriesOf(subject);
      const lot = lotOf(entries);
      const { count } = await this.#ledger.records({
        filters: { lot: subject, voided: false },
        page: { size: 1 },
      });
      if (lot) found.push({ lot, entries, pieces: count });
    }
    return found;
  }

  /** The recorded pieces of a lot, oldest first. */
  async items(id: string, library: Library): Promise<LotItem[]> {
    const items: LotItem[] = [];
    for (let before: number | null | undefined; before !== null; ) {
      const page = await this.#ledger.records({
        filters: { lot: id },
        page: { size: pageSize, ...(before === undefined ? {} : { before }) },
      });
      for (const record of page.records) items.push(await this.#pieceOf(record, library));
      before = page.next;
    }
    return items.reverse();
  }

  async #pieceOf({ subject }: MeasurementRecord, library: Library): Promise<LotItem> {
    const entries = await this.#ledger.entriesOf(subject);
    const key = `${entries.length} ${library.version}`;
    const known = this.#known.get(subject);
    if (known?.key === key) return known.item;
    const item = lotItemOf(entries, library);
    this.#known.set(subject, { key, item });
    return item;
  }
}
