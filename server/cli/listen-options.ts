import { Refusal } from "../../calibration/refusal.ts";
import type { BalanceSettings } from "../../drivers/balance-at.ts";
import { isLineEnd, type LineEnd, lineEnds } from "../../drivers/known-end.ts";
import type { Comma } from "../../drivers/number.ts";
import { profileIn } from "../station/cable-from.ts";
import type { Asked } from "./command.ts";

/** The options of `underhook listen`. */
export const listenArguments = {
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
} as const;

type Values = Asked<typeof listenArguments>["values"];

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
