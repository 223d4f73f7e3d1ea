import { message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { isEvidenceKind } from "../../conformity/evidence/evidence.ts";
import { foundBy } from "../../conformity/evidence/recorded.ts";
import type { FieldProblem } from "../forms/form.ts";
import { typedEvidence } from "./evidence-form.ts";
import { typedSize } from "./size-form.ts";

/** The body of the entry that a form of evidence asks for, or every entry of the form that was refused. */
export function typedTest(
  values: Readonly<Record<string, string>>,
  locale: Locale,
  known: Parameters<typeof typedSize>[2],
) {
  const { kind = "" } = values;
  if (kind === "size") return typedSize(values, locale, known);
  if (isEvidenceKind(kind)) return entryOf(typedEvidence(kind, values, locale));
  const problems: readonly FieldProblem[] = [
    { fieldId: "evidence-heading", error: message("evidence.refused.unknown-test", { kind }) },
  ];
  return { problems };
}

function entryOf(typed: ReturnType<typeof typedEvidence>) {
  if ("problems" in typed) return typed;
  const { evidence, by, words } = typed;
  return {
    body: {
      test: evidence.kind,
      outcome: foundBy(evidence),
      evidence,
      ...(by === undefined ? {} : { by }),
      ...(words === undefined ? {} : { words }),
    },
  };
}
