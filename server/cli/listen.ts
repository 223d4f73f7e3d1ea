import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { requestBytes } from "../../drivers/asked-lines.ts";
import type { Balance } from "../../drivers/balance.ts";
import { balanceAt, type ToldOfBalance } from "../../drivers/balance-at.ts";
import { detect } from "../../drivers/detection.ts";
import { listScales } from "../../drivers/hid/scales.ts";
import { type LineEnd, lineEnds } from "../../drivers/known-end.ts";
import type { Profile } from "../../drivers/learning/profile.ts";
import { importProfile } from "../../drivers/learning/stored.ts";
import { listPorts } from "../../drivers/ports.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import { createSimulatedBalance } from "../../drivers/simulated-balance.ts";

const usage = `underhook listen PORT [--line 9600-8n1] [--profile FILE] [--raw]

Prints what a balance says as JSON Lines until it is interrupted, or until the port has been gone for a while.
PORT is a serial port, best by its name under /dev/serial/by-id; a network balance as tcp://host:port; a USB scale as
/dev/hidrawN; or "simulated" for a balance that needs no cable.

  --line SETTINGS   speed, data bits, parity, stop bits (default 9600-8n1); "find" finds them by listening
  --profile FILE    learned lines of this balance, as saved on the page of the balance
  --raw             the lines as received, escaped and not read: keys at and raw
  --end NAME        what alone ends a line: crlf, cr or lf (default: any of them)
  --shape NAME      the one shape of its lines (default: any)
  --comma MEANS     what a comma in a number means: decimal or thousands
  --decimals N      decimals of the display, for lines that leave the point out
  --ask TEXT        a request from the balance's manual, sent twice a second; escapes \\r \\n \\xNN. Typing it is agreeing to it
  --patience S      seconds of silence before they are told (default 2)
  --give-up S       seconds after which a port that is gone is gone for good (default 60)`;

const options = {
  line: { type: "string" },
  profile: { type: "string" },
  raw: { type: "boolean", default: false },
  end: { type: "string" },
  shape: { type: "string" },
  comma: { type: "string" },
  decimals: { type: "string" },
  ask: { type: "string" },
  patience: { type: "string" },
  "give-up": { type: "string", default: "60" },
  help: { type: "boolean", default: false },
} as const;

const parsed = (args: string[]) => parseArgs({ args, allowPositionals: true, options });
type Values = ReturnType<typeof parsed>["values"];

/** `underhook listen`: 0 when interrupted, 1 when the port is gone for good or not found out, 2 for wrong arguments. */
export async function run(args: string[]): Promise<number> {
  let balance: Balance | null;
  let values: Values;
  try {
    const { values: given, positionals } = parsed(args);
    values = given;
    if (values.help) {
      console.log(usage);
      return 0;
    }
    const [port, ...rest] = positionals;
    if (port === undefined || rest.length > 0)
      throw new RangeError(
        `underhook listen wants one PORT and got ${positionals.length}.\n${portsInWords()}\n\n${usage}`,
      );
    balance = port === "simulated" ? demonstration() : await opened(port, values);
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    return 2;
  }
  return balance ? print(balance, values.raw, seconds("--give-up", values["give-up"]) * 1000) : 1;
}

/** Prints records until interrupted (0) or until nothing but absence was told for so long (1). */
async function print(balance: Balance, raw: boolean, giveUpMs: number): Promise<number> {
  let givingUp: NodeJS.Timeout | undefined;
  const ended = new Promise<number>((end) => {
    process.once("SIGINT", () => end(0));
    process.once("SIGTERM", () => end(0));
    // Whoever read our lines has gone: there is nobody to print for.
    process.stdout.once("error", () => end(0));
    givingUp = setTimeout(end, giveUpMs, 1);
    balance.onLine((record) => {
      const kind = record.event?.kind;
      if (kind !== "refused") clearTimeout(givingUp);
      if (kind === "lost") givingUp = setTimeout(end, giveUpMs, 1);
      console.log(
        raw && record.raw !== "" ? JSON.stringify({ at: record.at, raw: record.raw }) : jsonLine(record),
      );
    });
  });
  balance.start();
  const status = await ended;
  clearTimeout(givingUp);
  if (status === 1)
    console.error(`The ${balance.name} has been gone for ${giveUpMs / 1000} s: gone for good.`);
  await balance.stop();
  return status;
}

