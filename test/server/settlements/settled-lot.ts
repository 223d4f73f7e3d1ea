import type { Entry } from "../../../server/ledger/entry.ts";
import type { BodyOf, Kind } from "../../../server/ledger/kinds.ts";
import { checkedBody } from "../../../server/ledger/kinds.ts";
import type { LotFine } from "../../../server/lots/lot-fine.ts";
import type { LotItem } from "../../../server/lots/lot-item.ts";
import type { PreciousMetal } from "../../../server/metals/precious-metal.ts";
import { settlementOf } from "../../../server/settlements/evolve.ts";
import { evidenceOf, type MeltYield } from "../../../server/settlements/item-evidence.ts";
import { settle } from "../../../server/settlements/settle.ts";

/** Something said of a lot, in the order it was said. */
export type Said = { [K in Kind]: [kind: K, body: BodyOf<K>] }[Kind];

/** A recorded piece as its statement tells it: everything invented. */
export function piece(ticket: string, dry: readonly string[], changes: Partial<LotItem> = {}): LotItem {
  const grams = dry.map(Number);
  return {
    id: ticket,
    ticket,
    claim: "au-585",
    state: "consistent-not-unique",
    metal: "gold",
    dryG: grams.reduce((a, b) => a + b, 0) / grams.length,
    stepG: 0.01,
    dryReadings: dry,
    massG: grams[0] ?? 0,
    changedSeq: 1,
    assays: [],
    shown: { text: dry[0] ?? "", unit: "g" },
    density: { value: 13.4, expanded: 0.1 },
    typed: false,
    voided: false,
    counts: true,
    weighed: null,
    fine: null,
    ...changes,
  };
}

/** What a density leaves open of a piece, ‰, without any uncertainty of measurement. */
export function open(massG: number, low: number, high: number, metal: PreciousMetal = "gold"): LotFine {
  const end = (permille: number) => ({
    middle_g: (massG * permille) / 1000,
    common_g: 0,
    own_g: 0,
    law_g: 0,
  });
  return {
    metal,
    lowG: end(low).middle_g,
    highG: end(high).middle_g,
    permille: { low, high },
    parts: {
      low: end(low),
      high: end(high),
      expected: end((low + high) / 2),
      freedom_g: 0,
      most_g: massG,
    },
    confidence: 0.9545,
  };
}

/** A laboratory's result on a piece. */
export function assay(metal: PreciousMetal, permille: string): LotItem["assays"][number] {
  const body = {
    metal,
    permille,
    laboratory: "an invented laboratory",
    report: "L-7",
    method: "cupellation",
    date: "2026-03-02",
  };
  return entryOf(["laboratory-assay", body], 1) as LotItem["assays"][number];
}

/** A price, 100 % of it paid, without a fee, in the direction of the buyer. */
export function price(of: Partial<BodyOf<"lot-price">>): Said {
  return [
    "lot-price",
    {
      metal: "gold",
      price: "60",
      currency: "EUR",
      per: "g",
      source: "invented",
      at: "2026-03-02 09:30",
      ratePercent: "100",
      fee: "0",
      rounding: "down",
      ...of,
    },
  ];
}

function entryOf([kind, body]: Said, seq: number): Entry {
  const at = `2026-03-02T09:${String(seq % 60).padStart(2, "0")}:00.000Z`;
  const whole = {
    seq,
    id: `e${seq}`,
    bench: "test",
    at,
    kind,
    subject: "lot-1",
    body: checkedBody(kind, body),
  };
  return { ...whole, prevHash: "", hash: "" } as Entry;
}

/** What the lot comes to: pieces that were weighed first, then what was said of them. */
export function settled(items: readonly LotItem[], said: readonly Said[], melts: readonly MeltYield[] = []) {
  const entries = said.map((one, place) => entryOf(one, place + 10));
  return settle(evidenceOf(items, melts), settlementOf(entries));
}
