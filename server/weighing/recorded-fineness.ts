import { recordedDensity } from "../conformity/recorded-density.ts";
import { type FamilyFineness, familyFineness } from "../metals/fineness/family-fineness.ts";
import type { Library } from "../metals/library.ts";
import { commonShare } from "./common-share.ts";
import type { RecordedStatement } from "./recorded-statement.ts";

/** The fineness that a record states; one of an earlier version, which holds no parts for sums, gives them from its density. */
export function recordedFineness(
  statement: RecordedStatement,
  { confidence, celsius, library }: { confidence: number; celsius: number; library: Library },
): FamilyFineness | null {
  const { conformity, fineness } = statement;
  const { claim, state } = conformity;
  if (state === "excluded" || state === "no-valid-reading" || claim === null) return null;
  if (fineness?.parts) return { ...fineness, parts: fineness.parts };
  if (!library.has(claim)) return null;
  const piece = {
    measured: recordedDensity(statement, confidence),
    celsius,
    massG: statement.mass_g,
    uMassG: statement.u_mass_g,
    commonShare: commonShare(statement.budget),
  };
  return familyFineness(library.metal(claim), piece, { confidence, library });
}
