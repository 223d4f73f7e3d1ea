import { parseArgs } from "node:util";
import { Refusal } from "../../calibration/refusal.ts";
import type { BalanceSettings } from "../../drivers/balance-at.ts";
import { isLineEnd, type LineEnd, lineEnds } from "../../drivers/known-end.ts";
import type { Comma } from "../../drivers/number.ts";
import { type Locale, locales } from "../../views/messages/language.ts";
import { profileIn } from "../station/cable-from.ts";

export const usage = `underhook listen PORT [--line 9600-8n1] [--profile FILE] [--raw]
underhook listen --recording FILE [--profile FILE] [--raw]
Either with --take.

Prints what a balance says as JSON Lines until it is interrupted, or until the port has been gone for a while.
PORT is a serial port, best by its name under /dev/serial/by-id; a network balance as tcp://host:port; a USB scale as
/dev/hidrawN; or "simulated" for a balance that needs no cable.

  --line SETTINGS   speed, data bits, parity, stop bits (default 9600-8n1); "find" finds them by listening
  --profile FILE    learned lines of this balance, as saved on the page of the balance
  --recording FILE  plays back a recording instead: JSON Lines of at_ms with hex, step or displayed
  --take            takes every load that comes to rest once, and watches it until it is lifted: at_ms with taken or event
  --raw             the lines as received, escaped and not read: keys at and raw
  --end NAME        what alone ends a line: crlf, cr or lf (default: any of them)
  --shape NAME      the one format of its lines (default: any)
  --comma MEANS     what a comma in a number means: decimal or thousands
  --decimals N      decimals of the display, for lines that leave the point out
  --ask TEXT        a request from the balance's manual, sent twice a second; escapes \\r \\n \\xNN. Typing it is agreeing to it
  --patience S      seconds of silence before they are told (default 2)
  --give-up S       seconds after which a port that is gone is gone for good (default 60)
  --lang LANGUAGE   language of the messages: ${locales.join(", ")} (default en)`;

const options = {
  line: { type: "string" },
  profile: { type: "string" },
  recording: { type: "string" },
  raw: { type: "boolean", default: false },
  take: { type: "boolean", default: false },
  end: { type: "string" },
  shape: { type: "string" },
  comma: { type: "string" },
  decimals: { type: "string" },
  ask: { type: "string" },
  patience: { type: "string" },
  "give-up": { type: "string", default: "60" },
  lang: { type: "string", default: "en" },
  help: { type: "boolean", default: false },
} as const;

/** The arguments as they were given. Throws TypeError for an option that does not exist. */
export const givenIn = (args: string[]) => parseArgs({ args, allowPositionals: true, options });

type Values = ReturnType<typeof givenIn>["values"];

/** What is asked for, each option checked. */
export interface ListenOptions {
  settings: BalanceSettings;
  /** settings are found by listening */
  find: boolean;
  raw: boolean;
  /** loads are printed in place of lines */
  take: boolean;
  /** the file of a recording to play back in place of a port */
  recording?: string | undefined;
  giveUpMs: number;
}

/** Throws Refusal naming the first option that cannot be right, before anything is opened. */
export function listenOptions(values: Values): ListenOptions {
  const { line, end, comma, decimals, ask, patience, profile } = values;
  if (decimals !== undefined && !/^\d$/.test(decimals)) throw wrong("--decimals", decimals, ["0 … 9"]);
  const find = line === "find";
  return {
    find,
    raw: values.raw,
    take: values.take,
    recording: values.recording,
    giveUpMs: milliseconds("--give-up", values["give-up"]),
    settings: {
      line: find ? undefined : line,
      lineEnd: end === undefined ? undefined : lineEndOf(end),
      shape: values.shape,
      comma: comma === undefined ? undefined : commaOf(comma),
      impliedDecimals: decimals === undefined ? undefined : Number(decimals),
      profile: profile === undefined ? undefined : profileIn(profile),
      ask: ask === undefined ? undefined : { request: ask, when: "timer", ownerAgreed: true },
      patienceMs: patience === undefined ? undefined : milliseconds("--patience", patience),
    },
  };
}

/** The language of the messages. Throws Refusal for one that is not there. */
export function localeOf({ lang }: { lang: string }): Locale {
  const locale = locales.find((one) => one === lang);
  if (locale === undefined) throw wrong("--lang", lang, locales);
  return locale;
}

function wrong(option: string, value: string, right: readonly string[]): Refusal {
  return new Refusal("listen.option", { option, value, right: { anyOf: right } }, option);
}

function lineEndOf(end: string): LineEnd {
  if (!isLineEnd(end)) throw wrong("--end", end, Object.keys(lineEnds));
  return end;
}

function commaOf(comma: string): Comma {
  if (comma !== "decimal" && comma !== "thousands") throw wrong("--comma", comma, ["decimal", "thousands"]);
  return comma;
}

function milliseconds(option: string, text: string): number {
  if (!/^\d{1,6}(\.\d+)?$/.test(text)) throw new Refusal("listen.seconds", { option, value: text }, option);
  return Number(text) * 1000;
}
