import type { ComponentChildren } from "preact";
import type { Code, Message } from "../../calibration/message.ts";
import type { OtherItemView, SecondPersonView } from "../bench/view.ts";
import type { About } from "../forms.tsx";
import type { Role } from "../methods/view.ts";
import type { Band } from "../plots/bands.tsx";
import type { LotDot } from "../plots/lot-dots.tsx";
import type { StoppedRecord } from "../records/answer.tsx";
import type { StateName } from "../result.tsx";
import type { Sentence } from "../sentence.tsx";

/** Value of a claim list that says: nothing is claimed. Where nothing is chosen, it is asked. */
export const nothingClaimed = "none";

/** Pieces that go onto one tray, by what was found. */
export interface Tray {
  state: StateName;
  pieces: number;
  /** "412.36 g" */
  mass: string;
  /** the last few tickets put there, newest first */
  tickets: readonly string[];
}

/** A flag in words; cleared is not deleted. */
export interface FlagView {
  name: string;
  reason?: string;
  cleared?: string;
}

export interface LotItemRow {
  recordId?: string;
  ticket: string;
  claimName: string;
  dry: string;
  density?: string;
  state?: StateName;
  fine?: string;
  flags: readonly FlagView[];
  voided?: boolean;
}

export interface LotTotals {
  pieces: string;
  sum: string;
  gross?: string;
  /** in words: agrees within …, or how far off and what that suggests */
  against?: string;
  /** "low to high" with unit and metal, one each; "none yet" before the first */
  fine: readonly string[];
}

/** A reading that has the words of a step: `step.ROLE.title`. */
export type StepRole = Extract<
  { [Known in Code]: Known extends `step.${infer Name}.title` ? Name : never }[Code],
  Role
>;

/** What is due: the water once, then for every piece its ticket and its two weighings; "elsewhere" while another piece is on the bench. */
export type LotStep =
  | { ticket: string; step: "water" | "ticket" | "second-person" | "other-piece" | "elsewhere" | "closed" }
  | { ticket: string; step: "reading"; role: StepRole };

export interface LotView {
  id: string;
  name: string;
  /** how far it is, and what its pieces are claimed as, in one line */
  note: string;
  /** the piece recorded last, until the next one is weighed dry */
  last?: { ticket: string; claimName: string; state: StateName };
  /** every piece with a density, oldest first, and the bands of what they are claimed as */
  dots: readonly LotDot[];
  bands: readonly Band[];
  /** the piece on the bench */
  current: LotStep;
  /** set while it must be said whether the piece on the pan is the ticket's */
  otherItem?: OtherItemView;
  /** a second person who reads typed readings again, while the record of the piece waits for it */
  secondPerson?: SecondPersonView;
  /** every counted piece is weighed: one more is asked about */
  full?: { counted: number };
  /** the ticket that Enter on an empty field takes: the next of the list, or the number after the last */
  nextTicket?: string;
  /** tickets of the list that have not come yet: how many, and the first few */
  waiting?: { count: number; tickets: string };
  /** live reading, drawn by the bench; left out when readings are typed */
  live?: ComponentChildren;
  /** each load at rest is taken by itself, ticket after ticket */
  handsFree: boolean;
  /** water temperature in °C that counts now; empty until it was typed */
  water: string;
  units: readonly string[];
  /** the unit of the last reading, offered first for the next */
  unit: string;
  /** why the last entry was not taken, with what was typed */
  problem?: {
    message: Sentence;
    field?: string | undefined;
    /** address of the form it was typed into */
    from?: string;
    typed: Readonly<Record<string, string>>;
  };
  claims: readonly { id: string; name: string }[];
  claim: string;
  trays: readonly Tray[];
  totals: LotTotals;
  /** to look at: same mass twice, sum against gross, swapped, water inside */
  checks: readonly { message: Message; remedy: Message; tickets: readonly string[] }[];
  /** the newest few */
  items: readonly LotItemRow[];
  /** how many more there are */
  more?: number;
  /** records that a check stops: they count for nothing until they are answered */
  stopped: readonly StoppedRecord[];
  /** what the pieces of the lot are claimed as, each once */
  claimsHere: readonly { id: string; name: string }[];
  /** flags the bench knows, by their name in the ledger and in words */
  flagNames: readonly { id: string; name: string }[];
  /** what is asked before the lot is closed, each with the code that its answer goes by */
  closingAsks: readonly Message[];
  /** the sum to be paid as it stands: "448.92 EUR"; left out while no price is promised */
  pays?: string;
  /** the totals written at closing */
  closed?: { when: string; facts: readonly (readonly [name: string, value: string])[] };
  csrfToken: string;
  /** the weighing that goes on in it, or the one that is started next */
  about: About;
  /** how many entries about the lot the page shows */
  version: number;
}
