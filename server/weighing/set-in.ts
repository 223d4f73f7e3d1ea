import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { ComputeRequest } from "../compute/contract.ts";
import { cautionsAbout } from "../conformity/cautions.ts";
import { called } from "../metals/called.ts";
import { alloySetIn } from "../metals/composites/alloy-set-in.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { answerOf } from "./answer.ts";
import { withoutVerdict } from "./no-verdict.ts";
import type { StatedCheck, StatedDensity, StatedMeaning } from "./statement-shape.ts";

interface SetIn {
  setIn: NonNullable<ComputeRequest["set_in"]>;
  numbers: StatedDensity;
  checks: readonly StatedCheck[];
  library: Library;
}

type Said = Omit<StatedMeaning, "id" | "versions">;

/**
 * What the density of a whole says where the claimed alloy is set in something else: how much of each it holds, if the
 * alloy is the claim. Whether it is, no density tells: another share gives the same. Only a whole outside of both is
 * excluded. Throws Refusal for a body that is not lighter than the alloy.
 */
export function saidOfSetIn(request: ComputeRequest, { setIn, numbers, checks, library }: SetIn): Said {
  const none = { checks: [...checks], ...withoutVerdict(request) };
  if (checks.some(({ severity }) => severity === "stop"))
    return { ...none, answer: answerOf(none, undefined, library) };
  // the contract lets nothing set in without a claim
  const claimed = library.metal(request.claim!);
  const claim = { claim: claimed.id };
  try {
    return { ...none, ...held(claimed, numbers, setIn, request.confidence) };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { code, params } = error;
    if (!findings.has(code)) throw new Refusal(code, params, "set_in.density_g_cm3");
    const sentence = message(code, params);
    // lighter than the body alone: then it is the body that is not what was stated
    if (code === outside && numbers.density_20_g_cm3 > claimed.densityGPerCm3.high)
      return {
        ...none,
        conformity: { ...claim, state: "excluded", says: sentence },
        answer: message("answer.excluded-untold", { claim: called(claimed) }),
      };
    return { ...none, conformity: { ...claim, state: "inconclusive", says: sentence }, answer: sentence };
  }
}

const outside = "composite.refusal.whole-outside";
/** Refusals that are findings about the piece, and none about the request. */
const findings: ReadonlySet<string> = new Set([outside, "composite.refusal.masses-open"]);

function held(
  claimed: Metal,
  { mass_g, u_mass_g, density_20_g_cm3, u_g_cm3 }: StatedDensity,
  { density_g_cm3, u_g_cm3: u }: SetIn["setIn"],
  confidence: number,
): Omit<Said, "checks" | "not_excluded" | "excluded_by_tests" | "next_tests"> {
  const whole = { massG: { value: mass_g, u: u_mass_g }, density: { value: density_20_g_cm3, u: u_g_cm3 } };
  const { alloyG, bodyG, fineness } = alloySetIn(whole, claimed, { value: density_g_cm3, u }, confidence);
  const { low: low_g_cm3, high: high_g_cm3 } = claimed.densityGPerCm3;
  const claim = called(claimed);
  return {
    conformity: {
      claim: claimed.id,
      state: "inconclusive",
      says: message("conformity.set-in", { claim, body_g_cm3: density_g_cm3, low_g_cm3, high_g_cm3 }),
    },
    set_in: { alloy_g: [...alloyG], body_g: [...bodyG] },
    fineness: fineness && { ...fineness, recipes: [...(claimed.recipes ?? [claimed.id])] },
    cautions: cautionsAbout([claimed]),
    answer: message("answer.set-in", { claim, low_g: alloyG[0], high_g: alloyG[1] }),
  };
}
