import { Refusal } from "../../calibration/refusal.ts";
import type { Evaluated, Evaluation, NotEvaluated } from "../compute/evaluation.ts";
import { isRefused } from "../compute/evaluation.ts";
import type { Entry } from "../ledger/entry.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Happened, Ledger } from "../ledger/ledger.ts";
import { isLotCommand } from "../lots/commands.ts";
import { decideLot } from "../lots/decide.ts";
import { lotOf } from "../lots/evolve.ts";
import { LotRepository } from "../lots/lot-repository.ts";
import { isMeltCommand } from "../melts/commands.ts";
import { decideMelt } from "../melts/decide.ts";
import { meltOf } from "../melts/evolve.ts";
import { meltsWith } from "../melts/melt-repository.ts";
import { builtIn } from "../metals/library.ts";
import { isSettlementCommand, type SettlementCommand } from "../settlements/commands.ts";
import { decideSettlement, type SettlementKnown } from "../settlements/decide.ts";
import { settlementOf } from "../settlements/evolve.ts";
import { settlementAfter } from "../settlements/settlement-repository.ts";
import { otherMass } from "../weighing/announced-mass.ts";
import type { SituationReading } from "../weighing/checks/situation.ts";
import type { WeighingCommand } from "../weighing/commands.ts";
import { decide } from "../weighing/decide.ts";
import { weighingOf } from "../weighing/evolve.ts";
import type { Item, Ticket } from "../weighing/item.ts";
import { recordedStatement } from "../weighing/kinds/result.ts";
import type { Known, KnownLot } from "../weighing/known.ts";
import { procedureChecks } from "../weighing/procedure-checks.ts";
import { watchedIn, withWatched } from "../weighing/watched.ts";
import { amendmentKnown, restated } from "./amendment-known.ts";
import { announcedMass } from "./announced-mass.ts";
import type { BenchParts } from "./bench-parts.ts";
import { firstSettings } from "./bench-settings.ts";
import { checkedWhile } from "./checked-while.ts";
import type { Command } from "./command.ts";
import { limitOfAmendment, limitPassed } from "./limit-passed.ts";
import type { LiveReadings } from "./live-readings.ts";
import { meltKnown } from "./melt-known.ts";
import { openWeighing } from "./open-weighing.ts";
import { evaluationOfItem } from "./weighing-evaluation.ts";

/** What a command makes happen to a subject of which these entries stand. Throws Refusal, LedgerError. */
export async function decisionOn(
  command: Command,
  entries: readonly Entry[],
  parts: BenchParts,
  live: Pick<LiveReadings, "all" | "watched">,
): Promise<Happened[]> {
  if (isLotCommand(command)) return decideLot(lotOf(entries), command);
  if (isSettlementCommand(command))
    return decideSettlement(lotOf(entries), command, await settlementKnown(command, entries, parts));
  if (isMeltCommand(command)) return decideMelt(meltOf(entries), command, await meltKnown(command, parts));
  const told = weighingOf(entries);
  const weighing = told && withWatched(told, live.watched);
  await mustBeInOpenLot(weighing, parts.ledger);
  return decide(weighing, command, await knownFor(command, { weighing, entries, parts, live: live.all }));
}

/** Throws Refusal where the record belongs to a lot that was closed: what was settled by it stays as it is. */
async function mustBeInOpenLot(weighing: Item | undefined, ledger: Ledger): Promise<void> {
  if (weighing?.lot === undefined || weighing.closed === undefined) return;
  const lot = lotOf(await ledger.entriesOf(weighing.lot));
  if (lot?.closed) throw new Refusal("lot.closed-with-record", { lot: lot.name, ticket: weighing.ticket });
}

/** What a decision on a settlement rests on; the pieces of a lot are only read where they count. */
async function settlementKnown(
  command: SettlementCommand,
  entries: readonly Entry[],
  { ledger, library: current, preferences, people }: BenchParts,
): Promise<SettlementKnown> {
  const library = current?.() ?? builtIn;
  const policy = preferences?.().secondPerson;
  const isAsked = policy !== undefined && Object.values(policy).some((limit) => limit !== "");
  const reads = command.do !== "reopen-lot" && command.do !== "keep-print";
  const lots = new LotRepository(ledger);
  const items = reads ? await lots.items(command.subject, library) : [];
  const closes = command.do === "close-lot";
  const now = settlementAfter(entries, items, {
    elsewhere: closes ? await lots.weighedElsewhere(command.subject) : [],
    melts: await meltsWith(ledger, command.subject),
  });
  const open = closes ? await openWeighing(ledger) : undefined;
  return {
    settlement: settlementOf(entries),
    library,
    people: people?.(),
    ...(isAsked ? { policy } : {}),
    items: now?.evidence ?? [],
    questions: now?.questions ?? [],
    totals: now?.totals ?? { pieces: 0, sum_g: "0", fine_g: {}, flagged: 0 },
    ...(open?.lot === command.subject ? { onBench: open.ticket } : {}),
  };
}

