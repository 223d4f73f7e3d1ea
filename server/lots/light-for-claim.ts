import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { to20 } from "../metals/fineness/fineness.ts";
import { isCertain } from "../metals/fineness/house-split.ts";
import { restByColour } from "../metals/fineness/rest-of-alloy.ts";
import { silverShare } from "../metals/fineness/silver-share.ts";
import type { LotPiece } from "./lot-piece.ts";
import type { LotDoubt } from "./totals.ts";

/** The fineness a claim such as au-585 names, ‰; undefined where it names none below 1000. */
export function claimedPermille(claim: string | null): number | undefined {
  const permille = Number(/-(\d{3})/.exec(claim ?? "")?.[1]);
  return permille > 0 && permille < 1000 ? permille : undefined;
}

/**
 * True when gold of this fineness is so light only with a rest as of red gold or lighter: nearly all copper, or zinc and
 * nickel in it. A hollow, solder and a steel spring make a piece so light too. Never where the density is too uncertain to
 * tell a rest.
 */
export function isLightFor(permille: number, measured: MeasuredDensity, celsius: number): boolean {
  const warmer = to20("Au", celsius);
  const split = silverShare({
    gold: permille / 1000,
    uGold: 0,
    gPerCm3: measured.valueGPerCm3 * warmer,
    uGPerCm3: measured.uGPerCm3 * warmer,
  });
  return isCertain(split) && split.share <= restByColour.red.silver[1];
}

/** Pieces as light as gold of their claim gets, by claim. */
export function lightForTheirClaim(pieces: readonly LotPiece[]): LotDoubt[] {
  const light = pieces.filter((piece) => piece.light);
  const finenesses = [...new Set(light.map(({ claim }) => claimedPermille(claim)!))].sort((a, b) => a - b);
  return finenesses.map((permille) => ({
    flag: "light for its claim",
    says: `As light as gold of ${permille} ‰ gets: so are red gold, zinc or nickel in it, a hollow, solder, a steel spring.`,
    todo: "Unless it is red, hold a magnet to it and look for seams; cut it before it counts, or lay it with the suspects.",
    tickets: light.filter(({ claim }) => claimedPermille(claim) === permille).map(({ ticket }) => ticket),
  }));
}
