import type { About, FieldProblem } from "../forms.tsx";
import type { Sentence } from "../sentence.tsx";

export const meltSides = ["house", "seller", "umpire"] as const;

/** The forms of a melt's page, by the end of their addresses. */
export type MeltForm =
  | "bar"
  | "drillings"
  | "tolerances"
  | "assays"
  | "exclusions"
  | "settling"
  | "reopening";

/** What every page with a form is told of one that was sent back. */
export interface SentBack {
  values: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
}

export interface MeltsPage extends SentBack {
  melts: readonly { id: string; name: string; made: string; lots: string; before: string; state: string }[];
  /** lots that lie in no melt */
  lots: readonly { id: string; name: string }[];
  stepKey: string;
  csrfToken: string;
}

export interface MeltView extends SentBack {
  id: string;
  sent: MeltForm | undefined;
  facts: readonly (readonly [name: string, value: string])[];
  /** each metal: what the sides found, and what follows */
  agreements: readonly { metal: string; sides: string; follows: Sentence }[];
  assays: readonly { id: string; message: string; counts: boolean }[];
  /** final figures, newest first, each in one sentence */
  settlings: readonly string[];
  isSettled: boolean;
  hasDrillings: boolean;
  csrfToken: string;
  about: About;
}
