import { called } from "../metals/called.ts";
import type { Library } from "../metals/library.ts";
import type { SituationClaim } from "./checks/situation.ts";

/** A claim as the checks know it; undefined without one, or for one the library does not know. */
export function situationClaim(id: string | undefined, library: Library): SituationClaim | undefined {
  if (id === undefined || !library.has(id)) return undefined;
  const claimed = library.metal(id);
  const { low, high } = claimed.densityGPerCm3;
  return { metal: called(claimed), lowGPerCm3: low, highGPerCm3: high };
}
