import { z } from "zod";
import type { BalanceTraits } from "../../calibration/balance.ts";
import { omitUndefined } from "./omit-undefined.ts";

const positive = z.number().positive();
const notNegative = z.number().nonnegative();

/** A balance as a request states it. */
export const balance = z.strictObject({
  readability_g: positive,
  repeatability_g: notNegative,
  repeatability_dof: positive.optional(),
  repeatability_assumed: z
    .boolean()
    .optional()
    .describe("nobody stated or measured it: readings that scatter more are told, and widen the result"),
  immersed_readability_g: positive.optional(),
  immersed_repeatability_g: notNegative.optional(),
  immersed_repeatability_dof: positive.optional(),
  immersed_repeatability_assumed: z.boolean().optional(),
  linearity_g: notNegative
    .default(0)
    .describe("half-width of the departure from a straight line, a smooth curve"),
  capacity_g: positive
    .optional()
    .describe("load over which that curve bends; the heaviest load of the request when left out"),
  span_u_relative: notNegative
    .optional()
    .describe(
      "standard uncertainty of the scale; cancels in a density weighed on one balance, 0.0005 of each of two",
    ),
  eccentricity_u_per_g: notNegative
    .optional()
    .describe("standard uncertainty per gram of a load set on the pan by hand"),
});

/** A balance of a request as the budget takes it. */
export function balanceOf(given: z.output<typeof balance>): BalanceTraits {
  return omitUndefined({
    readabilityGrams: given.readability_g,
    repeatabilityGrams: given.repeatability_g,
    repeatabilityDof: given.repeatability_dof,
    repeatabilityAssumed: given.repeatability_assumed,
    immersedReadabilityGrams: given.immersed_readability_g,
    immersedRepeatabilityGrams: given.immersed_repeatability_g,
    immersedRepeatabilityDof: given.immersed_repeatability_dof,
    immersedRepeatabilityAssumed: given.immersed_repeatability_assumed,
    linearityGrams: given.linearity_g,
    capacityGrams: given.capacity_g,
    spanU: given.span_u_relative,
    eccentricityPerGram: given.eccentricity_u_per_g,
  });
}
