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
export const baudRates = [9600, 4800, 2400, 1200, 19200, 38400, 57600, 115200] as const;

const parities: Record<string, Parity> = { n: "none", e: "even", o: "odd" };
const shape = /^(\d+)-([78])([neo])([12])(?:-(rts-cts|xon-xoff))?$/;

/**
 * "9600-8n1" or "2400-7e1-xon-xoff" as settings. Throws RangeError that says what is wrong and what would be right.
 */
export function parseLineSettings(text: string): LineSettings {
  const match = shape.exec(text.toLowerCase());
  const baudRate = Number(match?.[1]);
  if (!match || !(baudRates as readonly number[]).includes(baudRate))
    throw new RangeError(
      `Line settings "${text}" are not understood. Right: speed, data bits, parity, stop bits, such as 9600-8n1 or 2400-7e1 ` +
        `(speeds ${[...baudRates].sort((a, b) => a - b).join(", ")}; parity n, e or o), then -rts-cts or -xon-xoff if the line uses it. ` +
        "The balance shows them in its menu for the interface.",
    );
  return {
    baudRate,
    dataBits: match[2] === "7" ? 7 : 8,
    parity: parities[match[3]!]!,
    stopBits: match[4] === "2" ? 2 : 1,
    flowControl: (match[5] as FlowControl | undefined) ?? "none",
  };
}

/** Settings as text, the way `parseLineSettings` reads them. */
export function lineSettingsText(line: LineSettings): string {
  const flow = line.flowControl === "none" ? "" : `-${line.flowControl}`;
  return `${line.baudRate}-${line.dataBits}${line.parity.charAt(0)}${line.stopBits}${flow}`;
}
