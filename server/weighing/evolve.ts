import type { MassUnit } from "../../calibration/units.ts";
import { present } from "../compute/present.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";
import { firstMethod } from "../methods/index.ts";
import { begun, type Capture, type Piece, waysTaken } from "./piece.ts";

/** The weighing that the entries about one subject tell, oldest first; undefined while none of them starts one. */
export function weighingOf(entries: readonly Entry[]): Piece | undefined {
  return entries.reduce<Piece | undefined>(evolve, undefined);
}

/**
 * The weighing after one more entry. The state of the bench is nothing but this, folded over the entries, so that a
 * restart finds the operator at the very step the ledger knows. Entries about something else change nothing.
 */
export function evolve(piece: Piece | undefined, entry: Entry): Piece | undefined {
  if (entry.kind === "piece-opened") return started(entry);
  if (piece === undefined || piece.id !== entry.subject) return piece;
  switch (entry.kind) {
    case "capture":
      return withCapture(piece, entry);
    case "voiding":
      return withVoiding(piece, entry);
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
    case "laboratory-assay":
      return { ...piece, assays: [...piece.assays, entry.id] };
    case "right-piece":
      return { ...piece, rightPiece: [...piece.rightPiece, entry] };
    case "second-reading":
      return { ...piece, secondReadings: [...piece.secondReadings, entry] };
    case "check-answered":
      return { ...piece, answers: [...piece.answers, entry] };
    case "result":
      return {
        ...piece,
        closed: { at: entry.at, how: "recorded", entry: entry.id },
        statements: [...piece.statements, entry.id],
        stops: entry.body.stops ?? [],
      };
    case "amendment": {
      const { result } = entry.body;
      if (!result) return piece;
      return { ...piece, statements: [...piece.statements, entry.id], stops: result.stops ?? [] };
    }
    case "piece-left":
      return { ...piece, closed: { at: entry.at, how: "called-off", entry: entry.id } };
    default:
      return piece;
  }
}

function started({ subject, at, body }: EntryOf<"piece-opened">): Piece {
  const { ticket, description, method = firstMethod, claim, rule: agreed } = body;
  const { lot, customer, operator, condition, customerSupplied } = body;
  const told = { lot, agreed, customer, condition, operator, customerSupplied };
  return begun({
    ...{ id: subject, openedAt: at, ticket, description, method },
    ...(claim === null ? {} : { claim }),
    ...present(told),
  });
}

/** Whatever the entry names no longer counts: a reading, a test, a photo, an assay, or the record itself, for good. */
function withVoiding(piece: Piece, { at, body }: EntryOf<"voiding">): Piece {
  const { entry, reason, by } = body;
  const setAside = { at, reason };
  const photo = piece.photos.find(({ id }) => id === entry);
  return {
    ...piece,
    ...(piece.statements.includes(entry) && piece.voided === undefined
      ? { voided: { ...setAside, ...(by === undefined ? {} : { by }) } }
      : {}),
    ...(piece.captures.some(({ id }) => id === entry) ? withoutAnswers(piece) : {}),
    captures: piece.captures.map((one) => (one.id === entry ? { ...one, setAside } : one)),
    tests: piece.tests.map((test) => (test.entry.id === entry ? { ...test, setAside: reason } : test)),
    assays: piece.assays.filter((id) => id !== entry),
    photos: piece.photos.filter(({ id }) => id !== entry),
    photosAside: photo ? [...piece.photosAside, { entry: photo, ...setAside }] : piece.photosAside,
  };
}

function withCapture(piece: Piece, { id, at, body }: EntryOf<"capture">): Piece {
  if (body.what === "temperature") return { ...piece, waterCelsius: body.celsius };
  if (!("reading" in body)) return piece;
  const { text, unit, grams } = body.reading;
  const capture: Capture = {
    id,
    at,
    role: body.what,
    text,
    unit: unit as MassUnit,
    grams,
    takenBy: waysTaken.find((way) => way === body.settled?.by) ?? "typed",
    balance: body.balance ?? "typed",
    lines: body.lines,
    ...(body.unmoved ? { unmoved: true } : {}),
  };
  return { ...piece, captures: [...piece.captures, capture], ...withoutAnswers(piece) };
}

/** Other readings ask anew: what was found about the ones before settles nothing for them. */
function withoutAnswers({ closed, answers }: Piece): Pick<Piece, "answers"> {
  return { answers: closed ? answers : [] };
}
