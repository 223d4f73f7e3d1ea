import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { waterRange } from "../../../calibration/water.ts";
import { methodNames, roles } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import type { Command } from "../../station/command.ts";
import type { WeighingCommand } from "../../weighing/commands.ts";
import { withStated } from "../../weighing/stated.ts";
import { aboutIn } from "../about.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { ownMark } from "../look.ts";
import { paramOf } from "../page-request.ts";
import { refusedBy } from "../refused.ts";
import { detailsForm } from "./details-form.ts";
import { openingForm } from "./opening-form.ts";

type FormCommand = (request: FastifyRequest) => Command | Promise<Command>;

/** A reading of a weighing. */
export const roleEntry = ({ choice }: Entries) =>
  choice(roles, { wrong: (role) => message("weighing.role.unknown", { role }) });

const roleForm = (entry: Entries) => z.object({ role: roleEntry(entry) });
const methodForm = ({ choice }: Entries) =>
  z.object({
    method: choice(methodNames, { wrong: (method) => message("weighing.method.unknown", { method }) }),
  });
/** The form of the method in use: its fields as they were typed, which its own file reads. */
const ownForm = ({ named }: Entries) => named("");
const reasonForm = ({ typed }: Entries) => z.object({ reason: typed() });
const foundForm = ({ typed, box }: Entries) => z.object({ found: typed(), stands: box() });
const lookedAtForm = ({ typed }: Entries) => z.object({ kind: typed() });

/** Why the piece on the pan is the ticket's although it weighs otherwise. */
export const rightPieceForm = ({ typed }: Entries) =>
  z
    .object({ rightReason: typed(), rightBy: typed() })
    .transform(({ rightReason: reason, rightBy: by }) => ({ reason, by }));

/** The command that each form of the Bench page asks for, by the address of the form. */
export function benchForms(bench: Bench): Record<string, FormCommand> {
  type Plain = "auto-capture" | "end-auto-capture" | "accept-unstable" | "cancel-request" | "swap-readings";
  const plain = (does: Plain) => (request: FastifyRequest) => ({ do: does, ...aboutIn(request) });
  return {
    "/bench/piece": (request) => ({
      do: "start-weighing",
      ...aboutIn(request),
      ticket: formIn(request, openingForm(bench.library)),
    }),
    "/bench/captures": (request) => ({
      do: "request-reading",
      ...aboutIn(request),
      ...formIn(request, roleForm),
    }),
    "/bench/hands-free": plain("auto-capture"),
    "/bench/hands-free/end": plain("end-auto-capture"),
    "/bench/capture-by-hand": plain("accept-unstable"),
    "/bench/capture-cancelled": plain("cancel-request"),
    "/bench/balance-looked-at": (request) => lookedAt(bench, request),
    "/bench/typed-readings": (request) => takeTyped(bench, request),
    "/bench/water": (request) => stateTemperature(bench, request),
    "/bench/details": (request) => {
      const { method } = formIn(request, methodForm);
      return { do: "state-details", ...aboutIn(request), details: formIn(request, detailsForm(method)) };
    },
    "/bench/stated": (request) => {
      const { open } = bench;
      if (!open) throw new Refusal("weighing.none", {}, "ticket");
      const details = withStated(open, formIn(request, ownForm), ownMark(request));
      return { do: "state-details", ...aboutIn(request), details };
    },
    "/bench/captures/:capture/voiding": (request) => ({
      do: "exclude-reading",
      ...aboutIn(request),
      entry: paramOf(request, "capture"),
      ...formIn(request, reasonForm),
    }),
    "/bench/right-piece": (request) => ({
      do: "confirm-item",
      ...aboutIn(request),
      ...formIn(request, rightPieceForm),
    }),
    "/bench/changed-over": plain("swap-readings"),
    "/bench/call-off": (request) => ({
      do: "call-off",
      ...aboutIn(request),
      ...formIn(request, reasonForm),
    }),
    "/bench/record": (request) => ({
      do: "write-record",
      ...aboutIn(request),
      ...formIn(request, foundForm),
    }),
  };
}

/** The answer of a person who looked at the balance; with what was asked, since that is kept. */
function lookedAt({ scale }: Bench, request: FastifyRequest): WeighingCommand {
  const { kind } = formIn(request, lookedAtForm);
  const check = scale?.checks().find((one) => one.kind === kind)?.message;
  if (check === undefined) throw new Refusal("weighing.request.nothing-to-look-at");
  return { do: "balance-looked-at", ...aboutIn(request), kind, check };
}

/** A typed reading before it is understood, so that it can be noted when it is not. */
const asTypedForm = (entry: Entries) =>
  z.object({
    role: roleEntry(entry),
    reading: entry.typed(),
    unit: entry.typed().transform((unit) => unit || "g"),
  });
const celsiusForm = ({ typed }: Entries) => z.object({ celsius: typed() });

async function takeTyped(bench: Bench, request: FastifyRequest): Promise<WeighingCommand> {
  const { role, reading, unit } = formIn(request, asTypedForm);
  const note = message("weighing.note.typed-reading", {
    role: message(`bench.roles.${role}`),
    typed: `${reading.slice(0, 40)} ${unit.slice(0, 8)}`,
  });
  const form = (entry: Entries) =>
    z.object({ reading: entry.reading(unit, role === "zero" ? "zero" : "load") });
  const typed = await orNoted(bench, request, reading === "" ? undefined : note, () => formIn(request, form));
  const taken = { ...typed.reading, takenBy: "typed" as const, balance: "typed", lines: [] };
  return { do: "take-reading", ...aboutIn(request), role, reading: taken };
}

/** The temperature of the water as a thermometer shows it. */
export const waterForm = ({ decimal }: Entries) =>
  z.object({ celsius: decimal({ unit: "°C", displayed: true, ...waterRange }) });

async function stateTemperature(bench: Bench, request: FastifyRequest): Promise<WeighingCommand> {
  const { celsius } = formIn(request, celsiusForm);
  const note = message("weighing.note.typed-temperature", { typed: `${celsius.slice(0, 40)} °C` });
  const typed = await orNoted(bench, request, celsius === "" ? undefined : note, () =>
    formIn(request, waterForm),
  );
  return { do: "state-temperature", ...aboutIn(request), ...typed };
}

/** What was understood. What somebody typed and that goes back is noted first, so that nothing read off a balance is lost. */
async function orNoted<T>(
  bench: Bench,
  request: FastifyRequest,
  note: Message | undefined,
  read: () => T,
): Promise<T> {
  try {
    return read();
  } catch (error) {
    if (note && refusedBy(error)) await bench.station.do({ do: "note", ...aboutIn(request), message: note });
    throw error;
  }
}
