import { Refusal } from "../calibration/refusal.ts";
import type { AskedLines } from "./asked-lines.ts";
import { type BusLine, busAt, busPlace, createBus } from "./bus.ts";
import type { CableOptions } from "./cabled-device.ts";
import { type Clock, systemClock } from "./clock.ts";
import type { Balance } from "./device.ts";
import { createHidBalance } from "./hid-balance.ts";
import { knownEnd, type LineEnd } from "./known-end.ts";
import type { Profile } from "./learning/profile.ts";
import { parseLineSettings } from "./line-settings.ts";
import { createNetworkBalance, parseNetworkAddress } from "./network-balance.ts";
import type { Comma } from "./number.ts";
import { profiledLines } from "./profiled-lines.ts";
import { createSerialBalance, openSerialCable } from "./serial-balance.ts";
import { readAnyShape, readShape, shapeNamed, shapes } from "./shapes/index.ts";

/** What an owner has told about a balance; everything may be left out. */
export interface BalanceSettings {
  /** "9600-8n1", for a serial line */
  line?: string | undefined;
  /** the end of its lines, when nothing else is to end one */
  lineEnd?: LineEnd | undefined;
  /** the shape of its lines; any when left out */
  shape?: string | undefined;
  comma?: Comma | undefined;
  impliedDecimals?: number | undefined;
  /** learned lines, in place of shape, comma and decimals */
  profile?: Profile | undefined;
  ask?: AskedLines | undefined;
  /** silence before it is told, ms; Infinity for a balance that sends on its key */
  patienceMs?: number | undefined;
}

/**
 * A balance by its address: a serial port, `tcp://host:port` or a raw USB device /dev/hidrawN. Throws Refusal for
 * an address, line setting, shape or request that cannot be right.
 */
export function balanceAt(address: string, settings: BalanceSettings = {}): Balance {
  if (/^\/dev\/hidraw\d+$/.test(address))
    return createHidBalance({
      path: address,
      ...(settings.patienceMs !== undefined && { patienceMs: settings.patienceMs }),
    });
  const options = cableOptions(settings);
  const onBus = busPlace(address);
  if (onBus) {
    const { port, place } = onBus;
    const { line = "9600-8n1" } = settings;
    const open = openSerialCable<BusLine>(port, parseLineSettings(line), systemClock);
    const bus = busAt(port, line, () => createBus({ address: port, open }));
    return bus.member(place, { ask: settings.ask, read: options.read ?? (() => readAnyShape()) });
  }
  if (/^tcp:\/\//.test(address) || (!address.startsWith("/") && /:\d+$/.test(address)))
    return createNetworkBalance({ ...parseNetworkAddress(address), ...options });
  return createSerialBalance({
    path: address,
    ...(settings.line !== undefined && { line: settings.line }),
    ...options,
  });
}

/** How lines are cut, read and waited for by these settings. Throws Refusal for a line format that is not there. */
export function cableOptions(
  { lineEnd, shape, profile, ask, patienceMs, ...settings }: BalanceSettings,
  clock?: Clock,
): CableOptions {
  const named = shape === undefined ? undefined : shapeNamed(shape);
  if (shape !== undefined && !named)
    throw new Refusal("line-format.unknown", { format: shape, right: shapes.map(({ id }) => id) }, "shape");
  const { comma = "not-known", impliedDecimals } = settings;
  const reading = { comma, ...(impliedDecimals !== undefined && { impliedDecimals }) };
  return {
    read: () => (named ? readShape(named, reading) : readAnyShape(reading)),
    ...(lineEnd !== undefined && { cutter: knownEnd(lineEnd) }),
    ...(profile && profiledLines(profile, clock)),
    ...(ask && { ask }),
    ...(patienceMs !== undefined && { patienceMs }),
  };
}