/** One record as the line that is printed: at, raw, and either reading or event. */
function jsonLine({ at, raw, reading, event }: LineRecord): string {
  if (event) return JSON.stringify({ at, raw, event: { kind: event.kind, says: event.says } });
  const { text, unit, grams, steady } = reading;
  return JSON.stringify({ at, raw, reading: { text, unit, grams, steady } });
}

async function opened(port: string, values: Values): Promise<Balance | null> {
  const told = toldOf(values);
  if (values.line !== "find") return balanceAt(port, told);
  console.error("Listening at one setting after the other; this takes up to a minute.");
  const request = told.ask && requestBytes(told.ask);
  const found = await detect({ path: port, ...(request && { request }) });
  for (const { line, says, first } of found.tried)
    console.error(`  ${line.padEnd(11)} ${says}${first === "" ? "" : ` First: ${first}`}`);
  console.error(found.says);
  if (found.line === null) return null;
  return balanceAt(port, { ...told, line: found.line });
}

function toldOf(values: Values): ToldOfBalance {
  const { end, comma, decimals, ask, patience } = values;
  if (end !== undefined && !Object.hasOwn(lineEnds, end))
    throw new RangeError(`--end "${end}" is no line end. Right: ${Object.keys(lineEnds).join(", ")}.`);
  if (comma !== undefined && comma !== "decimal" && comma !== "thousands")
    throw new RangeError(`--comma "${comma}" is not understood. Right: decimal or thousands.`);
  if (decimals !== undefined && !/^\d$/.test(decimals))
    throw new RangeError(`--decimals "${decimals}" is not understood. Right: a whole number from 0 to 9.`);
  return {
    line: values.line,
    lineEnd: end as LineEnd | undefined,
    shape: values.shape,
    comma,
    impliedDecimals: decimals === undefined ? undefined : Number(decimals),
    profile: values.profile === undefined ? undefined : profileFrom(values.profile),
    ask: ask === undefined ? undefined : { request: ask, when: "timer", ownerAgreed: true },
    patienceMs: patience === undefined ? undefined : seconds("--patience", patience) * 1000,
  };
}

function profileFrom(path: string): Profile {
  let text: string;
  try {
    text = readFileSync(path, "utf8");
  } catch (error) {
    throw new RangeError(
      `The profile ${path} cannot be read: ${(error as Error).message}. Right: a file that was saved on the page of the balance.`,
    );
  }
  const imported = importProfile(text);
  if (imported.profile) return imported.profile;
  throw new RangeError(`${path}: ${imported.refused}`);
}

function seconds(option: string, text: string): number {
  if (!/^\d{1,6}(\.\d+)?$/.test(text))
    throw new RangeError(`${option} "${text}" is not understood. Right: seconds, such as 2 or 0.5.`);
  return Number(text);
}

function portsInWords(): string {
  const ports = [
    ...listPorts().map(({ says }) => says),
    ...listScales().map(({ path, identity }) => `${path}: ${identity}`),
  ];
  if (ports.length === 0) return "No serial port and no USB scale is plugged in.";
  return ["Plugged in:", ...ports.map((says) => `  ${says}`)].join("\n");
}

/** A simulated balance that is given an invented piece, so that there is something to see. */
function demonstration(): Balance {
  const balance = createSimulatedBalance({ seed: Date.now() });
  balance.put({ name: "invented silver piece", massGrams: 31.1035, densityGPerCm3: 10.49 });
  return balance;
}
