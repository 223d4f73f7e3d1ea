import type { Message } from "../../calibration/message.ts";
import type { Locale } from "../../views/messages/language.ts";
import { tell } from "../../views/messages/tell.ts";
import { isError } from "../compute/compute.ts";
import { answerLine } from "../compute/lines.ts";
import { printedAnswer } from "../compute/printed.ts";
import { type Addend, addendOf } from "../compute/total.ts";

/** How lines are to be answered. */
export interface Answering {
  locale: Locale;
  /** what each line adds to a total is wanted too */
  total: boolean;
}

/** A line of JSON Lines with its answer as text; plain data that can cross from a thread. */
export interface AnsweredLine {
  text: string;
  /** the line could not be computed */
  failed: boolean;
  addend?: Addend;
}

/** Answers one line; null for an empty one. */
export function answeredLine(line: string, { locale, total }: Answering): AnsweredLine | null {
  const answered = answerLine(line);
  if (answered === null) return null;
  const { request, answer } = answered;
  const text = JSON.stringify(printedAnswer(answer, (message: Message) => tell(message, locale)));
  if (isError(answer)) return { text, failed: true };
  const counts = total && answer.density_g_cm3 !== null;
  return { text, failed: false, ...(counts && { addend: addendOf(request, answer) }) };
}

/** Answers several lines, in order; empty ones are left out. */
export function answeredLines({
  lines,
  ...answering
}: Answering & { lines: readonly string[] }): AnsweredLine[] {
  return lines.flatMap((line) => answeredLine(line, answering) ?? []);
}
