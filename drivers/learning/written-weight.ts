import { message } from "../../calibration/message.ts";
import type { Candidate } from "./candidates.ts";
import type { NotLearned } from "./learned.ts";
import type { Placed } from "./places.ts";
import {
  type Answers,
  belowZeroQuestion,
  minusBefore,
  minusUnknown,
  noMark,
  signFormQuestion,
  signQuestion,
} from "./questions.ts";
import { sampleLines } from "./recording.ts";
import { type WeightParts, weightParts } from "./sides.ts";
import {
  dashesBeside,
  minusTold,
  type SignForm,
  saysMinus,
  signByMark,
  signForms,
  typedLines,
} from "./signs.ts";
import type { Typed } from "./typed.ts";
import { type SignPlace, signPlaces } from "./vouching.ts";

/** How a weight is written, its sign included. */
export interface Written extends WeightParts {
  lines: Placed[];
  sign: SignForm;
  /** the place whose marks tell the sign; null where it is written at the number */
  signPlace: SignPlace | null;
}

/** How the number, its sign and the marks beside it are written; or a question about the sign, or why it cannot be told. */
export function writtenWeight(
  candidate: Candidate,
  typed: readonly Typed[],
  answers: Answers,
): Written | NotLearned {
  const below = typed.some(({ negative }) => negative);
  const form = formOf(candidate, typed, answers);
  if (form && "asks" in form) return { questions: [form] };
  if (form && "refused" in form) return form;
  const sign = form ?? signByMark;
  const lines = sign.evident
    ? candidate.lines
    : candidate.lines.filter(
        (line) => !(["before", "behind", "brackets"] as const).some((is) => saysMinus(is, line)),
      );
  const kept = form ? lines : candidate.lines;
  const parts = weightParts({ notation: candidate.notation, lines: kept }, sign, below && form !== null);
  if (form) return { ...parts, lines: kept, sign, signPlace: null };
  const place = markOf(parts, kept, typed, answers);
  if ("questions" in place || "refused" in place) return place;
  return { ...parts, lines: kept, sign, signPlace: place };
}

/** The form in which the sign is written at the number; null when a mark must tell it. */
function formOf({ lines }: Candidate, typed: readonly Typed[], answers: Answers) {
  const forms = signForms(lines, typed);
  const line = (signForm: SignForm | undefined) =>
    signForm && lines.find((one) => saysMinus(signForm.is, one));
  if (forms.length > 1) return signFormQuestion(forms, line(forms[0])?.observed.shown ?? "", answers.sign);
  const [form = null] = forms;
  if (!form || form.evident || typed.some(({ negative }) => negative)) return form;
  const shown = typed.find(({ digits }) => digits !== "")!;
  const answer = answers["below-zero"];
  if (answer === minusBefore) return minusTold;
  if (answer !== minusUnknown) return belowZeroQuestion(shown.lines[0]?.shown ?? "", answer);
  const params = { typed: shown.shown, lines: sampleLines(shown.lines) };
  return { refused: message("learn.refused.below-zero", params) } satisfies NotLearned;
}

/** The mark beside the number that tells its sign. */
function markOf(
  { parts }: WeightParts,
  lines: readonly Placed[],
  typed: readonly Typed[],
  answers: Answers,
): SignPlace | NotLearned {
  const places = signPlaces(parts, lines, typed);
  const negative = typed.find((value) => value.negative)!;
  const params = { typed: negative.shown, lines: sampleLines(negative.lines) };
  if (places.length === 0) return { refused: message("learn.refused.sign", params) };
  const doubtful = places.length > 1 || places[0]!.atZero || dashTells(lines, typed, places[0]!);
  if (!doubtful) return places[0]!;
  const place = signQuestion(places, parts, negative.lines[0]?.shown ?? "", answers.sign);
  if (place === noMark) return { refused: message("learn.refused.sign", params) };
  return "asks" in place ? { questions: [place] } : place;
}

/** A minus elsewhere in the line, beside values below zero only, while the mark itself is none. */
function dashTells(lines: readonly Placed[], typed: readonly Typed[], { minus }: SignPlace): boolean {
  if (minus.every((text) => /[-\u2212]/.test(text))) return false;
  const dashes = (negative: boolean) =>
    typedLines(lines, typed).flatMap(({ value, line }) =>
      value.negative === negative ? [dashesBeside(line)] : [],
    );
  return Math.min(...dashes(true)) > Math.max(...dashes(false));
}
