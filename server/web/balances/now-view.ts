import { localTime } from "../../../calibration/local-time.ts";
import { type Message, message } from "../../../calibration/message.ts";
import { nameMessage } from "../../../drivers/balance-name.ts";
import type { LineRecord } from "../../../drivers/reading.ts";
import type { ReadingStream } from "../../../drivers/reading-stream.ts";
import type { BesideView } from "../../../views/balances/beside.tsx";
import type { NowView } from "../../../views/balances/now.tsx";
import { type BalanceChoice, cableOf } from "../../station/balance-choice.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import { whenOf } from "../when.ts";

/** How many of the last lines the page shows. */
const linesShown = 12;

/** What a line was understood to mean. */
export function meaningOf({ reading, event }: LineRecord): Message {
  if (event) return event;
  const { text, unit, label } = reading;
  const stability = message(`balance.stability.${reading.stability}`);
  return label === undefined
    ? message("balance.reading", { reading: { decimal: text }, unit, stability })
    : message("balance.reading.labelled", {
        reading: { decimal: text },
        unit,
        label: message(`balance.label.${label}`),
        stability,
      });
}

/** The balance in use as its page draws it. */
export function nowOf(balance: BalanceInUse, csrfToken: string, zone: string): NowView {
  const { stream, choice, profile, scale } = balance;
  const isAsked = choice && choice.comma === undefined && profile === undefined;
  const unclear = isAsked ? stream?.error() : undefined;
  return {
    name: scale ? nameMessage(scale.name) : message("balance.now.none"),
    ...stateOf(stream, zone),
    readBy: readBy(balance),
    ...(choice && { choice: choiceView(choice) }),
    checks: scale?.checks() ?? [],
    ...(unclear?.event?.code === "line.unclear.comma" && { commaAsked: { raw: unclear.raw } }),
    lines: lastLines(stream, zone),
    csrfToken,
  };
}

function readBy({ profile, choice }: BalanceInUse): Message {
  if (profile) return message("balance.read-by.profile", { name: profile.name, version: profile.version });
  return choice?.comma === undefined
    ? message("balance.read-by.formats")
    : message(`balance.read-by.formats.${choice.comma}`);
}

function choiceView({ address, line, ask }: BalanceChoice): NonNullable<NowView["choice"]> {
  return {
    address,
    ...(cableOf(address) === "serial" && { line }),
    ...(ask && { asked: ask.request }),
  };
}

function lastLines(stream: ReadingStream | undefined, zone: string): NowView["lines"] {
  const recent = stream?.recent() ?? [];
  return recent
    .slice(-linesShown)
    .toReversed()
    .map((record) => ({
      at: `${localTime(record.at, zone).time}${record.at.slice(19, 23)}`,
      raw: record.raw,
      meaning:
        record.event?.kind === "unknown-line" ? message("balance.now.not-understood") : meaningOf(record),
    }));
}

function stateOf(stream: ReadingStream | undefined, zone: string): Pick<NowView, "state" | "message"> {
  if (!stream) return { state: message("balance.state.no-cable"), message: message("balance.now.typed") };
  const { record } = stream.latest();
  if (record)
    return {
      state: message("balance.state.heard"),
      message: message("balance.now.arrived", { reading: meaningOf(record), time: whenOf(record.at, zone) }),
    };
  const error = stream.error();
  if (error?.event)
    return {
      state: message(`balance.state.${error.event.kind}`),
      message: message("balance.now.since", { event: error.event, time: whenOf(error.at, zone) }),
    };
  const newest = stream.recent().at(-1);
  if (newest?.event && newest.raw !== "")
    return { state: message("balance.state.unknown-line"), message: newest.event };
  return {
    state: message("balance.state.silent"),
    message: newest?.event ?? message("balance.now.nothing-yet"),
  };
}

/** The balances that are heard beside the one in use, as their page draws them. */
export function besideOf({ beside }: BalanceInUse, zone: string): BesideView[] {
  return beside.map(({ choice, scale, stream }) => ({
    address: choice?.address ?? "",
    name: nameMessage(scale.name),
    ...stateOf(stream, zone),
    checks: stream.checks(),
  }));
}
