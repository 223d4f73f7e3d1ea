import type { MassUnit } from "../../calibration/units.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import { firstMethod, type MethodName, type Role } from "../methods/index.ts";
import { type Details, noDetails } from "./details.ts";

/** One line of the balance as it came: the original observation. */
export interface LineNote {
  at: string;
  monotonicMs: number;
  raw: string;
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
  setAside?: { at: string; reason: string };
}

/** Another test of the piece, such as a magnet, as its entry tells it. */
export interface Test {
  entry: EntryOf<"evidence">;
  setAside?: string;
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
export interface Piece extends Ticket {
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
  photosAside: readonly { entry: EntryOf<"photo">; at: string; reason: string }[];
  /** where its dry mass was not the announced one: why it is the right piece all the same */
  rightPiece: readonly EntryOf<"right-piece">[];
  /** what second persons read of its typed readings, oldest first */
  secondReadings: readonly EntryOf<"second-reading">[];
  /** what is particular to this weighing, as stated last */
  details: Details;
  /** how often that was stated */
  detailsStated: number;
  /** the water temperature stated last, decimal text in °C */
  waterCelsius?: string;
  closed?: { at: string; how: "recorded" | "set-aside"; entry: string };
}

/**
 * The piece after one more entry of its ledger; the state of the bench is nothing but this, folded over the entries,
 * so that a restart finds the operator at the very step the ledger knows. Entries about something else change nothing.
 */
export function after(piece: Piece | undefined, entry: Entry): Piece | undefined {
  if (entry.kind === "piece-opened") {
    const { ticket, description, method = firstMethod, claim, lot, rule, customer, operator } = entry.body;
    const { condition, customerSupplied } = entry.body;
    const opened = {
      id: entry.subject,
      openedAt: entry.at,
      ticket,
      description,
      method,
      captures: [],
      tests: [],
      photos: [],
      photosAside: [],
      rightPiece: [],
      secondReadings: [],
      details: noDetails,
      detailsStated: 0,
      ...(lot === undefined ? {} : { lot }),
      ...(rule === undefined ? {} : { agreed: rule }),
      ...(customer === undefined ? {} : { customer }),
      ...(condition === undefined ? {} : { condition }),
      ...(operator === undefined ? {} : { operator }),
      ...(customerSupplied === undefined ? {} : { customerSupplied }),
    };
    return claim === null ? opened : { ...opened, claim };
  }
  if (piece === undefined || piece.id !== entry.subject) return piece;
  switch (entry.kind) {
    case "capture":
      return withCapture(piece, entry);
    case "voiding":
      return {
        ...piece,
        captures: piece.captures.map((capture) =>
          capture.id === entry.body.entry
            ? { ...capture, setAside: { at: entry.at, reason: entry.body.reason } }
            : capture,
        ),
        tests: piece.tests.map((test) =>
          test.entry.id === entry.body.entry ? { ...test, setAside: entry.body.reason } : test,
        ),
        photos: piece.photos.filter(({ id }) => id !== entry.body.entry),
        photosAside: [
          ...piece.photosAside,
          ...piece.photos
            .filter(({ id }) => id === entry.body.entry)
            .map((photo) => ({ entry: photo, at: entry.at, reason: entry.body.reason })),
        ],
      };
    case "weighing-details":
      // what the form of the method states stays until that form states it anew
      return {
        ...piece,
        details: { ...(piece.details.method && { method: piece.details.method }), ...entry.body },
        detailsStated: piece.detailsStated + 1,
      };
    case "evidence":
      return { ...piece, tests: [...piece.tests, { entry }] };
    case "photo":
      return { ...piece, photos: [...piece.photos, entry] };
    case "right-piece":
      return { ...piece, rightPiece: [...piece.rightPiece, entry] };
    case "second-reading":
      return { ...piece, secondReadings: [...piece.secondReadings, entry] };
    case "result":
      return { ...piece, closed: { at: entry.at, how: "recorded", entry: entry.id } };
    case "piece-left":
      return { ...piece, closed: { at: entry.at, how: "set-aside", entry: entry.id } };
    default:
      return piece;
  }
}

function withCapture(piece: Piece, entry: Extract<Entry, { kind: "capture" }>): Piece {
  const { body } = entry;
  if (body.what === "temperature") return { ...piece, waterCelsius: body.celsius };
  if (!("reading" in body)) return piece;
  const { text, unit, grams } = body.reading;
  const takenBy = waysTaken.find((way) => way === body.settled?.by) ?? "typed";
  const capture: Capture = {
    id: entry.id,
    at: entry.at,
    role: body.what,
    text,
    unit: unit as MassUnit,
    grams,
    takenBy,
    balance: body.balance ?? "typed",
    lines: body.lines,
    ...(body.unmoved ? { unmoved: true } : {}),
  };
  return { ...piece, captures: [...piece.captures, capture] };
}

/** Readings of one role that still count, oldest first. */
export function standing(piece: Piece, role: Role): Capture[] {
  return piece.captures.filter((capture) => capture.role === role && capture.setAside === undefined);
}
