import { Refusal } from "../../calibration/refusal.ts";
import type { Sentence } from "../../views/sentence.tsx";
import { LedgerError } from "../ledger/error.ts";

/** What was refused, to be shown beside the field it is about. */
export interface Refused {
  says: Sentence;
  field?: string | undefined;
}

/** The refusal in an error, or undefined for an error of the program, which is no answer to a person. */
export function refusedBy(error: unknown): Refused | undefined {
  if (error instanceof Refusal) return { says: error, field: error.at };
  if (error instanceof LedgerError) return { says: error };
  return undefined;
}

/** The refusal in an error. Throws the error itself when it is none: an error of the program is no answer to a person. */
export function refusalOf(error: unknown): Refused {
  const refused = refusedBy(error);
  if (refused === undefined) throw error;
  return refused;
}
