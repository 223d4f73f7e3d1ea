import type { EvidencePageView } from "../../../views/evidence/page.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { fixed } from "../../../views/numbers.ts";
import type { Evidence } from "../../conformity/evidence/evidence.ts";
import { type WeighedEvidence, weighEvidence } from "../../conformity/evidence/weighed-evidence.ts";
import { findingWithEvidence } from "../../conformity/finding-with-evidence.ts";
import { recordedDensity } from "../../conformity/recorded-density.ts";
import { metalsAlive } from "../../conformity/what-fits.ts";
import type { Library } from "../../metals/library.ts";
import type { Metal } from "../../metals/metal.ts";
import type { RecordedStatement } from "../../weighing/recorded-statement.ts";

/** The measured piece as every part of the page needs it. */
export interface MeasuredItem {
  statement: RecordedStatement;
  confidence: number;
  celsius: number;
  claim: string | undefined;
}

/** What density and the other tests leave, and what the claim is worth after them. */
export interface Standing extends Pick<EvidencePageView, "state" | "because"> {
  weighed: WeighedEvidence;
}

export function standingOf(item: MeasuredItem, evidence: readonly Evidence[], library: Library): Standing {
  const { statement, confidence, celsius, claim } = item;
  const measured = recordedDensity(statement, confidence);
  if (claim === undefined) {
    const fits = metalsAlive(measured, confidence, celsius, library);
    const others = library.metals.filter((m) => !fits.includes(m));
    const weighed = weighEvidence(fits, others, evidence);
    return {
      state: "no-claim",
      because: `Nothing was claimed, so nothing is tested: density and the other tests leave ${weighed.alive.length} of the ${fits.length} candidates of the density.`,
      weighed,
    };
  }
  const found = findingWithEvidence(measured, claim, confidence, evidence, {
    celsius,
    massG: statement.mass_g,
    library,
  });
  // A statement of today holds the tests; one of an earlier version knew the density alone.
  return evidence.length === 0 || statement.excluded_by_tests !== undefined
    ? { state: statement.conformity.state, because: statement.answer, weighed: found.evidence }
    : { state: found.state, because: found.because, weighed: found.evidence };
}

/** Everything the density leaves, alive first, with why the rest is struck out. */
export function candidatesOf(
  { weighed }: Standing,
  claim: string | undefined,
  locale: Locale,
): EvidencePageView["candidates"] {
  const reasons = new Map<string, { name: string; because: string[] }>();
  for (const { id, name, because } of weighed.struck) {
    const one = reasons.get(id) ?? { name, because: [] };
    one.because.push(because);
    reasons.set(id, one);
  }
  const band = ({ densityGPerCm3: { low, high } }: Metal) =>
    `${fixed(low, 2, locale)} to ${fixed(high, 2, locale)}`;
  return [
    ...weighed.alive.map((m) => ({
      id: m.id,
      name: m.name,
      band: band(m),
      claimed: m.id === claim,
      struckBy: [],
    })),
    ...[...reasons].map(([id, { name, because }]) => ({
      id,
      name,
      band: "",
      claimed: id === claim,
      struckBy: because,
    })),
  ];
}

/** Before the piece is weighed: what the other tests leave of the whole library. */
export function standingUnweighed(
  claim: string | undefined,
  evidence: readonly Evidence[],
  library: Library,
): Standing {
  const claimed = claim !== undefined && library.has(claim) ? library.metal(claim) : undefined;
  const weighed = weighEvidence(library.metals, [], evidence, claimed);
  const against = weighed.struck.filter(({ id }) => id === claimed?.id);
  if (claimed && against.length > 0 && weighed.contradictions.length === 0)
    return {
      state: "excluded",
      because: `${against.map(({ because }) => because).join("; ")}: this strikes out ${claimed.name}.`,
      weighed,
    };
  return {
    state: "inconclusive",
    because: `Not weighed yet: the other tests leave ${weighed.alive.length} of the ${library.metals.length} metals of the library.`,
    weighed,
  };
}
