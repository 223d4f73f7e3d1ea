import { isDecimal } from "../../calibration/decimal.ts";
import { isMassUnit, type MassUnit, massUnits } from "../../calibration/units.ts";

/** A thing that no bytes can tell. Asked once, the answer is kept in the profile. */
export interface Question {
  id: "which-number" | "comma" | "displayed" | "unit";
  /** a whole sentence, with the line it is about */
  asks: string;
  /** the answers there are; absent where the owner types one */
  options?: { value: string; says: string }[];
  /** why the last answer could not be taken */
  refused?: string;
}

/** What the owner answered, by the id of the question. */
export type Answers = Partial<Record<Question["id"], string>>;

export interface Told {
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
): Question | Told["comma"] {
  if (answer === "decimal" || answer === "thousands") return answer;
  const mark = digits.includes(",") ? "," : ".";
  const [whole = "", rest = ""] = digits.split(mark);
  return {
    id: "comma",
    asks: `The line "${line}" says ${digits}. Is that a little more than ${whole}, or more than ${whole} thousand?`,
    options: [
      { value: "decimal", says: `${whole} and ${rest} thousandths` },
      { value: "thousands", says: `${whole}${rest}, without decimals` },
    ],
    ...(answer === undefined ? {} : { refused: `"${answer}" is not one of the two answers.` }),
  };
}

/** "displayed": where the point belongs in digits sent without one. The answer is what the display shows. */
export function displayedQuestion(
  digits: string,
  line: string,
  answer: string | undefined,
): Question | number {
  const asks = `The line "${line}" came while the weight lay on the pan. It carries no decimal point. What did the display of the balance show then?`;
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
    refused: `"${answer}" does not carry the digits ${sent} of the line. Right: all digits that the display showed, zeros at the end included, with its point.`,
  };
}

/** "unit": which unit the number is in, where the line does not say it in a known word. */
export function unitQuestion(line: string, answer: string | undefined): Question | MassUnit {
  if (answer !== undefined && isMassUnit(answer)) return answer;
  return {
    id: "unit",
    asks: `The line "${line}" names no unit that is known here. Which unit does the display of the balance show?`,
    options: massUnits.map((unit) => ({ value: unit, says: unit })),
    ...(answer === undefined ? {} : { refused: `"${answer}" is none of ${massUnits.join(", ")}.` }),
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
  return {
    id: "which-number",
    asks: `In "${line}" more than one number follows the weight. Which one is to be read?`,
    options: numbers.map(({ ordinal, shown }) => ({ value: String(ordinal), says: shown })),
    ...(answer === undefined ? {} : { refused: `"${answer}" is none of the numbers.` }),
  };
}
