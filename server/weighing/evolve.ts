import { omitUndefined } from "../compute/omit-undefined.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";
import { firstMethod } from "../methods/index.ts";
import { begun, type Capture, type Item, waysTaken } from "./item.ts";
import { withWatched } from "./watched.ts";

/** The weighing that the entries about one subject tell, oldest first; undefined while none of them starts one. */
export function weighingOf(entries: readonly Entry[]): Item | undefined {
  return entries.reduce<Item | undefined>(evolve, undefined);
}

/**
 * The weighing after one more entry. The state of the bench is nothing but this, folded over the entries, so that a
 * restart finds the operator at the very step the ledger knows. Entries about something else change nothing.
 */
export function evolve(item: Item | undefined, entry: Entry): Item | undefined {
  if (entry.kind === "piece-opened") return started(entry);
  if (item === undefined || item.id !== entry.subject) return item;
  switch (entry.kind) {
    case "capture":
      return withCapture(item, entry);
    case "voiding":
      return withVoiding(item, entry);
    case "weighing-details":
      // what the form of the method states stays until that form states it anew
      return {
        ...item,
        details: { ...(item.details.method && { method: item.details.method }), ...entry.body },
        detailsStated: item.detailsStated + 1,
      };
    case "evidence":
      return { ...item, tests: [...item.tests, { entry }] };
    case "photo":
      return { ...item, photos: [...item.photos, entry] };
    case "laboratory-assay":
      return { ...item, assays: [...item.assays, entry.id] };
    case "right-piece":
      return { ...item, rightPiece: [...item.rightPiece, entry] };
    case "second-reading":
      return { ...item, secondReadings: [...item.secondReadings, entry] };
    case "check-answered":
      return { ...item, answers: [...item.answers, entry] };
    case "result":
      return {
        ...withWatched(item, entry.body.watched ?? []),
        closed: { at: entry.at, how: "recorded", entry: entry.id },
        statements: [...item.statements, entry.id],
        stops: entry.body.stops ?? [],
      };
    case "amendment": {
      const { result } = entry.body;
      if (!result) return item;
      return { ...item, statements: [...item.statements, entry.id], stops: result.stops ?? [] };
    }
    case "piece-left":
      return { ...item, closed: { at: entry.at, how: "called-off", entry: entry.id } };
    default:
      return item;
  }
}

function started({ subject, at, body }: EntryOf<"piece-opened">): Item {
  const { ticket, description, method = firstMethod, claim, rule: agreed } = body;
  const { lot, customer, operator, condition, customerSupplied } = body;
  const stated = { lot, agreed, customer, condition, operator, customerSupplied };
  return begun({
    ...{ id: subject, openedAt: at, ticket, description, method },
    ...(claim === null ? {} : { claim }),
    ...omitUndefined(stated),
  });
}

/** Whatever the entry names no longer counts: a reading, a test, a photo, an assay, or the record itself, for good. */
function withVoiding(item: Item, { at, body }: EntryOf<"voiding">): Item {
  const { entry, reason, by } = body;
  const excluded = { at, reason };
  const photo = item.photos.find(({ id }) => id === entry);
  return {
    ...item,
    ...(item.statements.includes(entry) && item.voided === undefined
      ? { voided: { ...excluded, ...(by === undefined ? {} : { by }) } }
      : {}),
    ...(item.captures.some(({ id }) => id === entry) ? withoutAnswers(item) : {}),
    captures: item.captures.map((one) => (one.id === entry ? { ...one, excluded } : one)),
    tests: item.tests.map((test) => (test.entry.id === entry ? { ...test, excluded: reason } : test)),
    assays: item.assays.filter((id) => id !== entry),
    photos: item.photos.filter(({ id }) => id !== entry),
    excludedPhotos: photo ? [...item.excludedPhotos, { entry: photo, ...excluded }] : item.excludedPhotos,
  };
}

function withCapture(item: Item, { id, at, body }: EntryOf<"capture">): Item {
  if (body.what === "temperature") return { ...item, waterCelsius: body.celsius };
  if (!("reading" in body)) return item;
  const { text, unit, grams } = body.reading;
  const capture: Capture = {
    id,
    at,
    role: body.what,
    text,
    unit: unit,
    grams,
    takenBy: waysTaken.find((way) => way === body.settled?.by) ?? "typed",
    balance: body.balance ?? "typed",
    lines: body.lines,
    ...(body.unmoved ? { unmoved: true } : {}),
    ...(body.at_rest ? { atRest: body.at_rest } : {}),
    ...(body.sensed ? { sensed: body.sensed } : {}),
    ...(body.silent ? { silent: body.silent } : {}),
  };
  return { ...item, captures: [...item.captures, capture], ...withoutAnswers(item) };
}

/** Other readings ask anew: what was found about the ones before settles nothing for them. */
function withoutAnswers({ closed, answers }: Item): Pick<Item, "answers"> {
  return { answers: closed ? answers : [] };
}
