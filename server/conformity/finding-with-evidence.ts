import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { builtIn } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import type { Evidence } from "./evidence/evidence.ts";
import { type WeighedEvidence, weighEvidence } from "./evidence/weighed-evidence.ts";
import { bandCelsius } from "./exclusion.ts";
import { type Finding, findingFor } from "./finding.ts";
import type { FindingContext } from "./finding-context.ts";
import { needsFiner, satisfies } from "./look-alike.ts";
import type { State } from "./state.ts";
import { madeUpBeside, metalsAlive } from "./what-fits.ts";

/** The finding of the density, what other tests struck out of it, and where the claim then stands. */
export interface FindingWithEvidence {
  density: Finding;
  evidence: WeighedEvidence;
  state: State;
  because: string;
}

/**
 * Density and other evidence together. The density's finding is kept as it is; evidence only strikes out. Contradicting
 * tests leave it undecided and are named. Throws RangeError as findingFor does, or without a claim.
 */
export function findingWithEvidence(
  measured: MeasuredDensity,
  claim: string,
  confidence: number,
  evidence: readonly Evidence[],
  context: FindingContext = {},
): FindingWithEvidence {
  const library = context.library ?? builtIn;
  const celsius = context.celsius ?? bandCelsius;
  const density = findingFor(measured, claim, confidence, context);
  const claimed = library.metal(claim);
  const alive = metalsAlive(measured, confidence, celsius, library);
  const fits = [...alive, ...madeUpBeside(measured, claimed, celsius, library).map((s) => s.as)];
  const others = library.metals.filter((m) => !alive.includes(m));
  const weighed = weighEvidence(fits, others, evidence, claimed);
  const made = evidence.length > 0 ? standing(density, weighed, claimed) : density;
  return { density, evidence: weighed, state: made.state, because: made.because };
}

type Standing = Pick<FindingWithEvidence, "state" | "because">;

function standing(density: Finding, weighed: WeighedEvidence, claimed: Metal): Standing {
  if (weighed.contradictions.length > 0)
    return { state: "inconclusive", because: weighed.contradictions.join(" ") };
  const against = weighed.struck.filter((s) => s.id === claimed.id);
  if (against.length > 0)
    return {
      state: "excluded",
      because: `${against.map((s) => s.because).join("; ")}: this strikes out ${claimed.name}.`,
    };
  if (density.state === "excluded") return density;
  const rest = weighed.alive.filter((m) => !satisfies(m, claimed));
  if (rest.length === 0)
    return {
      state: "consistent",
      because: `Density and the other tests leave ${claimed.name} and nothing else that is known.`,
    };
  const names = rest.slice(0, 4).map((m) => m.name);
  const more = rest.length > 4 ? ` and ${rest.length - 4} more` : "";
  return {
    state: rest.some((m) => isDecidable(density, m.id)) ? "inconclusive" : "consistent-not-unique",
    because: `Density and the other tests do not exclude ${claimed.name}; still alive beside it: ${names.join(", ")}${more}.`,
  };
}

/** True when a finer density alone would still take this one away. */
function isDecidable(density: Finding, id: string): boolean {
  const entry = density.lookAlikes.find((l) => l.id === id);
  return entry !== undefined && needsFiner(entry);
}
