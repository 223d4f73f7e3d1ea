import { mean } from "../../calibration/mean.ts";
import type { Reason } from "../../calibration/message.ts";
import type { MassUnit } from "../../calibration/units.ts";
import type { EntryOf } from "../ledger/entry.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { MethodName, Role } from "../methods/index.ts";
import { type Details, noDetails } from "./details.ts";
import type { Sensed } from "./sensor-value.ts";

/** One line of the balance as it came: the original observation. */
export interface LineNote {
  at: string;
  monotonicMs: number;
  raw: string;
}

/** Where the display was going when a reading was taken, in g, and how well that was known. */
export interface AtRest {
  grams: number;
  /** standard uncertainty of this reading alone, and of that what might still have come */
  u_g: number;
  drift_u_g: number;
  /** the most that a creep may have brought which nothing excluded */
  possible_g?: number | undefined;
  /** "creep", "creep-possible", "stepped", "denied" */
  flags: readonly string[];
}

/** How a reading came to be taken. */
export const waysTaken = ["mark", "own-criterion", "by-hand", "typed"] as const;
export type TakenBy = (typeof waysTaken)[number];

/** A reading kept for a piece. Set aside is not deleted: it stays with its reason. */
export interface Capture {
  /** id of its entry in the ledger */
  id: string;
  at: string;
  role: Role;
  /** decimal text as shown by the balance or typed */
  text: string;
  unit: MassUnit;
  /** the same in g, exact decimal text */
  grams: string;
  takenBy: TakenBy;
  balance: string;
  lines: readonly LineNote[];
  /** the display showed no other line since the capture before */
  unmoved?: true;
  atRest?: AtRest;
  /** the load was watched after the take until a creep was excluded */
  watched?: true;
  /** what the sensors beside the balance showed with it */
  sensed?: readonly Sensed[];
  /** sensors that were silent when it was taken */
  silent?: readonly string[];
  excluded?: { at: string; reason: Reason };
}

/** Another test of the piece, such as a magnet, as its entry tells it. */
export interface Test {
  entry: EntryOf<"evidence">;
  excluded?: Reason;
}

/** What is asked about a piece before it is weighed; the claim is the customer's word, not a finding. */
export interface Ticket {
  ticket: string;
  description: string;
  method: MethodName;
  claim?: string;
  /** id of the lot it belongs to */
  lot?: string;
  /** who brought it, as a ticket or a name */
  customer?: string;
  /** in what state it arrived */
  condition?: string;
  operator?: string;
  /** what the customer says of it; reported as theirs */
  customerSupplied?: NonNullable<BodyOf<"piece-opened">["customerSupplied"]>;
}

/** What was agreed for a piece before its first reading; decimal text. */
export type Agreed = NonNullable<BodyOf<"piece-opened">["rule"]>;

/** The piece on the bench, as the ledger tells it. */
export interface Item extends Ticket {
  id: string;
  openedAt: string;
  /** undefined for pieces opened before a rule was kept with them */
  agreed?: Agreed;
  captures: readonly Capture[];
  /** other tests than the weighing, oldest first; set aside is not deleted */
  tests: readonly Test[];
  /** pictures of the piece, oldest first */
  photos: readonly EntryOf<"photo">[];
  /** pictures set aside with their reason; not deleted */
  excludedPhotos: readonly { entry: EntryOf<"photo">; at: string; reason: Reason }[];
  /** entries of the laboratory results that count */
  assays: readonly string[];
  /** where its dry mass was not the announced one: why it is the right piece all the same */
  rightPiece: readonly EntryOf<"right-piece">[];
  /** what second persons read of its typed readings, oldest first */
  secondReadings: readonly EntryOf<"second-reading">[];
  /** what was found where a check stopped the record, since the readings last changed */
  answers: readonly EntryOf<"check-answered">[];
  /** entries that state its result: the record, and each amendment of it */
  statements: readonly string[];
  /** checks that stop what is stated now, with their questions */
  stops: NonNullable<BodyOf<"result">["stops"]>;
  /** what is particular to this weighing, as stated last */
  details: Details;
  /** how often that was stated */
  detailsStated: number;
  /** the water temperature stated last, decimal text in °C */
  waterCelsius?: string;
  closed?: { at: string; how: "recorded" | "called-off"; entry: string };
  /** the record was declared void, for good */
  voided?: { at: string; reason: Reason; by?: string };
}

/** A weighing that was just started. */
export function begun(item: Ticket & Pick<Item, "id" | "openedAt" | "agreed">): Item {
  return {
    ...item,
    captures: [],
    tests: [],
    photos: [],
    excludedPhotos: [],
    assays: [],
    rightPiece: [],
    secondReadings: [],
    answers: [],
    statements: [],
    stops: [],
    details: noDetails,
    detailsStated: 0,
  };
}

/** A weighing with its record. */
export type Recorded = Item & { closed: NonNullable<Item["closed"]> };

/** Mean of readings, g; NaN of none. */
export const meanGrams = (readings: readonly { grams: string }[]): number =>
  mean(readings.map(({ grams }) => Number(grams)));

/** Readings of one role that still count, oldest first. */
export function standing(item: Item, role: Role): Capture[] {
  return item.captures.filter((capture) => capture.role === role && capture.excluded === undefined);
}
