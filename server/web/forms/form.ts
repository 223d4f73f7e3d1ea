import type { FastifyRequest } from "fastify";
import type { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { decimalMark } from "../../../views/numbers.ts";
import { lookOf } from "../look.ts";
import { textsIn } from "../page-request.ts";
import { type Entries, entriesFor } from "./entries.ts";

/** What is wrong with one entry of a form; `fieldId` is the name of the entry. */
export interface FieldProblem {
  fieldId: string;
  error: Message;
}

/**
 * A form: gives its schema, put together from the entries of the page's language. `sent` is what was typed into all of
 * its entries, where one is read by what another one says: a weight by the unit beside it.
 */
export type Form<T> = (entry: Entries, sent: Readonly<Record<string, string>>) => z.ZodType<T>;

/**
 * Reads a posted form: its typed values, or everything that is wrong with it, each beside its entry. Every form of the
 * program is read here, and every number of a form by `readQuantity`.
 *
 *     const sizeForm = ({ number, text }: Entries) =>
 *       z.object({ diameter: number({ unit: "mm", from: 0.05, to: 1000 }), note: text({ mayBeEmpty: true }) });
 *     const read = postedForm(request, sizeForm);
 *     if ("problems" in read) return show(read.problems);
 *
 * What holds between entries is said in a `superRefine` of the schema with `refuseEntry`; it is looked at once each
 * entry is right by itself. Unknown entries are left out.
 */
export function readForm<T>(
  form: Form<T>,
  body: unknown,
  locale: Locale,
): { values: T } | { problems: FieldProblem[] } {
  const read = form(entriesFor(decimalMark(locale)), textsIn(body)).safeParse(body ?? {});
  if (read.success) return { values: read.data };
  return { problems: read.error.issues.map(problemOf) };
}

/** The form of a request. */
export function postedForm<T>(request: FastifyRequest, form: Form<T>) {
  return readForm(form, request.body, lookOf(request).locale);
}

/** The same where a page tells one refusal at a time. Throws Refusal at the first entry that goes back. */
export function formIn<T>(request: FastifyRequest, form: Form<T>): T {
  const read = postedForm(request, form);
  if ("values" in read) return read.values;
  const { fieldId, error } = read.problems[0]!;
  throw new Refusal(error.code, error.params, fieldId);
}

/** Refuses one entry because of what another one says: for a `superRefine` of the whole form. */
export function refuseEntry(context: z.RefinementCtx, fieldId: string, sentence: Message): void {
  context.addIssue({ code: "custom", path: [fieldId], params: { message: sentence } });
}

/** Refuses what an entry says by itself: for its own `superRefine`, which is looked at whatever the others say. */
export function refuse(context: z.RefinementCtx, sentence: Message): void {
  context.addIssue({ code: "custom", params: { message: sentence } });
}

/** The message that an issue carries: `refuse` puts it there. What else zod finds is an entry that is no text. */
function problemOf(issue: z.core.$ZodIssue): FieldProblem {
  const sentence = issue.code === "custom" ? (issue.params?.message as Message | undefined) : undefined;
  return { fieldId: issue.path.map(String).join("."), error: sentence ?? message("form.entry.not-text") };
}

export type { Entries };
