import type { FastifyRequest } from "fastify";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { waterRange } from "../../../calibration/water.ts";
import { isMethod, isRole, type Role } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import type { Command } from "../../station/command.ts";
import type { WeighingCommand } from "../../weighing/commands.ts";
import { withStated } from "../../weighing/stated.ts";
import { toldOfItem } from "../../weighing/told-of-item.ts";
import { typedDetails } from "../../weighing/typed-details.ts";
import { typedCelsius, typedReading } from "../../weighing/typed-reading.ts";
import { aboutOf } from "../about.ts";
import { ownMark } from "../look.ts";
import { refusedBy } from "../refused.ts";

type Fields = Record<string, string>;
type FormCommand = (fields: Fields, request: FastifyRequest) => Command | Promise<Command>;

/** The command that each form of the Bench page asks for, by the address of the form. */
export function benchForms(bench: Bench): Record<string, FormCommand> {
  return {
    "/bench/piece": (fields, request) => startWeighing(bench, fields, request),
    "/bench/captures": (fields) => ({ do: "request-reading", ...aboutOf(fields), role: roleOf(fields) }),
    "/bench/each-load": (fields) => ({ do: "auto-capture", ...aboutOf(fields), role: roleOf(fields) }),
    "/bench/each-load/end": (fields) => ({ do: "end-auto-capture", ...aboutOf(fields) }),
    "/bench/capture-by-hand": (fields) => ({ do: "accept-unstable", ...aboutOf(fields) }),
    "/bench/capture-cancelled": (fields) => ({ do: "cancel-request", ...aboutOf(fields) }),
    "/bench/balance-looked-at": (fields) => lookedAt(bench, fields),
    "/bench/typed-readings": (fields, request) => takeTyped(bench, fields, request),
    "/bench/water": (fields, request) => stateTemperature(bench, fields, request),
    "/bench/details": ({ subject = "", version = "", ...fields }, request) => {
      const { method = "" } = fields;
      if (!isMethod(method)) throw new Refusal("weighing.method.unknown", { method });
      const details = typedDetails(fields, method, ownMark(request));
      return { do: "state-details", ...aboutOf({ subject, version }), details };
    },
    "/bench/stated": (fields, request) => {
      const { open } = bench;
      if (!open) throw new Refusal("weighing.none", {}, "ticket");
      return { do: "state-details", ...aboutOf(fields), details: withStated(open, fields, ownMark(request)) };
    },
    "/bench/captures/:capture/voiding": (fields, request) => ({
      do: "exclude-reading",
      ...aboutOf(fields),
      entry: (request.params as { capture: string }).capture,
      reason: fields.reason ?? "",
    }),
    "/bench/right-piece": (fields) => ({
      do: "confirm-item",
      ...aboutOf(fields),
      reason: fields.rightReason ?? "",
      by: fields.rightBy ?? "",
    }),
    "/bench/changed-over": (fields) => ({ do: "swap-readings", ...aboutOf(fields) }),
    "/bench/call-off": (fields) => ({
      do: "call-off",
      ...aboutOf(fields),
      reason: fields.reason ?? "",
    }),
    "/bench/record": (fields) => ({ do: "write-record", ...aboutOf(fields), found: fields.found ?? "" }),
  };
}

function startWeighing(bench: Bench, fields: Fields, request: FastifyRequest): WeighingCommand {
  const { ticket = "", description = "", claim = "", method = "" } = fields;
  const named = ticket.trim();
  if (named === "") throw new Refusal("weighing.ticket.missing", {}, "ticket");
  if (!isMethod(method)) throw new Refusal("weighing.method.unknown", { method }, "method");
  if (claim !== "" && !bench.library.has(claim)) throw new Refusal("claim.unknown", { claim }, "claim");
  return {
    do: "start-weighing",
    ...aboutOf(fields),
    ticket: {
      ticket: named,
      description: description.trim(),
      method,
      ...(claim === "" ? {} : { claim }),
      ...toldOfItem(fields, ownMark(request)),
    },
  };
}

/** The answer of a person who looked at the balance; with what was asked, since that is kept. */
function lookedAt({ scale }: Bench, fields: Fields): WeighingCommand {
  const { kind = "" } = fields;
  const check = scale?.checks().find((one) => one.kind === kind)?.message;
  if (check === undefined) throw new Refusal("weighing.request.nothing-to-look-at");
  return { do: "balance-looked-at", ...aboutOf(fields), kind, check };
}

async function takeTyped(bench: Bench, fields: Fields, request: FastifyRequest): Promise<WeighingCommand> {
  const role = roleOf(fields);
  const { reading = "", unit = "g" } = fields;
  const note = message("weighing.note.typed-reading", {
    role: message(`bench.roles.${role}`),
    typed: `${reading.trim().slice(0, 40)} ${unit.slice(0, 8)}`,
  });
  const of = role === "zero" ? "zero" : "load";
  const typed = await orNoted(bench, fields, reading.trim() === "" ? undefined : note, () =>
    typedReading(reading, unit, { of, mark: ownMark(request), at: "reading" }),
  );
  const taken = { ...typed, takenBy: "typed" as const, balance: "typed", lines: [] };
  return { do: "take-reading", ...aboutOf(fields), role, reading: taken };
}

async function stateTemperature(
  bench: Bench,
  fields: Fields,
  request: FastifyRequest,
): Promise<WeighingCommand> {
  const { celsius = "" } = fields;
  const note = message("weighing.note.typed-temperature", { typed: `${celsius.trim().slice(0, 40)} °C` });
  const typed = await orNoted(bench, fields, celsius.trim() === "" ? undefined : note, () =>
    typedCelsius(celsius, waterRange, { mark: ownMark(request), at: "celsius" }),
  );
  return { do: "state-temperature", ...aboutOf(fields), celsius: typed };
}

/** What was understood. What somebody typed and that goes back is noted first, so that nothing read off a balance is lost. */
async function orNoted<T>(
  bench: Bench,
  fields: Fields,
  note: Message | undefined,
  read: () => T,
): Promise<T> {
  try {
    return read();
  } catch (error) {
    if (note && refusedBy(error)) await bench.station.do({ do: "note", ...aboutOf(fields), message: note });
    throw error;
  }
}

function roleOf({ role = "" }: Fields): Role {
  if (isRole(role)) return role;
  throw new Refusal("weighing.role.unknown", { role });
}
