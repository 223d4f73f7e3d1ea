import type { Feed } from "../../../drivers/feed.ts";
import { type FoundScale, listScales } from "../../../drivers/hid/scales.ts";
import { listPorts, type PortRoots, portNamed } from "../../../drivers/ports.ts";
import type { LineRecord } from "../../../drivers/reading.ts";
import type { BesideView } from "../../../views/balances/beside.tsx";
import type { NowView } from "../../../views/balances/now.tsx";
import type { PortRow } from "../../../views/balances/ports.tsx";
import { cableOf } from "../../station/balance-choice.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";

/** How many of the last lines the page shows. */
const linesShown = 12;

const restWords = {
  steady: "at rest",
  moving: "moving",
  "not-told": "the line does not say whether it rests",
};

/** What a line was understood to mean. */
export function meaningOf({ reading, event }: LineRecord): string {
  if (event) return event.says;
  const label = reading.label === undefined ? "" : `, ${reading.label}`;
  return `${reading.text} ${reading.unit}${label}, ${restWords[reading.steady]}`;
}

/** The balance in use as its page draws it. */
export function nowOf(balance: BalanceInUse, csrfToken: string): NowView {
  const { feed, choice, profile } = balance;
  const recent = feed?.recent() ?? [];
  const unclear = choice?.comma === undefined && profile === undefined ? feed?.trouble() : undefined;
  return {
    name: balance.scale?.name ?? "none: readings are typed",
    ...stateOf(feed),
    readBy: profile
      ? `the learned profile ${profile.name}, version ${profile.version}`
      : `generic shapes${choice?.comma === undefined ? "" : `, the comma marks ${choice.comma === "decimal" ? "decimals" : "thousands"}`}`,
    ...(choice && {
      choice: {
        address: choice.address,
        ...(cableOf(choice.address) === "serial" && { line: choice.line }),
        ...(choice.ask && { asked: choice.ask.request }),
      },
    }),
    doubts: balance.scale?.doubts() ?? [],
    ...(choice && unclear?.event?.kind === "unclear" && { commaAsked: { raw: unclear.raw } }),
    lines: recent
      .slice(-linesShown)
      .toReversed()
      .map((record) => ({
        at: record.at.slice(11, 23),
        raw: record.raw,
        meaning:
          record.event?.kind === "unknown-line" ? "not understood: no number taken" : meaningOf(record),
      })),
    csrfToken,
  };
}

/** What the answers, the request and the profile of a balance are bound to, and why. */
export function keptFor(address: string, roots?: PortRoots): string {
  if (cableOf(address) === "network") return "this network address: nothing else tells which balance answers";
  if (cableOf(address) === "usb-scale")
    return "this raw USB device; its number may be another after plugging in";
  const port = portNamed(address, roots);
  if (port === undefined) return "this path: the system knows no lasting name for it";
  return {
    device: `the device itself (${port.identity}), in whichever socket it is plugged`,
    socket: "this socket, because another device calls itself the same",
    nothing: `this path: ${port.device} tells no name of its own, so another device on it is taken for the same`,
  }[port.stableBy];
}

function stateOf(feed: Feed | undefined): Pick<NowView, "state" | "says"> {
  if (!feed)
    return { state: "no cable", says: "Readings are typed on the Bench. Choose a port to hear a balance." };
  const latest = feed.latest();
  if (latest.record)
    return {
      state: "heard",
      says: `${meaningOf(latest.record)}, arrived at ${latest.record.at.slice(11, 19)} UTC.`,
    };
  const trouble = feed.trouble();
  if (trouble?.event)
    return {
      state: trouble.event.kind === "lost" ? "gone" : trouble.event.kind.replaceAll("-", " "),
      says: `${trouble.event.says} (since ${trouble.at.slice(11, 19)} UTC)`,
    };
  const newest = feed.recent().at(-1);
  if (newest?.event && newest.raw !== "") return { state: "not understood", says: newest.event.says };
  return { state: "silent", says: newest?.event?.says ?? "Nothing has come yet." };
}

/** The balances that are heard beside the one in use, as their page draws them. */
export function besideOf({ beside }: BalanceInUse): BesideView[] {
  return beside.map(({ choice, scale, feed }) => ({
    address: choice?.address ?? "",
    name: scale.name,
    ...stateOf(feed),
    doubts: feed.doubts(),
  }));
}

/** The ports of this machine, USB scales, and the address in use when it is neither. */
export function portRows(balance: BalanceInUse): PortRow[] {
  const chosen = balance.choice?.address;
  const beside = new Set(balance.others.map(({ address }) => address));
  const isBeside = (name: string | undefined) => name !== undefined && beside.has(name);
  const row = (name: string, says: string, serial: boolean, today?: string): PortRow => ({
    stableName: name,
    ...(today === undefined || today === name ? {} : { todayName: today }),
    state: name === chosen || today === chosen ? "in use" : "free",
    says,
    chosen: name === chosen || today === chosen,
    beside: isBeside(name) || isBeside(today),
    mayBeBeside: chosen !== undefined,
    serial,
  });
  const rows = [
    ...listPorts().map((port) =>
      row(port.path, [port.identity, worth[port.stableBy]].filter(Boolean).join("; "), true, port.device),
    ),
    ...listScales().map((scale) => row(scale.path, scaleSays(scale), false)),
  ];
  if (chosen === undefined || rows.some((one) => one.chosen)) return rows;
  const serial = cableOf(chosen) === "serial";
  return [row(chosen, serial ? "as it was typed" : "on the network, as it was typed", serial), ...rows];
}

/** What a USB scale is, and what its reports cannot tell. */
export function scaleSays({ identity, reports }: FoundScale): string {
  const most = `its reports hold at most ${reports.largestSteps} steps of the last digit`;
  return reports.signed
    ? `USB scale: ${identity}; ${most}`
    : `USB scale: ${identity}; ${most} and no number below zero, so what is lighter than the zero cannot be weighed`;
}

const worth = {
  device: "named by the device itself: found again in any socket",
  socket: "named by its socket, because another device calls itself the same: keep it in this socket",
  nothing: "has no stable name: after unplugging it may have another number",
};
