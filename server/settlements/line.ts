import {
  compared,
  type Fraction,
  less,
  product,
  ratio,
  roundedText,
  sumOf,
  zero,
} from "../../calibration/fraction.ts";
import { fineOf } from "../lots/lot-fine.ts";
import type { PreciousMetal } from "../metals/precious-metal.ts";
import { type CountedItem, fitsDensity } from "./counted-item.ts";
import { densityRange, type Word } from "./fineness.ts";
import { densityDecimals, ofDensity, thousand, written } from "./mass-text.ts";
import { type LotPrice, money, payFor } from "./price.ts";
import type { SettledLine } from "./settlement.ts";

/** One metal of one piece whose fineness somebody states. */
export function statedLine(
  metal: PreciousMetal,
  word: Extract<Word, { kind: "stated" }>,
  counted: CountedItem,
  price: LotPrice,
): SettledLine {
  const { evidence, terms, dryG, deductedG } = counted;
  const { share, restsOn } = word;
  const netG = less(dryG, deductedG);
  const fineG = product(netG, share);
  const range = densityRange(metal, evidence, terms);
  const fits = fitsDensity(word, metal, counted);
  const same = (text: string) => ({ low: text, expected: text, high: text });
  return {
    metal,
    pieces: [{ id: evidence.item.id, ticket: evidence.item.ticket }],
    ...massesOf(dryG, deductedG, counted.decimals),
    ...(counted.isAgain ? { mass: "again" as const } : {}),
    permille: same(written(product(share, thousand))),
    fine_g: same(written(fineG)),
    pay: same(money(payFor(fineG, price), price.currency, price.rounding)),
    rests_on: {
      ...restsOn,
      entries: [...restsOn.entries, ...(terms.deducted ? [terms.deducted.entry] : [])],
      ...(range && fits !== undefined
        ? { beside: { low: shown(range.low), high: shown(range.high), fits } }
        : {}),
    },
  };
}

/** All pieces of one metal whose density says their fineness, their fine mass added as one. */
export function densityLine(
  metal: PreciousMetal,
  counted: readonly CountedItem[],
  price: LotPrice,
): SettledLine {
  const { lowG, expectedG, highG } = fineOf(counted.flatMap(({ evidence }) => evidence.item.fine ?? []));
  const dryG = sumOf(counted.map((one) => one.dryG));
  const like = counted.flatMap(({ evidence: { item } }) => (item.fine?.unnarrowed ? [item.ticket] : []));
  const free = counted.flatMap(({ evidence, notNarrowed }) => (notNarrowed ? [evidence.item.ticket] : []));
  const range = (of: (grams: Fraction) => string) => ({
    low: of(ofDensity(lowG)),
    expected: of(ofDensity(expectedG)),
    high: of(ofDensity(highG)),
  });
  return {
    metal,
    pieces: counted.map(({ evidence: { item } }) => ({ id: item.id, ticket: item.ticket })),
    ...massesOf(dryG, zero, Math.max(...counted.map(({ decimals }) => decimals))),
    permille: range((grams) => roundedText(permilleOf(grams, dryG), densityDecimals, "half-even")),
    fine_g: range((grams) => roundedText(grams, densityDecimals, "half-even")),
    pay: range((grams) => money(payFor(grams, price), price.currency, price.rounding)),
    rests_on: {
      source: "density",
      entries: [],
      ...(like.length > 0 ? { like_assayed: like } : {}),
      ...(free.length > 0 ? { not_narrowed: free } : {}),
    },
  };
}

/** The upper end of the mass goes with that of the fineness; no fineness is above 1000 ‰ by it. */
function permilleOf(fineG: Fraction, dryG: Fraction): Fraction {
  const permille = ratio(product(fineG, thousand), dryG);
  return compared(permille, thousand) > 0 ? thousand : permille;
}

const massesOf = (dryG: Fraction, deductedG: Fraction, decimals: number) => ({
  dry_g: written(dryG, decimals),
  deducted_g: written(deductedG),
  net_g: written(less(dryG, deductedG), decimals),
});

const shown = (value: number) => value.toFixed(densityDecimals);
