import type { About, FieldProblem } from "../forms.tsx";
import type { Sentence } from "../sentence.tsx";

/** The forms of the page, by the end of their addresses. */
export type SettlementForm = "payout" | "terms" | "decisions" | "trust" | "reopening";

export const metalsPaid = ["gold", "silver", "platinum", "palladium"] as const;
export const trustSources = ["laboratory", "melt", "density", "stamp", "customer"] as const;

/** One line of the settlement; low and high follow the interval of the fine mass. */
export interface SettlementRow {
  what: string;
  net: string;
  fineness: string;
  /** what the fineness rests on, in words, with who said it and why */
  restsOn: string;
  /** fine metal, low to high, in g and in the unit of the price */
  fine: string;
  payLow: string;
  payHigh: string;
}

/** A piece, or one of its metals, that nothing is paid for. */
export interface LeftOutRow {
  id: string;
  ticket: string;
  mass: string;
  why: string;
}

/** Everything that is settled, in words. */
export interface SettlementSheet {
  /** fine mass and price of each metal, the first that is read */
  sums: readonly (readonly [name: string, value: string])[];
  /** prices and terms that count */
  facts: readonly (readonly [name: string, value: string])[];
  rows: readonly SettlementRow[];
  /** the fee of each metal, where one is taken off */
  fees: readonly { what: string; amount: string }[];
  totalLow: string;
  totalHigh: string;
  /** the sum to be paid, and by which figure of the interval */
  paid: string;
  paysBy: string;
  /** why its fine metal is another than that of the lot, one sentence a metal */
  against: readonly string[];
  leftOut: readonly LeftOutRow[];
}

/** A settlement as it was frozen when the lot was closed. */
export interface ClosedSettlement {
  version: number;
  when: string;
  by: string;
  /** why it was opened again afterwards, by whom and with whom */
  reopened: string;
  sheet?: SettlementSheet;
  /** printed papers: language, address, SHA-256 */
  prints: readonly { language: string; href: string; sha256: string }[];
}

/** What a change would come to before it is written. */
export interface PreviewView {
  rows: readonly { what: string; before: string; after: string }[];
}

/** The page of one settlement. */
export interface SettlementView {
  lotId: string;
  lotName: string;
  isClosed: boolean;
  /** of the place; empty where none is stated */
  currency: string;
  /** who is believed before whom, and what is paid of an interval, as it is agreed now */
  trust: {
    order: readonly (typeof trustSources)[number][];
    pays: "low" | "expected" | "high";
    narrowed: boolean;
  };
  /** what there is now; left out until a price is promised */
  sheet?: SettlementSheet;
  closed: readonly ClosedSettlement[];
  /** earlier prices of the lot, newest first, each in one sentence */
  priceVersions: readonly string[];
  /** every word on a piece, newest first, each in one sentence */
  said: readonly string[];
  /** the melts that the lot went into, and whether they tell what it holds */
  meltedIn: readonly { href: string; name: string; message: Sentence }[];
  /** what this house's melts say of the lot, one sentence or more each; empty while they say nothing */
  melts: readonly string[];
  preview?: PreviewView;
  /** the form that was sent back, with its entries as typed */
  sent: SettlementForm | undefined;
  values: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
  /** what the lot is asked before it is closed */
  questions: readonly Sentence[];
  /** languages that papers are printed in, by their own name */
  languages: readonly { id: string; name: string }[];
  csrfToken: string;
  about: About;
}
