import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { isFull } from "../../lots/full.ts";
import type { Lot } from "../../lots/lot.ts";
import type { LotItem } from "../../lots/lot-item.ts";
import { ticketsNamed } from "../../lots/tickets-named.ts";
import type { Role } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import type { Reading } from "../../weighing/taken-reading.ts";
import { aboutIn, lotSeenOf } from "../about.ts";
import { rightPieceForm, roleEntry, waterForm } from "../bench/bench-forms.ts";
import { weighTicketAgain } from "../bench/ticket-again.ts";
import { type Entries, type Form, formIn } from "../forms/form.ts";
import { answerForm } from "../records/amendment-form.ts";
import { type LotRunParts, recordWhenComplete, ticketOf } from "./lot-run.ts";
import { hasNotMoved, isAskedTwice } from "./second-press.ts";

/** A form of a lot's page, and what the lot is when it comes. */
export interface LotFormSent {
  lot: Lot;
  items: readonly LotItem[];
  request: FastifyRequest;
}

type LotForm = (sent: LotFormSent) => Promise<unknown>;

const handsFreeForm = ({ box }: Entries) => z.object({ end: box() });

const flagForm = ({ typed, choice }: Entries) =>
  z
    .object({
      flagTicket: typed(),
      flag: typed(),
      own: typed(),
      action: choice(["set", "clear"], { first: "set" }),
      reason: typed(),
      by: typed(),
    })
    .transform(({ flag, own, action, ...of }) => ({ ...of, flag: own || flag, set: action === "set" }));

/** What is found where the lot does not add up, by the name of its question, and who closes it. */
const closingForm = ({ typed, ifSent, named }: Entries) =>
  z.intersection(
    z.object({ note: typed(), by: typed(), shown: ifSent() }),
    named("answer-").transform((answers) => ({ answers })),
  );

/** What each form of a lot's page asks for, by the end of its address. */
export function lotForms(parts: LotRunParts): Record<string, LotForm> {
  const { bench, ledger } = parts;
  const { station } = bench;
  return {
    pieces: (sent) => goOn(parts, sent),
    "hands-free": ({ lot, request }) => {
      const { end } = formIn(request, handsFreeForm);
      return station.do({
        do: end ? "end-auto-capture" : "auto-capture",
        ...aboutIn(request),
        lot: lot.id,
      });
    },
    "right-piece": ({ request }) =>
      station.do({ do: "confirm-item", ...aboutIn(request), ...formIn(request, rightPieceForm) }),
    "other-piece": ({ request }) => weighTicketAgain(bench, ledger, aboutIn(request)),
    flags: ({ lot, items, request }) => {
      const { flagTicket, ...flag } = formIn(request, flagForm);
      const item = itemOf(items, flagTicket, "flagTicket").id;
      return station.do({ do: "flag-item", ...lotSeenOf(lot.id, request), item, ...flag });
    },
    answers: ({ request }) =>
      station.do({ do: "answer-check", ...aboutIn(request), ...formIn(request, answerForm) }),
    again: (sent) => weighAgain(parts, sent),
    fineness: (sent) => stateFineness(station, sent),
    closing: ({ lot, request }) => {
      const { shown, ...closed } = formIn(request, closingForm);
      const of = shown === undefined ? {} : { shown };
      return station.do({ do: "close-lot", ...lotSeenOf(lot.id, request), ...closed, ...of });
    },
  };
}

/** The piece of the lot with this ticket; the newest when a voided one has the same. */
function itemOf(items: readonly LotItem[], ticket: string, field: string): LotItem {
  const found = items.findLast((item) => item.ticket === ticket);
  if (found) return found;
  throw new Refusal("lot.ticket-unknown", { ticket }, field);
}

/** What the form of the next step may hold; which entries are there tells the step. */
const nextForm = ({ ifSent, typed, box }: Entries) =>
  z.object({
    celsius: ifSent(),
    ticket: ifSent(),
    typed: ifSent(),
    take: ifSent(),
    aside: box(),
    subject: typed(),
  });

const ticketForm = ({ typed, box }: Entries) =>
  z
    .object({ ticket: typed(), nextTicket: typed(), claim: typed(), beyond: box() })
    .transform(({ ticket, nextTicket, ...of }) => ({ ...of, ticket: ticket || nextTicket }));

const typedForm: Form<{ typed: TypedMass; role: Role }> = (entry, { unit = "g" }) =>
  z.object({ typed: entry.reading(unit), role: roleEntry(entry) });

