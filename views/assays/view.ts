import type { About, FieldProblem } from "../forms.tsx";

/** What a laboratory found, held against the density: names and values in words. */
export interface AssayView {
  /** the page of all assays of the piece */
  href: string;
  /** the assay that counts; left out while there is none */
  facts?: readonly (readonly [name: string, value: string])[];
}

/** One assay of the list; `id` is its entry. */
export interface AssayRow {
  id: string;
  message: string;
  standing: string;
  reason: string;
  /** false once it was set aside */
  counts: boolean;
}

export const assayFields = [
  "metal",
  "permille",
  "expanded",
  "k",
  "laboratory",
  "report",
  "method",
  "date",
  "reason",
  "by",
] as const;

export interface AssayPageView extends AssayView {
  record: { href: string; ticket: string; density: string; mass: string };
  values: Readonly<Record<(typeof assayFields)[number], string>>;
  problems: readonly FieldProblem[];
  rows: readonly AssayRow[];
  csrfToken: string;
  about: About;
}
