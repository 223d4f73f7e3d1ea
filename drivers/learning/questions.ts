import { type Message, message } from "../../calibration/message.ts";
import type { Candidate } from "./candidates.ts";
import type { Part } from "./profile.ts";
import type { sampleLines } from "./recording.ts";
import type { SignForm } from "./signs.ts";
import type { Typed } from "./typed.ts";
import type { SignPlace } from "./vouching.ts";

const questionIds = ["number", "sign", "below-zero", "near-zero", "turns", "kinds", "sends"] as const;

/** A thing that no bytes can tell. Asked once, the answer is kept in the profile. */
export interface Question {
  id: (typeof questionIds)[number];
  /** with the line it is about */
  asks: Message;
  options: Option[];
  /** why the last answer could not be taken */
  refused?: Message;
}

export interface Option {
  value: string;
  message: Message;
}

/** What the owner answered, by the id of the question. */
export type Answers = Partial<Record<Question["id"], string>>;

/** Answers as they come from a file or a form; what is no question here is left out. */
export function answersFrom(given: Readonly<Record<string, string | undefined>>): Answers {
  return Object.fromEntries(questionIds.flatMap((id) => (given[id] === undefined ? [] : [[id, given[id]]])));
}

/** A text that is the same in every language. */
const asText = (text: string) => message("learn.answer.text", { text });

function question(
  id: Question["id"],
  asks: Message,
  options: Option[],
  answer: string | undefined,
): Question {
  const right = { anyOf: options.map((option) => option.message) };
  return {
    id,
    asks,
    options,
    ...(answer !== undefined && { refused: message("learn.answer.not-offered", { answer, right }) }),
  };
}

/** The answer that each line of a block is a reading of its own. */
export const eachLine = "each";

/** "number": which of several numbers that follow the weight is to be read. */
export function numberQuestion(
  candidates: readonly Candidate[][],
  { lines }: Typed,
  answer: string | undefined,
): Question | Candidate[] {
  const placed = candidates
    .flatMap((ways) => {
      const line = ways[0]!.lines.find(({ observed }) => lines.includes(observed));
      return line ? [{ ways, line }] : [];
    })
    .sort((a, b) => a.line.run.start - b.line.run.start);
  const options = placed.map(({ ways, line }, i) => {
    const { text } = line.observed;
    const before =
      text
        .slice(0, line.run.start)
        .split(/[\n\d]/)
        .at(-1) ?? "";
    const behind = /^[^\d\n]*/.exec(text.slice(line.run.end))?.[0] ?? "";
    const beside = before.trim() === "" ? behind.trim() : "";
    return { value: String(i + 1), ways, shown: `${before.trim()} ${line.run.digits} ${beside}`.trim() };
  });
  const chosen = options.find(({ value }) => value === answer);
  if (chosen) return chosen.ways;
  const line = lines[0]?.shown ?? "";
  const numbers = options.map(({ value, shown }) => ({
    value,
    message: message("learn.answer.number", { place: value, text: shown }),
  }));
  // In a block of lines each may be a reading by itself.
  const each: Option[] = /\n/.test(lines[0]?.text ?? "")
    ? [{ value: eachLine, message: message("learn.answer.each") }]
    : [];
  return question("number", message("learn.question.number", { line }), [...numbers, ...each], answer);
}

/** The answer that none of the marks says minus. */
export const noMark = "none";
/** Answers on a minus that was not seen. */
export const minusBefore = "minus-before";
export const minusUnknown = "unknown";

/** "sign": which of several marks that came with the value below zero says minus. */
export function signQuestion(
  places: readonly SignPlace[],
  parts: readonly Part[],
  line: string,
  answer: string | undefined,
): Question | SignPlace | typeof noMark {
  const chosen = places.find((_, i) => String(i + 1) === answer);
  if (chosen) return chosen;
  if (answer === noMark) return noMark;
  const marks = parts.filter((part) => part.is === "mark").length;
  const marked = places.map(({ slot, minus, plus }, i) => ({
    value: String(i + 1),
    message: message("learn.answer.sign", {
      place: slot + 1,
      of: marks,
      minus: { anyOf: minus.map((text) => asText(`“${text}”`)) },
      plus: { anyOf: plus.map((text) => asText(`“${text}”`)) },
    }),
  }));
  const none: Option = { value: noMark, message: message("learn.answer.no-mark") };
  return question("sign", message("learn.question.sign", { line }), [...marked, none], answer);
}