/** The next step of the lot: the water, a ticket, a weighing, or the piece called off. A complete piece is recorded. */
async function goOn(parts: LotRunParts, { lot, items, request }: LotFormSent): Promise<void> {
  const { station, open } = parts.bench;
  const { celsius, ticket, typed, take, aside, subject } = formIn(request, nextForm);
  if (celsius !== undefined) {
    await station.do({ do: "state-water", ...lotSeenOf(lot.id, request), ...formIn(request, waterForm) });
  } else if (ticket !== undefined) {
    const { beyond, ...asked } = formIn(request, ticketForm);
    if (isFull(lot, items) && !beyond) throw new Refusal("lot.full", { counted: lot.count! }, "ticket");
    const started = await ticketOf(parts, lot, asked);
    await station.do({ do: "start-weighing", ...aboutIn(request), ticket: started });
  } else if (open && open.id === subject && open.lot !== lot.id) {
    throw new Refusal("lot.item-elsewhere", { ticket: open.ticket });
  } else if (aside) {
    const reason = message("lot.put-aside", { lot: lot.name });
    await station.do({ do: "call-off", ...aboutIn(request), reason });
  } else if (typed !== undefined) {
    const { role, typed: mass } = formIn(request, typedForm);
    await station.do({ do: "take-reading", ...aboutIn(request), role, reading: byHand(mass) });
  } else if (take !== undefined) await taken(parts.bench, request);
  await recordWhenComplete(parts.bench, lot.id);
}

/** A fineness that somebody states for several pieces at once: each gets its own terms, all or none. */
async function stateFineness(station: Bench["station"], { lot, items, request }: LotFormSent) {
  const { finenessTickets, ofClaim } = formIn(request, piecesForm);
  const named = ticketsNamed(finenessTickets, items, "finenessTickets");
  const claimed = items.filter(({ voided, claim }) => !voided && claim !== null && claim === ofClaim);
  const pieces = [...new Set([...named, ...claimed])];
  if (pieces.length === 0) throw new Refusal("lot.tickets-missing", {}, "finenessTickets");
  const {
    permille,
    saidBy,
    saidByName: by,
    saidSecond: second,
    saidReason: reason,
  } = formIn(request, finenessForm);
  const terms = pieces.map(({ id: piece }) => ({
    piece,
    fineness: { permille, saidBy },
    ...(by === undefined ? {} : { by }),
    ...(second === undefined ? {} : { second }),
    ...(reason === undefined ? {} : { reason }),
  }));
  await station.do({ do: "state-terms", ...lotSeenOf(lot.id, request), terms });
}

const piecesForm = ({ typed }: Entries) => z.object({ finenessTickets: typed(), ofClaim: typed() });

const finenessForm = ({ decimal, choice, maybeText }: Entries) =>
  z.object({
    permille: decimal({ from: 1, to: 1000, unit: "‰" }),
    saidBy: choice(["stamp", "laboratory", "customer"], { first: "stamp" }),
    saidByName: maybeText({ most: 100 }),
    saidSecond: maybeText({ most: 100 }),
    saidReason: maybeText({ most: 400 }),
  });

const takeForm = (entry: Entries) => z.object({ take: roleEntry(entry) });

/** Asks for a reading and waits until it is there. Throws Refusal when the balance gave none. */
async function taken(bench: Bench, request: FastifyRequest): Promise<void> {
  const { take: role } = formIn(request, takeForm);
  const about = aboutIn(request);
  if (isAskedTwice(bench, about, role)) return;
  if (hasNotMoved(bench, role)) throw new Refusal("lot.load-unmoved", { ticket: bench.item?.ticket ?? "" });
  const before = bench.item?.captures.length ?? 0;
  await bench.station.do({ do: "request-reading", ...about, role });
  await new Promise<void>((resolve) => {
    if (bench.waitingFor === undefined) return resolve();
    const end = bench.onChange(() => {
      if (bench.waitingFor !== undefined) return;
      end();
      resolve();
    });
  });
  if ((bench.item?.captures.length ?? 0) > before) return;
  const { error: failed } = bench;
  throw new Refusal(failed?.code ?? "balance.capture.called-off", failed?.params);
}

const againForm = ({ typed, ifSent }: Entries) => z.object({ again: typed(), take: ifSent() });
const againTypedForm: Form<{ againTyped: TypedMass }> = ({ reading }, { unit = "g" }) =>
  z.object({ againTyped: reading(unit) });

/** Keeps the dry mass of a piece that comes back to the pan; it is held against the first one. */
async function weighAgain({ bench }: LotRunParts, { lot, items, request }: LotFormSent): Promise<void> {
  const { again, take } = formIn(request, againForm);
  const item = itemOf(items, again, "again");
  await bench.station.mustBeCurrent(lotSeenOf(lot.id, request));
  const reading =
    take === undefined ? byHand(formIn(request, againTypedForm).againTyped) : await heard(bench);
  await bench.station.do({ do: "weigh-again", subject: item.id, seen: "now", reading });
}

async function heard({ scale, waitingFor }: Bench): Promise<Reading> {
  if (!scale || waitingFor) throw new Refusal("lot.balance-not-free");
  return scale.take().settled;
}

type TypedMass = Pick<Reading, "text" | "unit">;

const byHand = (mass: TypedMass): Reading => ({ ...mass, takenBy: "typed", balance: "typed", lines: [] });
