import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { Refusal } from "../../../calibration/refusal.ts";
import type { DecimalMark } from "../../../calibration/typed-number.ts";
import { isFull } from "../../lots/full.ts";
import type { Lot } from "../../lots/lot.ts";
import type { LotItem } from "../../lots/lot-item.ts";
import { ticketsNamed } from "../../lots/tickets-named.ts";
import { isRole, type Role } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import type { Reading } from "../../weighing/taken-reading.ts";
import { typedReading } from "../../weighing/typed-reading.ts";
import { aboutOf, seenOf } from "../about.ts";
import { rightPieceForm, waterForm } from "../bench/bench-forms.ts";
import { weighTicketAgain } from "../bench/ticket-again.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { ownMark } from "../look.ts";
import { answerForm } from "../records/amendment-form.ts";
import { type LotRunParts, recordWhenComplete, ticketOf } from "./lot-run.ts";
import { hasNotMoved, isAskedTwice } from "./second-press.ts";

type Fields = Record<string, string>;

/** What is known when the form of a lot is read. */
export interface LotFormRead {
  lot: Lot;
  fields: Fields;
  items: readonly LotItem[];
  request: FastifyRequest;
}

type LotForm = (read: LotFormRead) => Promise<unknown>;

/** What each form of a lot's page asks for, by the end of its address. */
export function lotForms(parts: LotRunParts): Record<string, LotForm> {
  const { bench, ledger } = parts;
  const { station } = bench;
  return {
    pieces: (read) => goOn(parts, read),
    "hands-free": ({ lot, fields }) =>
      station.do({
        do: fields.end === "yes" ? "end-auto-capture" : "auto-capture",
        ...aboutOf(fields),
        lot: lot.id,
      }),
    "right-piece": ({ fields, request }) =>
      station.do({ do: "confirm-item", ...aboutOf(fields), ...formIn(request, rightPieceForm) }),
    "other-piece": ({ fields }) => weighTicketAgain(bench, ledger, aboutOf(fields)),
    flags: ({ lot, fields, items }) => {
      const { flagTicket = "", flag = "", own = "", action = "set", reason = "", by = "" } = fields;
      const item = itemOf(items, flagTicket, "flagTicket").id;
      const named = { item, flag: own.trim() || flag, set: action !== "clear", reason, by };
      return station.do({ do: "flag-item", ...lotSeen(lot, fields), ...named });
    },
    answers: ({ fields, request }) =>
      station.do({ do: "answer-check", ...aboutOf(fields), ...formIn(request, answerForm) }),
    again: (read) => weighAgain(parts, read),
    fineness: (read) => stateFineness(station, read),
    closing: ({ lot, fields: { note = "", by = "", shown, ...fields } }) => {
      const answers = Object.fromEntries(
        Object.entries(fields).flatMap(([name, found]) =>
          name.startsWith("answer-") ? [[name.slice("answer-".length), found]] : [],
        ),
      );
      const asked = { answers, note, by, ...(shown === undefined ? {} : { shown }) };
      return station.do({ do: "close-lot", ...lotSeen(lot, fields), ...asked });
    },
  };
}

const lotSeen = ({ id }: Lot, { lotVersion = "" }: Fields) => seenOf(id, { version: lotVersion });

/** The piece of the lot with this ticket; the newest when a voided one has the same. */
function itemOf(items: readonly LotItem[], ticket: string, field: string): LotItem {
  const found = items.findLast((item) => item.ticket === ticket.trim());
  if (found) return found;
  throw new Refusal("lot.ticket-unknown", { ticket: ticket.trim() }, field);
}

