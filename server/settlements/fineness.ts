import { exactly, type Fraction, product, ratio } from "../../calibration/fraction.ts";
import type { PreciousMetal } from "../metals/precious-metal.ts";
import type { ItemEvidence } from "./item-evidence.ts";
import type { ItemTerms, SettledLine } from "./settlement.ts";
import type { Source } from "./source.ts";

/** A word on the fineness of a piece in one metal: a figure somebody states, or that its density counts. */
export type Word =
  | { kind: "stated"; share: Fraction; restsOn: SettledLine["rests_on"] }
  | { kind: "density" };

const thousand = exactly("1000");

/** The word on a piece that is believed most; undefined where there is none. */
export function believed(
  metal: PreciousMetal,
  { evidence, terms, trust }: { evidence: ItemEvidence; terms: ItemTerms; trust: readonly Source[] },
): Word | undefined {
  for (const source of trust) {
    const word = wordOf(source, metal, evidence, terms);
    if (word) return word;
  }
  return undefined;
}

/** The metals of a piece that somebody speaks of. */
export function spokenOf({ item, melts }: ItemEvidence, terms: ItemTerms): PreciousMetal[] {
  const of = [
    item.metal,
    ...item.assays.map(({ body }) => body.metal),
    ...melts.map(({ metal }) => metal),
    ...terms.fineness.map(({ metal }) => metal ?? item.metal),
  ];
  return [...new Set(of)].filter((metal) => metal !== null);
}

/** What the density leaves open of a metal, ‰; with something taken off, the density of the whole says nothing of the rest. */
export function densityRange(
  metal: PreciousMetal,
  { item }: ItemEvidence,
  { deducted }: ItemTerms,
): { low: number; high: number } | undefined {
  const isWhole = Number(deducted?.value ?? 0) === 0;
  return isWhole && item.fine?.metal === metal ? item.fine.permille : undefined;
}

function wordOf(
  source: Source,
  metal: PreciousMetal,
  evidence: ItemEvidence,
  terms: ItemTerms,
): Word | undefined {
  if (source === "density") return densityRange(metal, evidence, terms) && { kind: "density" };
  if (source === "melt") {
    const found = evidence.melts.find((one) => one.metal === metal);
    if (!found) return undefined;
    const { share, entry, melt } = found;
    return { kind: "stated", share, restsOn: { source, entries: [entry], report: melt } };
  }
  const assay = source === "laboratory" && evidence.item.assays.find(({ body }) => body.metal === metal);
  if (assay) {
    const { permille, laboratory, report, by } = assay.body;
    const restsOn = { source, entries: [assay.id], laboratory, report, ...(by === undefined ? {} : { by }) };
    return stated(permille, restsOn);
  }
  const said = terms.fineness.findLast(
    (one) => one.saidBy === source && (one.metal ?? evidence.item.metal) === metal,
  );
  if (!said) return undefined;
  const { value, entry, by, reason } = said;
  return stated(value, {
    source,
    entries: [entry],
    ...(by === undefined ? {} : { by }),
    ...(reason === undefined ? {} : { reason }),
  });
}

function stated(permille: string, restsOn: SettledLine["rests_on"]): Word {
  return { kind: "stated", share: ratio(product(exactly(permille)), thousand), restsOn };
}
