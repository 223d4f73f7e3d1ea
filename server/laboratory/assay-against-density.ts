import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import type { FamilyFineness } from "../metals/fineness/family-fineness.ts";
import { fineMass } from "../metals/fineness/fine-mass.ts";
import { goldFineness, type PermilleRange, silverFineness, to20 } from "../metals/fineness/fineness.ts";
import { type SilverShare, silverShare } from "../metals/fineness/silver-share.ts";
import { symbolOf } from "../metals/precious-metal.ts";
import { type AssayEntry, uPermille } from "./assay.ts";

/** A recorded piece as an assay is held against it. */
export interface WeighedItem {
  measured: MeasuredDensity;
  celsius: number;
  massG: number;
  expandedMassG: number;
  /** what the record states over everything its claim allows; null without such a claim */
  stated: FamilyFineness | null;
}

export interface AssayAgainstDensity {
  /** by density with every freedom of the rest; null when no such alloy has this density */
  byDensity: { permille: PermilleRange; lowG: number; highG: number } | null;
  /** where the assay lies against that interval */
  place?: "inside" | "below" | "above";
  /** ‰ to the nearer end: beyond it when outside */
  toNearerEnd?: number;
  /** outside, and by no more than the laboratory's own uncertainty */
  withinItsU?: boolean;
  /** fine metal by the assay, g */
  fineG: number;
  /** gold below 1000 ‰ only: the split of silver and copper that reproduces the density */
  split?: SilverShare;
}

/** Holds what a laboratory found against what the density had left open of gold or silver alloy. */
export function assayAgainstDensity(assay: Pick<AssayEntry, "body">, item: WeighedItem): AssayAgainstDensity {
  const { metal } = assay.body;
  const permille = Number(assay.body.permille);
  const { massG } = item;
  const byDensity = byDensityOf(metal, item);
  const { low, high } = byDensity?.permille ?? { low: 0, high: 0 };
  const place = permille < low ? "below" : permille > high ? "above" : "inside";
  const beyond = place === "below" ? low - permille : permille - high;
  return {
    fineG: (massG * permille) / 1000,
    byDensity,
    ...(byDensity
      ? {
          place,
          toNearerEnd: place === "inside" ? Math.min(permille - low, high - permille) : beyond,
          ...(place !== "inside" && beyond <= Number(assay.body.expanded_permille ?? 0)
            ? { withinItsU: true }
            : {}),
        }
      : {}),
    ...(metal === "gold" && permille > 0 && permille < 1000
      ? { split: splitOf({ permille, uPermille: uPermille(assay) }, item) }
      : {}),
  };
}

/** As the record states it; over any rest of silver and copper where it claims another metal or none. */
function byDensityOf(
  metal: AssayEntry["body"]["metal"],
  { measured, celsius, massG, expandedMassG, stated }: WeighedItem,
): AssayAgainstDensity["byDensity"] {
  if (stated?.element === symbolOf[metal]) {
    const [low, high] = stated.permille;
    const [lowG, highG] = stated.fine_g;
    return { permille: { low, high }, lowG, highG };
  }
  if (metal !== "gold" && metal !== "silver") return null;
  const found = metal === "gold" ? goldFineness(measured, "any", celsius) : silverFineness(measured, celsius);
  return found.possible
    ? { permille: found.corrected, ...fineMass(massG, expandedMassG, found.corrected) }
    : null;
}

/** The split of silver and copper in a piece of gold below 1000 ‰ whose fineness a laboratory found. */
export function splitOf(
  found: { permille: number; uPermille: number },
  { measured, celsius }: Pick<WeighedItem, "measured" | "celsius">,
): SilverShare {
  const warmer = to20("Au", celsius);
  return silverShare({
    gold: found.permille / 1000,
    uGold: found.uPermille / 1000,
    gPerCm3: measured.valueGPerCm3 * warmer,
    uGPerCm3: measured.uGPerCm3 * warmer,
  });
}
