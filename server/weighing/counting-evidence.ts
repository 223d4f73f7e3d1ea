import type { Evidence } from "../conformity/evidence/evidence.ts";
import { recordedEvidence } from "../conformity/evidence/recorded.ts";
import type { Test } from "./item.ts";

/** The tests that were not set aside, as far as they hold evidence that is known here. */
export function countingEvidence(tests: readonly Test[]): Evidence[] {
  return tests.flatMap(({ entry, excluded }) => {
    const evidence = excluded === undefined ? recordedEvidence(entry.body.evidence) : null;
    return evidence ? [evidence] : [];
  });
}
