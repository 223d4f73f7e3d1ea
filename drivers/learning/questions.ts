import { isDecimal } from "../../calibration/decimal.ts";
import { type Message, message } from "../../calibration/message.ts";
import { isMassUnit, type MassUnit, massUnits } from "../../calibration/units.ts";

/** A thing that no bytes can tell. Asked once, the answer is kept in the profile. */
export interface Question {
  id: "which-number" | "comma" | "displayed" | "unit";
  /** with the line it is about */
  asks: Message;
  /** the answers there are; absent where the owner types one */
  options?: Option[];
  /** why the last answer could not be taken */
  refused?: Message;
}

export interface Option {
  value: string;
  message: Message;
}

/** What the owner answered, by the id of the question. */
export type Answers = Partial<Record<Question["id"], string>>;

/** What the owner has answered so far; null where nothing was asked or answered. */
export interface Answered {
  comma: "decimal" | "thousands" | null;
  impliedPlaces: number | null;
  unit: MassUnit | null;
  whichNumber: number | null;
}

/** "comma": what the mark in `digits` is. */
export function commaQuestion(
  digits: string,
  line: string,
  answer: string | undefined,
): Question | Answered["comma"] {
  if (answer === "decimal" || answer === "thousands") return answer;
  const mark = digits.includes(",") ? "," : ".";
  const [whole = "", rest = ""] = digits.split(mark);
  const options: Option[] = [
    { value: "decimal", message: message("learn.answer.decimal", { whole, rest }) },
    { value: "thousands", message: message("learn.answer.thousands", { digits: `${whole}${rest}` }) },
  ];
  return {
    id: "comma",
    asks: message("learn.question.comma", { line, digits, whole }),
    options,
    ...notOffered(answer, options),
  };
}

/** Why an answer that is none of the options is not taken; nothing while none was given. */
function notOffered(answer: string | undefined, options: readonly Option[]): Pick<Question, "refused"> {
  if (answer === undefined) return {};
  const right = { anyOf: options.map((option) => option.message) };
  return { refused: message("learn.answer.not-offered", { answer, right }) };
}

/** "displayed": where the point belongs in digits sent without one. The answer is what the display shows. */
export function displayedQuestion(
  digits: string,
  line: string,
  answer: string | undefined,
): Question | number {
  const asks = message("learn.question.displayed", { line });
  if (answer === undefined) return { id: "displayed", asks };
  const shown = answer.trim().replace(",", ".").replace(/^\+/, "");
  const bare = shown.replace(".", "").replace(/^0+(?=\d)/, "");
  const sent = digits.replace(/\D/g, "").replace(/^0+(?=\d)/, "");
  // The last digits may have changed between the line and the look at the display.
  const near =
    bare.length === sent.length && Math.abs(Number(bare) - Number(sent)) <= 0.01 * Number(sent) + 20;
  if (isDecimal(shown) && near) return shown.includes(".") ? shown.length - 1 - shown.indexOf(".") : 0;
  return {
    id: "displayed",
    asks,
    refused: message("learn.answer.other-digits", { answer, digits: sent }),
  };
}

/** "unit": which unit the number is in, where the line does not say it in a known word. */
export function unitQuestion(line: string, answer: string | undefined): Question | MassUnit {
  if (answer !== undefined && isMassUnit(answer)) return answer;
  const options = massUnits.map((unit) => ({ value: unit, message: asText(unit) }));
  return {
    id: "unit",
    asks: message("learn.question.unit", { line }),
    options,
    ...notOffered(answer, options),
  };
}

/** "which-number": which of several numbers that follow the load is to be read. */
export function whichQuestion(
  numbers: readonly { ordinal: number; shown: string }[],
  line: string,
  answer: string | undefined,
): Question | number {
  const chosen = numbers.find(({ ordinal }) => String(ordinal) === answer);
  if (chosen) return chosen.ordinal;
  const options = numbers.map(({ ordinal, shown }) => ({ value: String(ordinal), message: asText(shown) }));
  return {
    id: "which-number",
    asks: message("learn.question.which-number", { line }),
    options,
    ...notOffered(answer, options),
  };
}

/** A text that is the same in every language. */
const asText = (text: string) => message("learn.answer.text", { text });
