import { densityWords, shortest } from "./amounts.ts";
import type { CheckedBy, CheckResult } from "./check.ts";

export interface ReferencePieceTest {
  /** the piece, by the name on its box */
  piece: string;
  /** its stated density, expanded uncertainty (k = 2) and the date of that value */
  stated: { gPerCm3: number; expandedGPerCm3: number; at: string };
  /** the density found by the whole procedure, expanded uncertainty at the same coverage */
  measured: { gPerCm3: number; expandedGPerCm3: number };
}

export interface ReferencePieceFound {
  /** (measured − stated)/√(U² + U²), both expanded uncertainties at the same coverage; |E_n| ≤ 1 agrees (ISO 13528 [from memory]) */
  en: number;
  differenceGPerCm3: number;
  /** smallest fault of the procedure this check could have seen, g/cm³ */
  blindBelowGPerCm3: number;
}

/** A scratch takes mass and volume alike, so that a sound density excuses no changed mass, and the other way round. */
const scratched =
  "A scratch or a dent changes the piece's mass, not its density: if its dry mass moved too, the piece itself is worn or dirty, and its stated value is to be found anew.";

/** The reference piece through the whole procedure, judged by E_n. Throws RangeError for uncertainties that are not positive. */
export function referencePiece(
  { piece, stated, measured }: ReferencePieceTest,
  checked: CheckedBy,
): CheckResult<ReferencePieceFound> {
  for (const { expandedGPerCm3 } of [stated, measured])
    if (!(expandedGPerCm3 > 0))
      throw new RangeError(
        `E_n with an expanded uncertainty of ${expandedGPerCm3} g/cm³ says nothing. Right: both values with their U above 0. Enter the U of the reference piece's own report.`,
      );
  const differenceGPerCm3 = measured.gPerCm3 - stated.gPerCm3;
  const blindBelowGPerCm3 = Math.hypot(stated.expandedGPerCm3, measured.expandedGPerCm3);
  const en = differenceGPerCm3 / blindBelowGPerCm3;
  const passed = Math.abs(en) <= 1;
  return {
    ...checked,
    kind: "reference-piece",
    passed,
    says:
      `${piece}: found ${densityWords(measured.gPerCm3)}, stated ${densityWords(stated.gPerCm3)}; E_n = ${en.toFixed(2)}, ` +
      `${passed ? "within" : "outside"} ±1. A fault below ${shortest(blindBelowGPerCm3, 2)} g/cm³ would not have shown.`,
    todo: passed
      ? "Record it as a point of the reference density chart."
      : differenceGPerCm3 < 0
        ? `Too low: bubbles, touching, wrong water temperature or dirt, in this order. Find the cause before the next piece is weighed. ${scratched}`
        : `Too high: not covered, hanger in the dry reading, evaporation, water warmer than stated. Find the cause before the next piece is weighed. ${scratched}`,
    found: { en, differenceGPerCm3, blindBelowGPerCm3 },
  };
}
