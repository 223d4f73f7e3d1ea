import { recordedDensity } from "../conformity/recorded-density.ts";
import { type FamilyFineness, familyFineness } from "../metals/fineness/family-fineness.ts";
import type { Library } from "../metals/library.ts";
import { commonShare } from "./common-share.ts";
import type { RecordedStatement } from "./recorded-statement.ts";

/** A piece whose record is read again. */
interface Read {
  confidence: number;
  celsius: number;
  library: Library;
}

/** The fineness that a record states; one of an earlier version, which holds no parts for sums, gives them from its density. */
export function recordedFineness(statement: RecordedStatement, of: Read): FamilyFineness | null {
  const { conformity, fineness } = statement;
  const { claim, state } = conformity;
  if (state === "excluded" || state === "no-valid-reading" || claim === null) return null;
  if (fineness?.parts) return { ...fineness, parts: fineness.parts };
  return overItsClaim(statement, of);
}

/**
 * The same over everything the claim allows, where laboratory results on other pieces narrow what the record states;
 * undefined where none do.
 */
export function unnarrowedFineness(statement: RecordedStatement, of: Read): FamilyFineness | undefined {
  const { fineness } = statement;
  if (!fineness?.laboratory_results?.narrows) return undefined;
  const { laboratory_results, family_parts, ...stated } = fineness;
  const parts = family_parts ?? overItsClaim(statement, of)?.parts;
  return parts && { ...stated, ...laboratory_results.family, parts };
}

function overItsClaim(
  statement: RecordedStatement,
  { confidence, celsius, library }: Read,
): FamilyFineness | null {
  const { claim } = statement.conformity;
  if (claim === null || !library.has(claim)) return null;
  const piece = {
    measured: recordedDensity(statement, confidence),
    celsius,
    massG: statement.mass_g,
    uMassG: statement.u_mass_g,
    commonShare: commonShare(statement.budget),
  };
  return familyFineness(library.metal(claim), piece, { confidence, library });
}
