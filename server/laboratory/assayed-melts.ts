import type { Ledger } from "../ledger/ledger.ts";
import { tellsSplit } from "../metals/fineness/melt-split.ts";
import { statedBy } from "../reports/stated.ts";
import { standingAssay } from "./assay.ts";
import { splitOf } from "./assay-against-density.ts";
import { weighedItem } from "./weighed-item.ts";

/** Assays looked at, newest first: more would slow a page, and older scrap says less of the next. */
const mostLookedAt = 500;

/** The gold melts of this house that a laboratory has assayed. */
export interface AssayedMelts {
  /** silver's share of the rest in each melt that tells one */
  shares: readonly number[];
  /** lowest and highest fineness among them, ‰ by the laboratory */
  permille?: { low: number; high: number };
  /** assayed melts that tell no split: none reproduces the density, or it is too uncertain */
  silent: number;
}

/** Reads every assayed gold melt that stands, but the one left out; a voided record counts nowhere. */
export async function assayedMelts(ledger: Ledger, leftOut?: string): Promise<AssayedMelts> {
  const entries = await ledger.entries({ kind: "laboratory-assay", newestFirst: true, limit: mostLookedAt });
  const shares: number[] = [];
  const finenesses: number[] = [];
  let silent = 0;
  for (const subject of new Set(entries.map((entry) => entry.subject))) {
    if (subject === leftOut) continue;
    const about = await ledger.entriesOf(subject);
    const assay = standingAssay(about, "gold");
    if (!assay || !about.some(({ kind }) => kind === "result")) continue;
    const permille = Number(assay.body.permille);
    const stated = statedBy(about);
    if (stated.voided) continue;
    const split = permille < 1000 ? splitOf(assay, weighedItem(stated)) : undefined;
    if (split && tellsSplit(split)) {
      shares.push(split.share);
      finenesses.push(permille);
    } else silent++;
  }
  return {
    shares,
    silent,
    ...(finenesses.length > 0
      ? { permille: { low: Math.min(...finenesses), high: Math.max(...finenesses) } }
      : {}),
  };
}
