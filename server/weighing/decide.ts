import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Happened } from "../ledger/ledger.ts";
import { mustAccept } from "./accepted-role.ts";
import { amended } from "./amended.ts";
import { anotherItem, mustBeRightItem, rightItem } from "./announced-mass.ts";
import type { WeighingCommand } from "./commands.ts";
import { excludedAssay, excludedPhoto, excludedReading, excludedTest, keyOfPhoto } from "./exclusions.ts";
import type { Item, Recorded } from "./item.ts";
import type { Known } from "./known.ts";
import { openingBody } from "./opening.ts";
import { recorded } from "./recorded.ts";
import { heldAgainst } from "./second-person.ts";
import { signed } from "./signed.ts";
import { answeredRecord } from "./stop-checks.ts";
import { swapped } from "./swapped.ts";
import { captureOf } from "./taken-reading.ts";

/** The roles that may be taken while it is open whether this is the right piece. */
const beforeWetting: ReadonlySet<string> = new Set(["dry", "zero", "flask-full"]);

/**
 * What happens when this is asked of the weighing: the entries to write, none where only the balance is asked. Pure.
 * Throws Refusal when it is not done; then nothing happens.
 */
export function decide(weighing: Item | undefined, command: WeighingCommand, known: Known): Happened[] {
  switch (command.do) {
    case "start-weighing":
      return start(weighing, command, known);
    case "amend":
      return amended(recordedOf(weighing), command, known);
    case "void": {
      const item = recordedOf(weighing);
      const body = { entry: item.closed.entry, ...signed(command) };
      return [{ kind: "voiding", body }];
    }
    case "weigh-again": {
      recordedOf(weighing);
      const body = { ...captureOf("dry", command.reading, known), what: "dry-after" as const };
      return [{ kind: "capture", body }];
    }
    case "add-assay":
      recordedOf(weighing);
      return [{ kind: "laboratory-assay", body: command.assay }];
    case "exclude-assay":
      return [{ kind: "voiding", body: excludedAssay(recordedOf(weighing), command) }];
    case "add-test":
      standingOf(weighing);
      return [{ kind: "evidence", body: command.test }];
    case "exclude-test":
      return [{ kind: "voiding", body: excludedTest(standingOf(weighing), command) }];
    case "add-photo": {
      const key = keyOfPhoto(standingOf(weighing), command.photo.hash);
      return [{ kind: "photo", body: command.photo, key }];
    }
    case "exclude-photo":
      return [{ kind: "voiding", body: excludedPhoto(standingOf(weighing), command) }];
    case "answer-check":
      return answeredRecord(recordedOf(weighing), command, known);
    case "balance-looked-at":
      if (!weighing || weighing.closed) return [];
      return [
        { kind: "note", body: { message: message("balance.check.looked-at", { check: command.check }) } },
      ];
    // also between two pieces
    case "auto-capture":
    case "end-auto-capture":
      return [];
    default:
      return whileOpen(openOf(weighing), command, known);
  }
}

type OpenCommand = Exclude<
  WeighingCommand,
  {
    do:
      | "start-weighing"
      | "amend"
      | "void"
      | "weigh-again"
      | "add-assay"
      | "exclude-assay"
      | "add-test"
      | "exclude-test"
      | "add-photo"
      | "exclude-photo"
      | "answer-check"
      | "balance-looked-at"
      | "auto-capture"
      | "end-auto-capture";
  }
>;

function whileOpen(item: Item, command: OpenCommand, known: Known): Happened[] {
  switch (command.do) {
    case "take-reading": {
      const { role, reading } = command;
      mustAccept(item.method, role);
      // A reading of a balance is there already, and is never thrown away.
      if (reading.takenBy === "typed") mayBeWetted(item, role, known);
      return [{ kind: "capture", body: captureOf(role, reading, known) }];
    }
    case "request-reading":
      mustAccept(item.method, command.role);
      mayBeWetted(item, command.role, known);
      return [];
    case "accept-unstable":
    case "cancel-request":
      return [];
    case "state-temperature":
      return [temperature(command.celsius)];
    case "state-details":
      return [{ kind: "weighing-details", body: command.details }];
    case "note":
      return [{ kind: "note", body: { message: command.message } }];
    case "exclude-reading":
      return [{ kind: "voiding", body: excludedReading(item, command) }];
    case "swap-readings":
      return swapped(item, known.simulated);
    case "confirm-item":
      return [{ kind: "right-piece", body: rightItem(known.otherMass, command.reason, command.by) }];
    case "second-reading": {
      const { secondPersonAbove: above } = known;
      if (above === undefined) throw new Refusal("weighing.second.not-needed");
      return [
        { kind: "second-reading", body: heldAgainst(item, { ...command, above, people: known.people }) },
      ];
    }
    case "call-off": {
      const reason = typeof command.reason === "string" ? command.reason.trim() : command.reason;
      if (reason === "") throw new Refusal("weighing.call-off.reason-missing", {}, "reason");
      return [{ kind: "piece-left", body: { reason } }];
    }
    case "call-off-other-item":
      return [{ kind: "piece-left", body: { reason: anotherItem(known.otherMass) } }];
    case "write-record":
      mustBeRightItem(item.ticket, known.otherMass);
      return recorded(item, command, known);
  }
}

function start(
  weighing: Item | undefined,
  { subject, ticket }: Extract<WeighingCommand, { do: "start-weighing" }>,
  { onBench, rule, lot }: Known,
): Happened[] {
  if (weighing) throw new Refusal("weighing.started-already", { ticket: weighing.ticket }, "ticket");
  if (onBench !== undefined)
    throw new Refusal("weighing.bench-taken", { ticket: onBench, next: ticket.ticket }, "ticket");
  const started: Happened = { kind: "piece-opened", body: openingBody(ticket, rule), key: subject };
  if (!lot) return [started];
  const { name, celsius, weighedBefore } = lot;
  if (lot.closed) throw new Refusal("lot.closed", { lot: name });
  if (celsius === undefined) throw new Refusal("lot.temperature-missing", {}, "celsius");
  if (weighedBefore !== undefined)
    throw new Refusal("lot.ticket-weighed", { ticket: ticket.ticket, mass: weighedBefore }, "ticket");
  return [started, temperature(celsius)];
}

function temperature(celsius: string): Happened {
  return { kind: "capture", body: { what: "temperature", celsius, source: "typed", lines: [] } };
}

function mayBeWetted({ ticket }: Item, role: string, { otherMass }: Known): void {
  if (!beforeWetting.has(role)) mustBeRightItem(ticket, otherMass);
}

/** The weighing that goes on. */
function openOf(weighing: Item | undefined): Item {
  if (!weighing) throw new Refusal("weighing.none", {}, "ticket");
  if (weighing.closed) throw new Refusal("weighing.closed", { ticket: weighing.ticket });
  return weighing;
}

/** The weighing with a record that was not declared void: that is final. */
function recordedOf(weighing: Item | undefined): Recorded {
  if (weighing?.closed?.how !== "recorded") throw new Refusal("record.none");
  if (weighing.voided)
    throw new Refusal("record.voided", { ticket: weighing.ticket, reason: weighing.voided.reason });
  return { ...weighing, closed: weighing.closed };
}

/** The weighing as long as something may be added: while it goes on, and to a record that stands. */
function standingOf(weighing: Item | undefined): Item {
  return weighing?.closed?.how === "recorded" ? recordedOf(weighing) : openOf(weighing);
}
