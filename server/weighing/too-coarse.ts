import { isTooCoarse } from "../../calibration/too-coarse.ts";
import type { ComputeRequest } from "../compute/contract.ts";
import type { StatedCheck, StatedDensity } from "./statement-shape.ts";
import { wouldDecide } from "./would-decide.ts";

/** A half-width of this share tells silver from brass and lead from gold. */
const useful = 0.08;

/** The check that warns of an interval wider than any question; none where the interval says something. */
export function coarseCheck(numbers: StatedDensity, request: ComputeRequest): StatedCheck[] {
  const { density_g_cm3, expanded_g_cm3 } = numbers;
  if (!isTooCoarse(density_g_cm3, expanded_g_cm3)) return [];
  const ways = wouldDecide(numbers, useful * density_g_cm3, request);
  return [
    {
      code: "conformity.too-coarse",
      severity: "warn",
      params: { ways: { anyOf: ways } },
      remedies: [],
    },
  ];
}
