import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { to20 } from "../metals/fineness/fineness.ts";
import { restByColour } from "../metals/fineness/rest-of-alloy.ts";
import { isCertain, silverShare } from "../metals/fineness/silver-share.ts";

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
