import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { decimalsOf, density } from "./amounts.ts";
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

/** The reference piece through the whole procedure, judged by E_n. Throws Refusal for uncertainties that are not positive. */
export function referencePiece(
  { piece, stated, measured }: ReferencePieceTest,
  checked: CheckedBy,
): CheckResult<ReferencePieceFound> {
  for (const { expandedGPerCm3 } of [stated, measured])
    if (!(expandedGPerCm3 > 0))
      throw new Refusal("bench-check.reference-piece.u-not-above-zero", { u_g_cm3: expandedGPerCm3 });
  const differenceGPerCm3 = measured.gPerCm3 - stated.gPerCm3;
  const blindBelowGPerCm3 = Math.hypot(stated.expandedGPerCm3, measured.expandedGPerCm3);
  const en = differenceGPerCm3 / blindBelowGPerCm3;
  const passed = Math.abs(en) <= 1;
  // where that many show found and stated as the same, as many as show by how much they differ
  const coarse = decimalsOf(blindBelowGPerCm3);
  const alike = measured.gPerCm3.toFixed(coarse) === stated.gPerCm3.toFixed(coarse);
  const decimals = alike && differenceGPerCm3 !== 0 ? decimalsOf(Math.abs(differenceGPerCm3)) : coarse;
  return {
    ...checked,
    kind: "reference-piece",
    passed,
    says: message("bench-check.reference-piece.found", {
      piece,
      found: density(measured.gPerCm3, decimals),
      stated: density(stated.gPerCm3, decimals),
      en: Math.abs(en),
      side: en < 0 ? "low" : "high",
      passed: String(passed),
      blind: density(blindBelowGPerCm3, decimals),
    }),
    todo: message(
      passed
        ? "bench-check.reference-piece.passed"
        : differenceGPerCm3 < 0
          ? "bench-check.reference-piece.low"
          : "bench-check.reference-piece.high",
    ),
    found: { en, differenceGPerCm3, blindBelowGPerCm3 },
  };
}