/** The next step of the lot: the water, a ticket, a weighing, or the piece called off. A complete piece is recorded. */
async function goOn(parts: LotRunParts, { lot, fields, request, items }: LotFormRead): Promise<void> {
  const { station, open } = parts.bench;
  const { celsius, ticket, typed, unit = "g", role = "", take, aside } = fields;
  if (celsius !== undefined) {
    await station.do({ do: "state-water", ...lotSeen(lot, fields), ...formIn(request, waterForm) });
  } else if (ticket !== undefined) {
    if (isFull(lot, items) && fields.beyond !== "yes")
      throw new Refusal("lot.full", { counted: lot.count! }, "ticket");
    const { claim = "", nextTicket = "" } = fields;
    const asked = { ticket: ticket.trim() || nextTicket, claim };
    await station.do({ do: "start-weighing", ...aboutOf(fields), ticket: await ticketOf(parts, lot, asked) });
  } else if (open && open.id === fields.subject && open.lot !== lot.id) {
    throw new Refusal("lot.item-elsewhere", { ticket: open.ticket });
  } else if (aside === "yes") {
    await station.do({ do: "call-off", ...aboutOf(fields), reason: `put aside while screening ${lot.name}` });
  } else if (typed !== undefined) {
    const reading = typedMass(typed, unit, { mark: ownMark(request), at: "typed" });
    await station.do({ do: "take-reading", ...aboutOf(fields), role: roleOf(role), reading });
  } else if (take !== undefined) await taken(parts.bench, { ...fields, take });
  await recordWhenComplete(parts.bench, lot.id);
}

/** A fineness that somebody states for several pieces at once: each gets its own terms, all or none. */
async function stateFineness(station: Bench["station"], { lot, fields, items, request }: LotFormRead) {
  const named = ticketsNamed(fields.finenessTickets ?? "", items, "finenessTickets");
  const ofClaim = items.filter(({ voided, claim }) => !voided && claim !== null && claim === fields.ofClaim);
  const pieces = [...new Set([...named, ...ofClaim])];
  if (pieces.length === 0) throw new Refusal("lot.tickets-missing", {}, "finenessTickets");
  const { permille, saidBy, saidByName: by, saidReason: reason } = formIn(request, finenessForm);
  const terms = pieces.map(({ id: piece }) => ({
    piece,
    fineness: { permille, saidBy },
    ...(by === undefined ? {} : { by }),
    ...(reason === undefined ? {} : { reason }),
  }));
  await station.do({ do: "state-terms", ...lotSeen(lot, fields), terms });
}

const finenessForm = ({ decimal, choice, maybeText }: Entries) =>
  z.object({
    permille: decimal({ from: 1, to: 1000, unit: "‰" }),
    saidBy: choice(["stamp", "laboratory", "customer"], { first: "stamp" }),
    saidByName: maybeText({ most: 100 }),
    saidReason: maybeText({ most: 400 }),
  });

/** Asks for a reading and waits until it is there. Throws Refusal when the balance gave none. */
async function taken(bench: Bench, fields: Fields): Promise<void> {
  if (isAskedTwice(bench, fields)) return;
  if (hasNotMoved(bench, fields.take))
    throw new Refusal("lot.load-unmoved", { ticket: bench.item?.ticket ?? "" });
  const before = bench.item?.captures.length ?? 0;
  await bench.station.do({ do: "request-reading", ...aboutOf(fields), role: roleOf(fields.take ?? "") });
  await new Promise<void>((resolve) => {
    if (bench.waitingFor === undefined) return resolve();
    const end = bench.onChange(() => {
      if (bench.waitingFor !== undefined) return;
      end();
      resolve();
    });
  });
  if ((bench.item?.captures.length ?? 0) > before) return;
  const { error: trouble } = bench;
  throw new Refusal(trouble?.code ?? "balance.capture.called-off", trouble?.params);
}

/** Keeps the dry mass of a piece that comes back to the pan; it is held against the first one. */
async function weighAgain(
  { bench }: LotRunParts,
  { lot, fields, items, request }: LotFormRead,
): Promise<void> {
  const { again = "", againTyped = "", unit = "g", take } = fields;
  const item = itemOf(items, again, "again");
  await bench.station.mustBeCurrent(lotSeen(lot, fields));
  const reading =
    take === undefined
      ? typedMass(againTyped, unit, { mark: ownMark(request), at: "againTyped" })
      : await heard(bench);
  await bench.station.do({ do: "weigh-again", subject: item.id, seen: "now", reading });
}

async function heard({ scale, waitingFor }: Bench): Promise<Reading> {
  if (!scale || waitingFor) throw new Refusal("lot.balance-not-free");
  return scale.take().settled;
}

function typedMass(text: string, unit: string, read: { mark: DecimalMark; at: string }): Reading {
  return { ...typedReading(text, unit, read), takenBy: "typed", balance: "typed", lines: [] };
}

function roleOf(role: string): Role {
  if (isRole(role)) return role;
  throw new Refusal("weighing.role.unknown", { role });
}
