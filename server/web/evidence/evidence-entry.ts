import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { isEvidenceKind } from "../../conformity/evidence/evidence.ts";
import { foundBy } from "../../conformity/evidence/recorded.ts";
import { type Entries, type FieldProblem, formIn } from "../forms/form.ts";
import { typedEvidence } from "./evidence-form.ts";
import { typedSize } from "./size-form.ts";

/** Which test a form states. */
export const kindForm = ({ typed }: Entries) => z.object({ kind: typed() });

/** The body of the entry that a form of evidence asks for, or every entry of the form that was refused. */
export function typedTest(request: FastifyRequest, known: Parameters<typeof typedSize>[1]) {
  const { kind } = formIn(request, kindForm);
  if (kind === "size") return { kind, ...typedSize(request, known) };
  if (isEvidenceKind(kind)) return { kind, ...entryOf(typedEvidence(kind, request)) };
  const problems: readonly FieldProblem[] = [
    { fieldId: "evidence-heading", error: message("evidence.refused.unknown-test", { kind }) },
  ];
  return { kind, problems };
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