interface Standing {
  weighing: Item | undefined;
  entries: readonly Entry[];
  parts: BenchParts;
  live: readonly SituationReading[];
}

/** Only what the decision on this command rests on. */
async function knownFor(command: WeighingCommand, standing: Standing): Promise<Known> {
  const { weighing, parts } = standing;
  const { decisionRule } = parts.preferences?.() ?? firstSettings;
  const rule = { ...decisionRule, confidence_percent: parts.conditions().confidencePercent };
  const known: Known = { simulated: parts.simulated, rule, people: parts.people?.() };
  if (command.do === "start-weighing") {
    const open = await openWeighing(parts.ledger);
    const onBench = open?.id === command.subject ? undefined : open?.ticket;
    return { ...known, onBench, lot: await lotKnown(command.ticket, parts.ledger) };
  }
  if (!weighing) return known;
  switch (command.do) {
    case "take-reading": {
      const sensors = parts.sensors?.();
      return { ...known, ...(sensors && { sensors }), ...(await massKnown(weighing, parts)) };
    }
    case "request-reading":
    case "confirm-item":
    case "call-off-other-item":
      return { ...known, ...(await massKnown(weighing, parts)) };
    case "second-reading":
      return { ...known, secondPersonAbove: await limitPassed(weighing, parts) };
    case "write-record":
      return { ...known, ...(await recordKnown(weighing, standing)) };
    case "answer-check":
      return { ...known, ...(await restated(standing.entries, parts)) };
    case "amend":
      return {
        ...known,
        ...(await amendmentKnown(weighing, command, standing.entries, parts)),
        secondPersonAbove: await limitOfAmendment(weighing, parts),
      };
    default:
      return known;
  }
}

async function lotKnown({ lot: id, ticket }: Ticket, ledger: Ledger): Promise<KnownLot | undefined> {
  const lot = id === undefined ? undefined : lotOf(await ledger.entriesOf(id));
  if (!lot) return undefined;
  const { records } = await ledger.records({
    filters: { lot: lot.id, ticket, voided: false },
    page: { size: 1 },
  });
  return {
    name: lot.name,
    closed: lot.closed !== undefined,
    celsius: lot.waterCelsius,
    weighedBefore: records[0]?.dry,
  };
}

async function massKnown(weighing: Item, { ledger }: BenchParts): Promise<Pick<Known, "otherMass">> {
  return { otherMass: otherMass(weighing, await announcedMass(weighing, ledger)) };
}

async function recordKnown(weighing: Item, { parts, live }: Standing): Promise<Partial<Known>> {
  const { conditions, profileOf } = parts;
  const library = parts.library?.() ?? builtIn;
  const evaluation = await evaluationOfItem(weighing, parts);
  return {
    ...(await massKnown(weighing, parts)),
    secondPersonAbove: await limitPassed(weighing, parts),
    checks: procedureChecks(weighing, { conditions: conditions(), profileOf, evaluation, library, live }),
    result: evaluation && (await resultKnown(weighing, evaluation, parts)),
  };
}

async function resultKnown(
  weighing: Item,
  evaluation: Evaluation,
  parts: BenchParts,
): Promise<Known["result"]> {
  if (!isRefused(evaluation)) return resultOf(weighing, evaluation, parts);
  const { refused, stated } = evaluation;
  if (!stated) return { refused };
  const stops = stated.statement.checks.flatMap(({ code, severity, params }) =>
    severity === "stop" ? [{ code, params }] : [],
  );
  return { refused, noDensity: { result: await resultOf(weighing, stated, parts), stops } };
}

async function resultOf(
  weighing: Item,
  { request, statement }: Pick<Evaluated, "request" | "statement"> | NonNullable<NotEvaluated["stated"]>,
  parts: BenchParts,
): Promise<BodyOf<"result">> {
  const versions = { ...parts.versions, library: (parts.library?.() ?? builtIn).version };
  const checked = await checkedWhile(weighing, parts);
  const watched = watchedIn(weighing);
  return {
    request,
    statement: recordedStatement.parse(statement),
    versions,
    ...(checked && { checked }),
    ...(watched.length > 0 && { watched }),
  };
}
