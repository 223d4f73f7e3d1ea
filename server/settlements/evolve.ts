import type { Entry, EntryOf } from "../ledger/entry.ts";
import type { Happened } from "../ledger/ledger.ts";
import type { ItemTerms, Said, Settlement } from "./settlement.ts";
import { sources } from "./source.ts";

const begun: Settlement = { prices: {}, terms: {}, trust: sources, pays: "low", narrowed: false };

/** What the entries about one lot, oldest first, say of its settlement. */
export function settlementOf(entries: readonly Entry[]): Settlement {
  return entries.reduce(evolveSettlement, begun);
}

/** The settlement once this is written too. */
export function settlementWith(settlement: Settlement, happened: readonly Happened[]): Settlement {
  const unwritten = happened.map(
    (one) => ({ ...one, id: "", at: "", seq: Number.MAX_SAFE_INTEGER }) as Entry,
  );
  return unwritten.reduce(evolveSettlement, settlement);
}

function evolveSettlement(settlement: Settlement, entry: Entry): Settlement {
  switch (entry.kind) {
    case "lot-price": {
      const { metal } = entry.body;
      const price = { ...entry.body, entry: entry.id, lockedAt: entry.at };
      const versions = [...(settlement.prices[metal] ?? []), price];
      return { ...settlement, prices: { ...settlement.prices, [metal]: versions } };
    }
    case "lot-terms":
      return withTerms(settlement, entry.body.piece, (terms) => merged(terms, entry));
    case "settlement-decision":
      return withTerms(settlement, entry.body.piece, (terms) => ({ ...terms, decision: entry }));
    case "settlement-trust": {
      const { trust, pays, narrowed = false } = entry.body;
      return { ...settlement, trust, pays, narrowed };
    }
    default:
      return settlement;
  }
}

function withTerms(
  settlement: Settlement,
  item: string,
  change: (terms: ItemTerms) => ItemTerms,
): Settlement {
  const terms = settlement.terms[item] ?? { fineness: [] };
  return { ...settlement, terms: { ...settlement.terms, [item]: change(terms) } };
}

/** What an entry leaves out stays as it was said before. */
function merged(terms: ItemTerms, entry: EntryOf<"lot-terms">): ItemTerms {
  const { deducted_g, fineness, withdrawn = [] } = entry.body;
  const said = (value: string): Said<string> => ({
    value,
    entry: entry.id,
    at: entry.at,
    ...(entry.body.by === undefined ? {} : { by: entry.body.by }),
    ...(entry.body.reason === undefined ? {} : { reason: entry.body.reason }),
  });
  const kept = terms.fineness.filter(
    ({ saidBy, metal }) =>
      !(saidBy === fineness?.saidBy && metal === fineness.metal) &&
      !withdrawn.some((one) => one.saidBy === saidBy && (metal === undefined || one.metal === metal)),
  );
  const { permille, ...of } = fineness ?? {};
  return {
    ...terms,
    ...(deducted_g === undefined ? {} : { deducted: said(deducted_g) }),
    fineness:
      permille === undefined ? kept : [...kept, { ...said(permille), ...of } as (typeof kept)[number]],
  };
}
