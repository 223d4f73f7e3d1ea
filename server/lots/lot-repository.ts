import type { Ledger } from "../ledger/ledger.ts";
import type { MeasurementRecord } from "../ledger/records.ts";
import type { Library } from "../metals/library.ts";
import { lotOf } from "./evolve.ts";
import type { Lot } from "./lot.ts";
import { type LotItem, lotItemOf } from "./lot-item.ts";

/** Rows asked for at once. */
const pageSize = 500;

/** The lots of a ledger with their pieces. What a record comes to is kept, since a record only changes by an entry. */
export class LotRepository {
  readonly #ledger: Ledger;
  readonly #known = new Map<string, { key: string; item: LotItem }>();

  constructor(ledger: Ledger) {
    this.#ledger = ledger;
  }

  async lot(id: string): Promise<Lot | undefined> {
    return lotOf(await this.#ledger.entriesOf(id));
  }

  /** The newest lots, with how many pieces each has. */
  async newest(limit: number): Promise<{ lot: Lot; pieces: number }[]> {
    const opened = await this.#ledger.entries({ kind: "lot-opened", newestFirst: true, limit });
    const found: { lot: Lot; pieces: number }[] = [];
    for (const { subject } of opened) {
      const lot = await this.lot(subject);
      const { count } = await this.#ledger.records({
        filters: { lot: subject, voided: false },
        page: { size: 1 },
      });
      if (lot) found.push({ lot, pieces: count });
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

  async #pieceOf(record: MeasurementRecord, library: Library): Promise<LotItem> {
    const key = `${record.entry_hash} ${record.amendments} ${record.voided} ${library.version}`;
    const known = this.#known.get(record.subject);
    if (known?.key === key) return known.item;
    const item = lotItemOf(await this.#ledger.entriesOf(record.subject), library);
    this.#known.set(record.subject, { key, item });
    return item;
  }

  /** Something was written about a piece that leaves its record as it is: it is read anew. */
  forget(subject: string): void {
    this.#known.delete(subject);
  }
}
