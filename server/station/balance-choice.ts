import { realpathSync } from "node:fs";
import { z } from "zod";
import { Refusal } from "../../calibration/refusal.ts";
import { requestBytes, usualAskingMs } from "../../drivers/asked-lines.ts";
import { balanceAt } from "../../drivers/balance-at.ts";
import type { Balance } from "../../drivers/device.ts";
import { createLineCutter } from "../../drivers/line.ts";
import { parseLineSettings } from "../../drivers/line-settings.ts";
import { createNetworkBalance, parseNetworkAddress } from "../../drivers/network-balance.ts";
import { createSerialBalance } from "../../drivers/serial-balance.ts";
import type { StoredProfile } from "./profile-repository.ts";

/** Where the bench hears its balance, and what its owner told about it. */
export const balanceChoiceShape = z.strictObject({
  /** path of a serial port, host:port, or raw USB device */
  address: z.string().trim().min(1).max(300),
  /** "9600-8n1"; without meaning on a network or USB scale */
  line: z.string().max(40).default("9600-8n1"),
  /** what 1,234 means on this balance; asked once */
  comma: z.enum(["decimal", "thousands"]).optional(),
  /** a learned profile by its name; its newest version is read */
  profile: z.string().max(120).optional(),
  ask: z
    .strictObject({
      request: z.string().min(1).max(200),
      when: z.enum(["timer", "capture"]),
      everyMs: z.number().int().min(100).max(60_000).default(usualAskingMs),
      ownerAgreed: z.literal(true),
    })
    .optional(),
});

export type BalanceChoice = z.infer<typeof balanceChoiceShape>;

/** What kind of cable an address means. */
export function cableOf(address: string): "serial" | "network" | "usb-scale" {
  if (/^\/dev\/hidraw\d+$/.test(address)) return "usb-scale";
  return /^tcp:\/\//.test(address) || (!address.startsWith("/") && /:\d+$/.test(address))
    ? "network"
    : "serial";
}

/** True when both addresses lead to one port: a stable name and today's name of the same device. */
export function isSamePort(one: string, other: string): boolean {
  return one === other || deviceAt(one) === deviceAt(other);
}

function deviceAt(address: string): string {
  if (cableOf(address) === "network") return address.replace(/^tcp:\/\//, "");
  try {
    return realpathSync(address);
  } catch {
    return address;
  }
}

/** The choice when it can be right; throws Refusal with the field of the form. */
export function checkedChoice(choice: unknown): BalanceChoice {
  const read = balanceChoiceShape.safeParse(choice);
  if (!read.success) {
    const [issue] = read.error.issues;
    const field = issue?.path.map(String).join(".") ?? "";
    throw new Refusal("balance.choice", { field }, "port");
  }
  const { address, line, ask } = read.data;
  const cable = cableOf(address);
  if (cable === "serial") parseLineSettings(line);
  if (cable === "network") parseNetworkAddress(address);
  if (cable === "serial" && !address.startsWith("/")) throw new Refusal("port.address", { address }, "port");
  if (ask) requestBytes(ask);
  return read.data;
}

/** The balance of a choice, read through its learned profile where it has one. */
export function balanceOf({ address, line, comma, ask }: BalanceChoice, kept?: StoredProfile): Balance {
  return balanceAt(address, { line, comma, ask, profile: kept?.profile });
}

/**
 * The balance of a choice as learning listens to it: every piece of bytes is given on as it came, before any rule
 * about lines has touched it. Throws Refusal for a USB scale, which sends reports and no lines.
 */
export function balanceHeard(choice: BalanceChoice, hear: (bytes: Uint8Array) => void): Balance {
  const { address, line, ask } = choice;
  const cable = cableOf(address);
  if (cable === "usb-scale") throw new Refusal("learn.usb", { port: address });
  const listening = {
    ...(ask && { ask }),
    cutter: (options: Parameters<typeof createLineCutter>[0]) => {
      const cutter = createLineCutter(options);
      const push = (chunk: Uint8Array) => {
        hear(chunk);
        cutter.push(chunk);
      };
      return {
        push,
        idle: cutter.idle,
        reset: cutter.reset,
        get waiting() {
          return cutter.waiting;
        },
      };
    },
  };
  return cable === "network"
    ? createNetworkBalance({ ...parseNetworkAddress(address), ...listening })
    : createSerialBalance({ path: address, line, ...listening });
}
