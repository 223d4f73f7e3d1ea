import { message } from "../../calibration/message.ts";
import { preciousMetals } from "../metals/precious-metal.ts";
import { changedMasses, unlikeTheList } from "./changed-masses.ts";
import { countedFine } from "./counted-fine.ts";
import { duplicates } from "./duplicates.ts";
import { isCleared } from "./flags.ts";
import { heavyForTheirClaim } from "./heavy-items.ts";
import { lightForTheirClaim } from "./light-items.ts";
import type { Lot } from "./lot.ts";
import type { LotCheck } from "./lot-check.ts";
import { type Ends, fineOf, type LotFine } from "./lot-fine.ts";
import type { LotItem } from "./lot-item.ts";
import { testsAgainst } from "./tests-against.ts";
import { displayStepG, type WeighedMass } from "./weighed-mass.ts";

export interface LotSums {
  pieces: number;
  sumG: number;
  /** decimals of the coarsest display that entered, for every mass told of the lot */
  decimals: number;
  /** two standard uncertainties of the sum against the gross weighing, g */
  withinG: number;
  /** gross minus sum, g; undefined without a gross weighing */
  missingG?: number;
  fine: Partial<Record<LotFine["metal"], Ends>>;
  checks: readonly LotCheck[];
}

/**
 * The lot so far. Fine mass is added as `fineOf` says. Dry readings are independent: against the gross mass they count
 * with one step of the display each (common practice), in squares. A voided piece, and one
 * that a check stops, counts nowhere. `elsewhere`: pieces of other lots that one of these could be.
 */
export function lotSums(
  lot: Pick<Lot, "gross" | "count" | "flags">,
  all: readonly LotItem[],
  elsewhere: readonly WeighedMass[] = [],
): LotSums {
  const gross = lot.gross && { grams: Number(lot.gross.grams), stepG: displayStepG(lot.gross) };
  const expected = lot.count;
  const items = all.filter(({ counts }) => counts);
  const sumG = items.reduce((sum, { dryG }) => sum + dryG, 0);
  const withinG = 2 * Math.hypot(gross?.stepG ?? 0, ...items.map(({ stepG }) => stepG));
  const shown = decimalsOf(Math.max(gross?.stepG ?? 0, ...items.map(({ stepG }) => stepG)));
  const fine: LotSums["fine"] = {};
  const counted = items.flatMap(countedFine);
  for (const metal of preciousMetals) {
    const of = counted.filter((one) => one.metal === metal);
    if (of.length > 0) fine[metal] = fineOf(of);
  }
  const missingG = gross === undefined ? undefined : gross.grams - sumG;
  const excess = missingG !== undefined && -missingG > withinG ? -missingG : undefined;
  const raised = [
    ...changedMasses(items, shown),
    ...unlikeTheList(items),
    ...lightForTheirClaim(items),
    ...heavyForTheirClaim(items),
    ...testsAgainst(items),
    ...duplicates(items, elsewhere, excess, withinG),
    ...(excess !== undefined
      ? [
          {
            message: message("lot-check.more-than-gross", { excess_g: { decimal: excess.toFixed(shown) } }),
            remedy: message("lot-check.more-than-gross-remedy"),
            tickets: [],
          },
        ]
      : []),
    ...(missingG !== undefined && missingG > withinG && expected === items.length
      ? [
          {
            message: message("lot-check.gross-missing", {
              pieces: expected,
              missing_g: { decimal: missingG.toFixed(shown) },
            }),
            remedy: message("lot-check.gross-missing-remedy"),
            tickets: [],
          },
        ]
      : []),
  ];
  const looked = ({ flag, tickets }: LotCheck) =>
    flag !== undefined &&
    items.filter(({ ticket }) => tickets.includes(ticket)).every((item) => isCleared(item, flag, lot.flags));
  return {
    pieces: items.length,
    sumG,
    decimals: shown,
    withinG,
    ...(missingG === undefined ? {} : { missingG }),
    fine,
    checks: raised.filter((check) => !looked(check)),
  };
}

/** Decimals of a display with this step: 0.01 shows 2, 0.05 shows 2. */
export function decimalsOf(stepG: number): number {
  return stepG > 0 ? Math.max(0, Math.ceil(-Math.log10(stepG) - 1e-9)) : 2;
}
