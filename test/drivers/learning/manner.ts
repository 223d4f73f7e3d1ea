/** What a balance of paper would say at one moment. */
export interface Moment {
  /** net weight in steps of the last decimal; what its display shows */
  net: number;
  /** what lies on the pan, and what was tared, in steps */
  gross: number;
  tare: number;
  /** the balance calls itself at rest */
  still: boolean;
  /** counts the readings */
  count: number;
  /** seconds since it was switched on */
  seconds: number;
  /** the owner has been asked to put on, to touch or to take off */
  busy: boolean;
}

/** One invented manner of writing what a display shows. */
export interface Manner {
  name: string;
  kind: string;
  /** unit and decimals of the display */
  unit: string;
  decimals: number;
  /** bytes of one reading, as they leave the balance */
  message(moment: Moment): Uint8Array;
  /** the display, where it is not the net steps with the decimals */
  shows?(steps: number): { text: string; unit: string };
  /** how the reading is compared, where the display is not a decimal number */
  reads?(steps: number): { text: string; unit: string };
  /** whether the line tells rest from motion */
  tells: boolean;
  /** a weight that shows what is to be learned, in steps; a usual one when left out */
  load?: number;
  /** codes of true reasons to refuse, for a manner that no one could read */
  refused?: readonly string[];
  /** what it hides shows itself below zero only: nobody can miss it who never typed such a value */
  hidesAboveZero?: boolean;
  /** what the owner looks for among the answers, by the id of the question */
  answers?: Record<string, RegExp>;
  /** readings a second; several when left out */
  pace?: number;
}

export const ascii = (text: string) => Uint8Array.from(Buffer.from(text, "latin1"));

/** Steps as decimal digits with a mark: 311035 with 4 decimals is "31.1035". Sign left out. */
export function digits(steps: number, decimals: number, mark = "."): string {
  const size = String(Math.abs(steps)).padStart(decimals + 1, "0");
  return decimals === 0 ? size : `${size.slice(0, -decimals)}${mark}${size.slice(-decimals)}`;
}

/** The same with its minus in front. */
export const plain = (steps: number, decimals: number) => `${steps < 0 ? "-" : ""}${digits(steps, decimals)}`;

export type Line = (moment: Moment) => string;

interface Told {
  unit?: string;
  decimals?: number;
  end?: string;
  tells?: boolean;
}

/** A manner that writes one line of text a reading. */
export function text(kind: string, name: string, told: Told & Partial<Manner>, line: Line): Manner {
  const { unit = "g", decimals = 4, end = "\r\n", tells = false, ...more } = told;
  return { kind, name, unit, decimals, tells, message: (moment) => ascii(line(moment) + end), ...more };
}

export const minus = (steps: number, yes = "-", no = "") => (steps < 0 ? yes : no);
