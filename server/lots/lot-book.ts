import type { Ledger } from "../ledger/ledger.ts";
import type { MeasurementRecord } from "../ledger/records.ts";
import type { Library } from "../metals/library.ts";
import { lotOf } from "./evolve.ts";
import type { Lot } from "./lot.ts";
import { type LotPiece, lotPieceOf } from "./lot-piece.ts";

/** Rows asked for at once. */
const pageSize = 500;

/** The lots of a ledger with their pieces. What a record comes to is kept, since a record only changes by an entry. */
export class LotBook {
  readonly #ledger: Ledger;
  readonly #known = new Map<string, { key: string; piece: LotPiece }>();

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
  async pieces(id: string, library: Library): Promise<LotPiece[]> {
    const pieces: LotPiece[] = [];
    for (let before: number | null | undefined; before !== null; ) {
      const page = await this.#ledger.records({
        filters: { lot: id },
        page: { size: pageSize, ...(before === undefined ? {} : { before }) },
      });
      for (const record of page.records) pieces.push(await this.#pieceOf(record, library));
      before = page.next;
    }
    return pieces.reverse();
  }

  async #pieceOf(record: MeasurementRecord, library: Library): Promise<LotPiece> {
    const key = `${record.entry_hash} ${record.amendments} ${record.voided} ${library.version}`;
    const known = this.#known.get(record.subject);
    if (known?.key === key) return known.piece;
    const piece = lotPieceOf(await this.#ledger.entriesOf(record.subject), library);
    this.#known.set(record.subject, { key, piece });
    return piece;
  }

  /** Something was written about a piece that leaves its record as it is: it is read anew. */
  forget(subject: string): void {
    this.#known.delete(subject);
  }
}
