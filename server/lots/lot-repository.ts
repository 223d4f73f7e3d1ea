import type { Entry } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { MeasurementRecord } from "../ledger/records.ts";
import type { Library } from "../metals/library.ts";
import { lotOf } from "./evolve.ts";
import type { Lot } from "./lot.ts";
import { type LotItem, lotItemOf } from "./lot-item.ts";
import { displayStepG, type WeighedMass } from "./weighed-mass.ts";

/** Rows asked for at once. */
const pageSize = 500;
/** Pieces of other lots that are looked through for one that came twice. */
const mostElsewhere = 5000;
const dayMs = 24 * 60 * 60 * 1000;

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

  /**
   * What other lots hold since a day before this one was opened, newest first: a piece of this lot may lie there too.
   * Voided pieces are left out, and what lies further back than `mostElsewhere` rows.
   */
  async weighedElsewhere(id: string): Promise<WeighedMass[]> {
    const [opened] = await this.#ledger.entriesOf(id);
    if (!opened) return [];
    const since = new Date(Date.parse(opened.at) - dayMs).toISOString();
    const others = await this.#ledger.recordsOfOtherLots(id, since, mostElsewhere);
    const names = new Map<string, string>();
    for (const lot of new Set(others.flatMap((one) => one.lot ?? [])))
      names.set(lot, (await this.lot(lot))?.name ?? lot);
    return others.map(({ ticket, lot, dry, dry_g, density_g_cm3, expanded_g_cm3 }) => {
      const [text = "", unit = "g"] = dry.split(" ");
      return {
        ticket,
        elsewhere: { lot: names.get(lot ?? "") ?? "" },
        dryG: dry_g,
        stepG: displayStepG({ text, unit, grams: `${dry_g}` }),
        density:
          density_g_cm3 === null || expanded_g_cm3 === null
            ? null
            : { value: density_g_cm3, expanded: expanded_g_cm3 },
      };
    });
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
