import { splitOf } from "../laboratory/assay-against-density.ts";
import { weighedItem } from "../laboratory/weighed-item.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { to20 } from "../metals/fineness/fineness.ts";
import type { LaboratoryResult } from "../metals/fineness/laboratory-results.ts";
import { tellsSplit } from "../metals/fineness/silver-share.ts";
import { statedBy } from "../reports/stated.ts";
import type { Melt } from "./melt.ts";
import { newestMelts } from "./melt-repository.ts";

/** The gold melts of this house whose final figures and whose bar's density are known. */
export interface AssayedMelts {
  /** final figures of those whose rest is silver and copper as far as is known */
  results: readonly LaboratoryResult[];
  /** melts that tell no split: none reproduces the density, or it is too uncertain */
  silent: number;
}

/**
 * What the melts of this house tell, but for the one whose bar is the record left out. A ring with a laboratory result is
 * no melt; a melt that was opened again, or whose bar has no record that stands, tells nothing.
 */
export async function assayedMelts(ledger: Ledger, leftOut?: string): Promise<AssayedMelts> {
  const results: LaboratoryResult[] = [];
  let silent = 0;
  for (const melt of await newestMelts(ledger)) {
    const bar = melt.poured?.body.bar;
    const gold = melt.settled?.body.results.find(({ metal }) => metal === "gold");
    if (bar === undefined || bar === leftOut || !gold) continue;
    const stated = statedBy(await ledger.entriesOf(bar));
    if (stated.voided) continue;
    const permille = Number(gold.permille);
    const found = { permille, uPermille: uOf(melt, gold.entries) };
    const { measured, celsius } = weighedItem(stated);
    const split = permille < 1000 ? splitOf(found, { measured, celsius }) : undefined;
    const warmer = to20("Au", celsius);
    if (split && tellsSplit(split))
      results.push({
        ...found,
        gPerCm3: measured.valueGPerCm3 * warmer,
        uGPerCm3: measured.uGPerCm3 * warmer,
      });
    else silent++;
  }
  return { results, silent };
}

/** Standard uncertainty of a final figure, ‰: the largest that one of its assays states; 0 where none states one. */
function uOf({ assays }: Melt, entries: readonly string[]): number {
  const of = assays.filter(({ entry }) => entries.includes(entry.id));
  return Math.max(0, ...of.map(({ entry: { body } }) => Number(body.expanded_permille ?? 0) / 2));
}
