import { Refusal } from "../calibration/refusal.ts";

export type Parity = "none" | "even" | "odd";
export type FlowControl = "none" | "rts-cts" | "xon-xoff";

/** How a serial line is set. */
export interface LineSettings {
  baudRate: number;
  dataBits: 7 | 8;
  parity: Parity;
  stopBits: 1 | 2;
  flowControl: FlowControl;
}

/** Speeds a balance may be set to, most usual first. */
export const baudRates = [
  9600, 4800, 2400, 1200, 19200, 38400, 57600, 115200, 600, 300, 14400, 28800, 230400,
] as const;

const parities: Record<string, Parity> = { n: "none", e: "even", o: "odd" };
const flowControls: Record<string, FlowControl> = { "rts-cts": "rts-cts", "xon-xoff": "xon-xoff" };
const form = /^(\d+)-([78])([neo])([12])(?:-(rts-cts|xon-xoff))?$/;

/** "9600-8n1" or "2400-7e1-xon-xoff" as settings. Throws Refusal that says what would be right. */
export function parseLineSettings(text: string): LineSettings {
  const [, speed, dataBits, parity, stopBits, flow] = form.exec(text.toLowerCase()) ?? [];
  const baudRate = baudRates.find((rate) => String(rate) === speed);
  if (baudRate === undefined || parity === undefined) {
    const speeds = baudRates.toSorted((a, b) => a - b);
    throw new Refusal("port.settings", { settings: text, speeds }, "line");
  }
  return {
    baudRate,
    dataBits: dataBits === "7" ? 7 : 8,
    parity: parities[parity] ?? "none",
    stopBits: stopBits === "2" ? 2 : 1,
    flowControl: flowControls[flow ?? ""] ?? "none",
  };
}

/** Settings as text, the way `parseLineSettings` reads them. */
export function lineSettingsText(line: LineSettings): string {
  const flow = line.flowControl === "none" ? "" : `-${line.flowControl}`;
  return `${line.baudRate}-${line.dataBits}${line.parity.charAt(0)}${line.stopBits}${flow}`;
}
