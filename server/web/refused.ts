import { Refusal } from "../../calibration/refusal.ts";
import type { FieldProblem } from "../../views/forms.tsx";
import type { Sentence } from "../../views/sentence.tsx";
import { LedgerError } from "../ledger/error.ts";

/** What was refused, to be shown beside the field it is about. */
export interface Refused {
  message: Sentence;
  field?: string | undefined;
}

/** The refusal in an error, or undefined for an error of the program, which is no answer to a person. */
export function refusedBy(error: unknown): Refused | undefined {
  if (error instanceof Refusal) return { message: error, field: error.at };
  if (error instanceof LedgerError) return { message: error };
  return undefined;
}

/** The refusal in an error. Throws the error itself when it is none: an error of the program is no answer to a person. */
export function refusalOf(error: unknown): Refused {
  const refused = refusedBy(error);
  if (refused === undefined) throw error;
  return refused;
}

/** The refusal in an error as the one problem of a form, at the field it names or at the one given. Throws as `refusalOf`. */
export function problemsOf(error: unknown, otherwise: string): FieldProblem[] {
  const { message, field = otherwise } = refusalOf(error);
  return [{ fieldId: field, error: message }];
}
