import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import { normalQuantile } from "../../../calibration/normal.ts";
import type { Library } from "../library.ts";
import type { Likelihood, Metal } from "../metal.ts";
import { type FineEnd, type FineParts, fineAt, type MeasuredPiece, uOfEnd } from "./fine-parts.ts";
import { fineSum } from "./fine-sum.ts";
import { type PreciousElement, preciousElement } from "./precious-element.ts";
import { type RecipeRest, type RestCorner, restsOf } from "./rest-corner.ts";
import { restOfMelt } from "./rest-of-melt.ts";

/** Fineness and fine mass over the recipes a claim allows. */
export interface FamilyFineness {
  element: PreciousElement;
  permille: [number, number];
  fine_g: [number, number];
  /** the recipes of the claim that the density does not exclude */
  recipes: string[];
  /** what sums over pieces need */
  parts: FineParts;
}

/** A weighed piece whose fineness is asked. */
export interface WeighedPiece {
  measured: MeasuredDensity;
  celsius: number;
  massG: number;
  uMassG: number;
  /** share of the density's variance that every piece of the bench has in common, 0 to 1 */
  commonShare: number;
}

/** A recipe leaves the fineness only where a density so far from it comes once in some 370 pieces. */
const surely = 0.9973;
/** How a recipe counts in the mean over a family (common practice). */
const weights: Readonly<Record<Likelihood, number>> = { common: 1, possible: 0.1, rare: 0.01 };
/** Linear expansion where a recipe states none, 10⁻⁶/K: between those of gold and silver alloys. */
const usualExpansion = 17;

/**
 * What a density says of the fineness of a piece, over every rest of alloy that its claim leaves and the density does
 * not exclude. The share of precious metal itself is left free: a stamp is what is tested, not what is believed. Rare
 * recipes count only where no other fits. For a claim that the density does not exclude. Null for other metals.
 */
export function familyFineness(
  claimed: Metal,
  piece: WeighedPiece,
  confidence: number,
  library: Library,
): FamilyFineness | null {
  const element = preciousElement(claimed);
  if (!element) return null;
  const rests = restsOf(claimed, element, library);
  const fits = (metal: Metal) => !isExcluded(metal, piece);
  const fitting = rests.filter(({ recipe }) => fits(recipe));
  const usual = fitting.filter(({ recipe }) => recipe.likelihood !== "rare");
  const counting = usual.length > 0 ? usual : fitting.length > 0 ? fitting : rests;
  const weighed = volumeOf(piece, claimed.expansionPerMillionK ?? usualExpansion);
  const [usually, least, most] = claimed.composition[element] ?? [0, 0, 0];
  const stamped = [piece.massG * (least ?? usually), piece.massG * (most ?? usually)] as const;
  const parts = {
    ...partsOver(counting, weighed, confidence),
    stated_g: piece.massG * usually,
    stamped_g: stamped,
  };
  return {
    ...saidBy(element, parts, piece.massG, confidence),
    recipes: (claimed.recipes ?? [claimed.id]).filter((id) => fits(library.metal(id))),
  };
}

/**
 * The same for gold with a rest of silver and copper, silver's share of it between two ends, 0 to 1: what the melts of a
 * house foretell. Null where no such alloy has the density.
 */
export function finenessOfMelt(
  silver: readonly [number, number],
  piece: WeighedPiece,
  confidence: number,
): Omit<FamilyFineness, "recipes"> | null {
  const measured = volumeOf(piece, usualExpansion);
  const parts = partsOver([restOfMelt(silver, measured.cm3PerG)], measured, confidence);
  const { low, high } = parts;
  const far = normalQuantile((1 + confidence) / 2);
  const impossible = high.middle_g + far * uOfEnd(high) < 0 || low.middle_g - far * uOfEnd(low) > piece.massG;
  return impossible ? null : saidBy("Au", parts, piece.massG, confidence);
}

