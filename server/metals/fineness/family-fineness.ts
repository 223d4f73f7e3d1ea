import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import { normalQuantile } from "../../../calibration/normal.ts";
import type { Library } from "../library.ts";
import type { Metal } from "../metal.ts";
import { shareOf } from "../share-of.ts";
import { type FineParts, type MeasuredPiece, uOfEnd } from "./fine-parts.ts";
import { fineSum } from "./fine-sum.ts";
import {
  fewestResults,
  type LaboratoryResult,
  narrower,
  type RestOfResults,
  restOfResults,
} from "./laboratory-results.ts";
import { partsOver } from "./parts-over.ts";
import { type PreciousElement, preciousElement } from "./precious-element.ts";
import { restsOf } from "./rest-corner.ts";

/** Fineness and fine mass over the recipes a claim allows. */
export interface FamilyFineness {
  element: PreciousElement;
  permille: [number, number];
  fine_g: [number, number];
  /** the recipes of the claim that the density does not exclude */
  recipes: string[];
  /** what sums over pieces need */
  parts: FineParts;
  /** the same over everything the claim allows; left out where no results narrow it */
  family_parts?: FineParts;
  /** what laboratory results on other pieces of the claim say; left out where none are given */
  laboratory_results?: ByResults;
}

/** Fineness in ‰ and fine mass in g. */
interface Ranges {
  permille: [number, number];
  fine_g: [number, number];
}

/** How laboratory results on other pieces of a claim bear on a piece. */
export interface ByResults {
  results: number;
  /** fewer than this say nothing */
  needed: number;
  /** they narrow the fineness that is stated */
  narrows: boolean;
  /** over everything the claim allows */
  family: Ranges;
  /** if the piece is alloyed like them, with the volume of what is beside the precious metal, cm³/g */
  like_them?: Ranges & {
    rest_cm3_g: [number, number];
    /** the stamped fineness lies between the ends */
    holds_stamp: boolean;
  };
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

/** What a fineness is told within. */
export interface FinenessContext {
  confidence: number;
  library: Library;
  /** on other pieces of the claim */
  results?: readonly LaboratoryResult[] | undefined;
}

/** A recipe leaves the fineness only where a density so far from it comes once in some 370 pieces. */
const surely = 0.9973;
/** Linear expansion where a recipe states none, 10⁻⁶/K: between those of gold and silver alloys. */
const usualExpansion = 17;

/**
 * What a density says of the fineness of a piece, over every rest of alloy that its claim leaves and the density does
 * not exclude. The share of precious metal itself is left free: a stamp is what is tested, not what is believed. Rare
 * recipes count only where no other fits. For a claim that the density does not exclude. Null for other metals.
 *
 * Laboratory results on other pieces of the claim narrow it where they leave what is stamped; where they do not, the
 * piece is not one like them, or not what it is stamped: the whole family stands, and both are said.
 */
export function familyFineness(
  claimed: Metal,
  piece: WeighedPiece,
  { confidence, library, results = [] }: FinenessContext,
): FamilyFineness | null {
  const element = preciousElement(claimed);
  if (!element) return null;
  const rests = restsOf(claimed, element, library);
  const fits = (metal: Metal) => !isExcluded(metal, piece);
  const fitting = rests.filter(({ recipe }) => fits(recipe));
  const usual = fitting.filter(({ recipe }) => recipe.likelihood !== "rare");
  const counting = usual.length > 0 ? usual : fitting.length > 0 ? fitting : rests;
  const weighed = volumeOf(piece, claimed.expansionPerMillionK ?? usualExpansion);
  const [usually] = claimed.composition[element] ?? [0];
  const [least, most] = shareOf(claimed, element);
  const stamped = [piece.massG * least, piece.massG * most] as const;
  const parts = {
    ...partsOver(
      counting.map(({ recipe: { likelihood }, corners }) => ({ likelihood, corners })),
      weighed,
      confidence,
    ),
    stated_g: piece.massG * usually,
    stamped_g: stamped,
  };
  const family = saidBy(element, parts, piece.massG, confidence);
  const recipes = (claimed.recipes ?? [claimed.id]).filter((id) => fits(library.metal(id)));
  return { ...(results.length === 0 ? family : withResults(family, results, weighed, confidence)), recipes };
}

function withResults(
  family: FinenessSaid,
  results: readonly LaboratoryResult[],
  weighed: MeasuredPiece,
  confidence: number,
): FinenessSaid & Pick<FamilyFineness, "laboratory_results" | "family_parts"> {
  const { element, parts, permille, fine_g } = family;
  const { stamped_g, ...free } = parts;
  const over = { results: results.length, needed: fewestResults, family: { permille, fine_g } };
  const rest = restOfResults(element, results, confidence);
  if (!rest) return { ...family, laboratory_results: { ...over, narrows: false } };
  const { corners, cm3PerG } = rest;
  const byThem = { ...free, ...partsOver([{ corners, likelihood: "common" }], weighed, confidence) };
  const like = saidBy(element, byThem, weighed.massG, confidence);
  const [least, most] = stamped_g ?? [0, weighed.massG];
  const holds_stamp = like.fine_g[0] <= most && like.fine_g[1] >= least;
  const narrowed = holds_stamp ? narrower(parts, byThem) : null;
  const said = narrowed && saidBy(element, narrowed, weighed.massG, confidence);
  const narrows = said !== null && said.fine_g[1] - said.fine_g[0] < fine_g[1] - fine_g[0];
  return {
    ...(narrows ? { ...said, family_parts: parts } : family),
    laboratory_results: {
      ...over,
      narrows,
      like_them: {
        permille: like.permille,
        fine_g: like.fine_g,
        rest_cm3_g: [...cm3PerG],
        holds_stamp,
      },
    },
  };
}

/** Fineness and fine mass of a whole piece, with what sums need. */
export type FinenessSaid = Omit<FamilyFineness, "recipes" | "laboratory_results" | "family_parts">;

/** The same for gold that claims nothing, alloyed like what a laboratory assayed. Null where no such alloy has the density. */
export function goldLike(
  { corners }: RestOfResults,
  piece: WeighedPiece,
  confidence: number,
): FinenessSaid | null {
  const measured = volumeOf(piece, usualExpansion);
  const parts = partsOver([{ corners, likelihood: "common" }], measured, confidence);
  const { low, high } = parts;
  const far = normalQuantile((1 + confidence) / 2);
  const impossible = high.middle_g + far * uOfEnd(high) < 0 || low.middle_g - far * uOfEnd(low) > piece.massG;
  return impossible ? null : saidBy("Au", parts, piece.massG, confidence);
}

export function saidBy(
  element: PreciousElement,
  parts: FineParts,
  massG: number,
  confidence: number,
): FinenessSaid {
  const { lowG, highG } = fineSum([parts], confidence);
  const permille = (grams: number) => Math.min(1000, Math.max(0, (1000 * grams) / massG));
  const range = (of: (grams: number) => number): [number, number] => [of(lowG), of(highG)];
  return { element, permille: range(permille), fine_g: range((grams) => grams), parts };
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
