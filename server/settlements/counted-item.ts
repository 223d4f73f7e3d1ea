import { decimalsShown } from "../../calibration/decimal.ts";
import { compared, exactly, type Fraction, product, ratio, sumOf, zero } from "../../calibration/fraction.ts";
import type { LotItem } from "../lots/lot-item.ts";
import type { PreciousMetal } from "../metals/precious-metal.ts";
import { densityRange, type Word } from "./fineness.ts";
import { standingDecision } from "./held-back.ts";
import type { ItemEvidence } from "./item-evidence.ts";
import { ofDensity, thousand } from "./mass-text.ts";
import type { ItemTerms, Settlement } from "./settlement.ts";

/** A piece as it is paid for, before its fineness is looked for. */
export interface CountedItem {
  evidence: ItemEvidence;
  terms: ItemTerms;
  dryG: Fraction;
  deductedG: Fraction;
  /** decimals that its dry mass was shown with */
  decimals: number;
  /** a named person decided that it is paid for although something speaks against it */
  isDecided: boolean;
  /** the mass counts that it had when it was weighed again */
  isAgain: boolean;
  /** its record is narrowed by laboratory results on other pieces of its claim, and that is not counted */
  notNarrowed: boolean;
}

/** With the mass that a decision says; the density was that of the first one, and says nothing beside another. */
export function countedItem(
  evidence: ItemEvidence,
  terms: ItemTerms,
  { narrowed }: Pick<Settlement, "narrowed">,
): CountedItem {
  const decision = standingDecision(evidence, terms)?.body;
  const { item } = evidence;
  const again = decision?.mass === "again" ? item.again : undefined;
  const free = narrowed ? undefined : item.fine?.unnarrowed;
  const fine = again ? null : (free ?? item.fine);
  return {
    evidence: { ...evidence, item: { ...item, fine } },
    terms,
    dryG: again ? exactly(again.reading) : dryMass(item),
    decimals: Math.max(0, ...(again ? [again.reading] : item.dryReadings).map(decimalsShown)),
    deductedG: exactly(terms.deducted?.value ?? "0"),
    isDecided: decision?.pays === true,
    isAgain: again !== undefined,
    notNarrowed: fine !== null && free !== undefined,
  };
}

/** The mean of the dry readings that count, exact. */
export function dryMass({ dryReadings }: Pick<LotItem, "dryReadings">): Fraction {
  if (dryReadings.length === 0) return zero;
  return ratio(sumOf(dryReadings.map(exactly)), exactly(`${dryReadings.length}`));
}

/** Whether a stated fineness lies in what the density leaves open; undefined where it says nothing. */
export function fitsDensity(
  word: Word,
  metal: PreciousMetal,
  { evidence, terms }: Pick<CountedItem, "evidence" | "terms">,
): boolean | undefined {
  const range = densityRange(metal, evidence, terms);
  if (word.kind === "density" || !range) return undefined;
  const permille = product(word.share, thousand);
  return compared(permille, ofDensity(range.low)) >= 0 && compared(permille, ofDensity(range.high)) <= 0;
}