/** "sign": which of several signs at the number says minus. */
export function signFormQuestion(
  forms: readonly SignForm[],
  line: string,
  answer: string | undefined,
): Question | SignForm {
  const chosen = forms.find(({ is }) => is === answer);
  if (chosen) return chosen;
  const codes = { before: "beside", behind: "behind", brackets: "brackets", mark: "mark" } as const;
  const options = forms.map(({ is }) => ({ value: is, message: message(`learn.sign.${codes[is]}`) }));
  return question("sign", message("learn.question.sign", { line }), options, answer);
}

/** "below-zero": how a minus is written that nobody has seen. */
export function belowZeroQuestion(line: string, answer: string | undefined): Question {
  const options: Option[] = [
    { value: minusUnknown, message: message("learn.answer.minus-unknown") },
    { value: minusBefore, message: message("learn.answer.minus-before") },
  ];
  return question("below-zero", message("learn.question.below-zero", { line }), options, answer);
}

/** The answer that the display weighs while such a mark stands in the line. */
const weighs = "weighs";
const notWeighing = "other";

/** "near-zero": whether lines with a mark that came near zero only are weights, or what another mode of the balance shows. */
export function nearZeroQuestion(
  lines: ReturnType<typeof sampleLines>,
  unit: string,
  answer: string | undefined,
): Question | { weighs: boolean } {
  if (answer === weighs || answer === notWeighing) return { weighs: answer === weighs };
  const options: Option[] = [
    { value: weighs, message: message("learn.answer.weighs", { unit }) },
    { value: notWeighing, message: message("learn.answer.not-weighing") },
  ];
  return question("near-zero", message("learn.question.near-zero", { lines }), options, answer);
}

/** The answer that the lines of all kinds show the same number. */
const allKinds = "all";

/** "turns": lines of which kind the display shows, where several take turns; the answer is their marks. */
export function turnsQuestion(
  kinds: readonly { mark: string; line: string }[],
  answer: string | undefined,
): Question | { marks: string[] } {
  const options = kinds.map(
    ({ line }, i): Option => ({ value: String(i + 1), message: message("learn.answer.line", { line }) }),
  );
  const chosen = kinds.find((_, i) => String(i + 1) === answer);
  if (chosen) return { marks: [chosen.mark] };
  if (answer === allKinds) return { marks: kinds.map(({ mark }) => mark) };
  const all: Option = { value: allKinds, message: message("learn.answer.all-kinds") };
  return question("turns", message("learn.question.turns"), [...options, all], answer);
}

/** The answer that all lines are of one kind. */
export const oneKindOnly = "one";
const severalKinds = "several";

/** "kinds": whether two kinds of line take turns that no mark tells apart; true for the answer that they may. */
export function kindsQuestion(
  lines: ReturnType<typeof sampleLines>,
  answer: string | undefined,
): Question | { several: true } {
  if (answer === severalKinds) return { several: true };
  const options: Option[] = [
    { value: oneKindOnly, message: message("learn.answer.one-kind") },
    { value: severalKinds, message: message("learn.answer.several-kinds") },
  ];
  return question("kinds", message("learn.question.kinds", { lines }), options, answer);
}

/** "sends": whether lines come by themselves or on the key of the balance. */
export function sendsQuestion(times: number, answer: string | undefined): Question {
  const options: Option[] = [
    { value: "by-itself", message: message("learn.answer.by-itself") },
    { value: "on-key", message: message("learn.answer.on-key") },
  ];
  return question("sends", message("learn.question.sends", { times }), options, answer);
}

/** The owner's word on whether lines come by themselves; undefined when it is none of the answers. */
export function sendsByItself(answer: string | undefined): boolean | undefined {
  return answer === "by-itself" ? true : answer === "on-key" ? false : undefined;
}