function saidBy(element: PreciousElement, parts: FineParts, massG: number, confidence: number) {
  const { lowG, highG } = fineSum([parts], confidence);
  const permille = (grams: number) => Math.min(1000, Math.max(0, (1000 * grams) / massG));
  const range = (of: (grams: number) => number): [number, number] => [of(lowG), of(highG)];
  return { element, permille: range(permille), fine_g: range((grams) => grams), parts };
}

function partsOver(rests: readonly RecipeRest[], measured: MeasuredPiece, confidence: number): FineParts {
  const { massG, uMassG } = measured;
  const corners = rests.flatMap((rest) => rest.corners);
  const far = normalQuantile((1 + confidence) / 2);
  const least = extreme(corners, (corner) => {
    const end = fineAt(measured, corner, "less");
    return { end, at: end.middle_g - far * systematic(end) };
  });
  const most = extreme(corners, (corner) => {
    const end = fineAt(measured, corner, "more");
    return { end, at: -(end.middle_g + far * systematic(end)) };
  });
  return {
    low: least,
    high: most,
    expected: fineAt(measured, meanCorner(rests), "more"),
    freedom_g: Math.abs(most.middle_g - least.middle_g) / Math.sqrt(12),
    most_g: massG + far * uMassG,
  };
}

function isExcluded(
  { densityGPerCm3, expansionPerMillionK }: Metal,
  { measured, celsius }: WeighedPiece,
): boolean {
  const grown = 1 + 3 * (expansionPerMillionK ?? 0) * 1e-6 * (celsius - 20);
  const tail = (1 - surely) / 2;
  return (
    measured.probabilityBelow(densityGPerCm3.high / grown) < tail ||
    measured.probabilityBelow(densityGPerCm3.low / grown) > 1 - tail
  );
}

function volumeOf(
  { measured, celsius, massG, uMassG, commonShare }: WeighedPiece,
  expansionPerMillionK: number,
): MeasuredPiece {
  const shrunk = 1 + 3 * expansionPerMillionK * 1e-6 * (celsius - 20);
  const [low, high] = measured.intervalGPerCm3;
  const k = normalQuantile((1 + measured.confidence) / 2);
  const cm3PerG = 1 / (measured.valueGPerCm3 * shrunk);
  return {
    massG,
    uMassG,
    cm3PerG,
    uLess: (cm3PerG - 1 / (high * shrunk)) / k,
    uMore: (1 / (low * shrunk) - cm3PerG) / k,
    commonShare,
  };
}

/** Ends are chosen without what each reading brings of its own: a chance choice of many pieces would shift their sum. */
const systematic = ({ common_g, law_g }: FineEnd) => Math.hypot(common_g, law_g);

function extreme(
  corners: readonly RestCorner[],
  of: (corner: RestCorner) => { end: FineEnd; at: number },
): FineEnd {
  return corners.map(of).reduce((best, one) => (one.at < best.at ? one : best)).end;
}

/** A rest whose volume hardly differs from that of the precious metal says nothing of its share, cm³/g. */
const tells = 0.006;

/** The mean over the corners of each recipe, recipes by how often they are met. */
function meanCorner(rests: readonly RecipeRest[]): RestCorner {
  const all = rests.map(({ recipe, corners }) => ({
    corner: meanOf(corners.filter(({ light }) => !light).map((corner) => ({ corner, weight: 1 }))),
    weight: weights[recipe.likelihood],
  }));
  const telling = all.filter(({ corner }) => corner.slope < -tells);
  return meanOf(telling.length > 0 ? telling : all);
}

function meanOf(weighted: readonly { corner: RestCorner; weight: number }[]): RestCorner {
  const all = weighted.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (corner: RestCorner) => number) =>
    weighted.reduce((sum, { corner, weight }) => sum + weight * of(corner), 0) / all;
  return {
    share: mean(({ share }) => share),
    cm3PerG: mean((corner) => corner.cm3PerG),
    uCm3PerG: mean((corner) => corner.uCm3PerG),
    slope: mean(({ slope }) => slope),
  };
}
