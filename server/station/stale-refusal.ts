import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Entry } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { isLotCommand } from "../lots/commands.ts";
import { lotOf } from "../lots/evolve.ts";
import { isMeltCommand } from "../melts/commands.ts";
import { meltOf } from "../melts/evolve.ts";
import { isSettlementCommand } from "../settlements/commands.ts";
import { weighingOf } from "../weighing/evolve.ts";
import type { Command } from "./command.ts";
import { openWeighing } from "./open-weighing.ts";

/** More changes than this are told by their number. */
const mostTold = 5;

/** The refusal of a command whose page saw less than there is by now: what it was about, and what changed since. */
export async function staleRefusal(
  command: Command,
  entries: readonly Entry[],
  seen: number,
  ledger: Ledger,
): Promise<Refusal> {
  if (isLotCommand(command) || isSettlementCommand(command)) return staleLot(command.subject, entries, seen);
  if (isMeltCommand(command)) {
    const melt = meltOf(entries)?.name ?? command.subject;
    return new Refusal("melt.stale", { melt, changes: orUnknown(changesIn(entries, seen)) });
  }
  const changes = changesIn(entries, seen);
  const ticket = weighingOf(entries)?.ticket ?? command.subject;
  const open = await openWeighing(ledger);
  const other =
    open && open.id !== command.subject ? [message("happened.other-on-bench", { ticket: open.ticket })] : [];
  const code = aboutRecord.has(command.do) ? "record.stale" : "weighing.stale";
  const typed = typedIn(command);
  const lost = typed === undefined ? [] : [message("happened.typed", { typed })];
  return new Refusal(code, { ticket, changes: [...orUnknown([...changes, ...other]), ...lost] });
}

/** The same of a page about a lot. */
export function staleLot(subject: string, entries: readonly Entry[], seen: number): Refusal {
  const lot = lotOf(entries)?.name ?? subject;
  return new Refusal("lot.stale", { lot, changes: orUnknown(changesIn(entries, seen)) });
}

/** What changed since a page saw so many entries; the oldest of many by their number. */
function changesIn(entries: readonly Entry[], seen: number): Message[] {
  const since = entries.slice(seen);
  const newest = since.slice(-mostTold).map(happened);
  return since.length > mostTold
    ? [message("happened.earlier", { n: since.length - mostTold }), ...newest]
    : newest;
}

const aboutRecord: ReadonlySet<string> = new Set<Command["do"]>([
  "amend",
  "void",
  "answer-check",
  "weigh-again",
  "add-assay",
  "exclude-assay",
]);

const orUnknown = (changes: readonly Message[]) =>
  changes.length > 0 ? changes : [message("happened.unknown")];

/** What was typed, so that it is not lost where its field is gone. */
function typedIn(command: Command): string | undefined {
  switch (command.do) {
    case "take-reading":
      return `${command.reading.text} ${command.reading.unit}`;
    case "state-temperature":
      return `${command.celsius} °C`;
    case "start-weighing":
      return command.ticket.ticket;
    default:
      return undefined;
  }
}

/** One entry as it is told to somebody whose page did not show it. */
function happened(entry: Entry): Message {
  switch (entry.kind) {
    case "piece-opened":
      return message("happened.started", { ticket: entry.body.ticket });
    case "capture": {
      const { body } = entry;
      if (!("reading" in body))
        return message("happened.temperature", { celsius: { decimal: body.celsius } });
      const { text, unit } = body.reading;
      return message("happened.reading", {
        role: message(`bench.roles.${body.what}`),
        text: { decimal: text },
        unit,
      });
    }
    case "voiding": {
      const { reason } = entry.body;
      return message(entry.body.entry.startsWith("result-") ? "happened.voided" : "happened.excluded", {
        reason,
      });
    }
    case "weighing-details":
      return message("happened.details");
    case "evidence":
      return message("happened.test");
    case "photo":
      return message("happened.photo");
    case "note":
      return message("happened.note");
    case "right-piece":
      return message("happened.item-confirmed");
    case "second-reading":
      return message("happened.second-reading", { by: entry.body.by });
    case "check-answered":
      return message("happened.check-answered");
    case "result":
      return message("happened.recorded");
    case "piece-left":
      return message("happened.called-off", { reason: entry.body.reason });
    case "amendment":
      return message("happened.amended", { by: entry.body.by, reason: entry.body.reason });
    case "laboratory-assay":
      return message("happened.assay");
    case "report-issued":
      return message("happened.report", { number: entry.body.number });
    case "lot-opened":
      return message("happened.lot-opened", { lot: entry.body.name });
    case "lot-water":
      return message("happened.temperature", { celsius: { decimal: entry.body.celsius } });
    case "lot-price":
      return message("happened.price");
    case "lot-flag":
      return message("happened.flag", { flag: entry.body.flag });
    case "lot-terms":
      return message("happened.terms");
    case "lot-closed":
      return message("happened.lot-closed");
    case "lot-reopened":
      return message("happened.lot-reopened", { by: entry.body.by, reason: entry.body.reason });
    case "settlement-decision":
      return message("happened.settlement-decision", { by: entry.body.by, reason: entry.body.reason });
    case "settlement-trust":
      return message("happened.settlement-trust", { by: entry.body.by });
    case "melt-poured":
    case "melt-drilled":
    case "melt-tolerance":
    case "melt-assay":
    case "melt-assay-excluded":
    case "melt-settled":
    case "melt-reopened":
      return message(`happened.${entry.kind}`, { by: entry.body.by });
    default:
      return message("happened.unknown");
  }
}
