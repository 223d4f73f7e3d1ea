import { compared, zero } from "../../calibration/fraction.ts";
import { type PreciousMetal, preciousMetals } from "../metals/precious-metal.ts";
import { type CountedItem, countedItem, fitsDensity } from "./counted-item.ts";
import { believed, spokenOf, type Word } from "./fineness.ts";
import { heldBack, standingDecision } from "./held-back.ts";
import type { ItemEvidence } from "./item-evidence.ts";
import { densityLine, statedLine } from "./line.ts";
import { written } from "./mass-text.ts";
import type { LotPrice } from "./price.ts";
import type { LeftOut, Settled, SettledLine, Settlement } from "./settlement.ts";
import type { LeftOutReason } from "./source.ts";
import { totalsOf } from "./totals.ts";

/** One metal of a piece: paid by a word on its fineness, or not paid. */
type Part =
  | { metal: PreciousMetal; price: LotPrice; word: Word; counted: CountedItem }
  | { leftOut: LeftOut };

/**
 * What a lot comes to at its prices. Masses and fine masses are exact; money is rounded once, in each line, in the
 * direction of its price. All pieces of a metal whose density says their fineness are one line, added as `fineOf` adds
 * them; any other piece is a line of its own for each of its metals. A piece that nothing is paid for is listed with why.
 */
export function settle(items: readonly ItemEvidence[], settlement: Settlement): Settled {
  const parts = items.flatMap((evidence) => partsOf(evidence, settlement));
  const lines = preciousMetals.flatMap((metal): SettledLine[] => {
    const of = parts.flatMap((part) => ("word" in part && part.metal === metal ? [part] : []));
    const dense = of.filter(({ word }) => word.kind === "density");
    return [
      ...(dense[0]
        ? [
            densityLine(
              metal,
              dense.map(({ counted }) => counted),
              dense[0].price,
            ),
          ]
        : []),
      ...of.flatMap(({ word, counted, price }) =>
        word.kind === "stated" ? [statedLine(metal, word, counted, price)] : [],
      ),
    ];
  });
  return {
    trust: [...settlement.trust],
    pays: settlement.pays,
    ...(settlement.narrowed ? { narrowed: true as const } : {}),
    lines,
    left_out: parts.flatMap((part) => ("leftOut" in part ? [part.leftOut] : [])),
    ...totalsOf(lines, settlement),
  };
}

function partsOf(evidence: ItemEvidence, settlement: Settlement): Part[] {
  const terms = settlement.terms[evidence.item.id] ?? { fineness: [] };
  const counted = countedItem(evidence, terms, settlement);
  const decision = standingDecision(evidence, terms)?.body;
  if (decision && !decision.pays) {
    const { by, reason } = decision;
    return [leftOut(counted, "left-out", { by, reason })];
  }
  const held = counted.isDecided ? undefined : heldBack(evidence);
  if (held !== undefined) return [leftOut(counted, held)];
  const metals = spokenOf(counted.evidence, terms);
  if (metals.length === 0) return [leftOut(counted, "no-metal")];
  if (compared(counted.deductedG, counted.dryG) >= 0) return [leftOut(counted, "stones")];
  return metals.map((metal) => partOf(metal, counted, settlement));
}

function partOf(metal: PreciousMetal, counted: CountedItem, { prices, trust }: Settlement): Part {
  const price = prices[metal]?.at(-1);
  if (!price) return leftOut(counted, "no-price", { metal });
  const word = believed(metal, { ...counted, trust });
  if (!word)
    return leftOut(counted, compared(counted.deductedG, zero) > 0 ? "stones" : "no-fineness", { metal });
  const isContradicted = !counted.isDecided && !isProof(word) && fitsDensity(word, metal, counted) === false;
  return isContradicted ? leftOut(counted, "contradicted", { metal }) : { metal, price, word, counted };
}

/** A stamp and a customer prove nothing: against the density they are not believed alone. */
function isProof(word: Word): boolean {
  return word.kind === "density" || ["laboratory", "melt"].includes(word.restsOn.source);
}

function leftOut(
  { evidence: { item }, dryG, decimals }: CountedItem,
  why: LeftOutReason,
  of: Partial<LeftOut> = {},
): Part {
  return { leftOut: { id: item.id, ticket: item.ticket, why, dry_g: written(dryG, decimals), ...of } };
}
