import { type Message, message } from "../calibration/message.ts";
import { Refusal } from "../calibration/refusal.ts";
import type { OpenCable } from "./cable.ts";
import { type Clock, systemClock } from "./clock.ts";
import { escapeBytes } from "./escape.ts";
import { createLineCutter } from "./line.ts";
import { baudRates, type LineSettings, lineSettingsText } from "./line-settings.ts";
import { type EighthBit, eighthBit } from "./parity.ts";
import { errorFacts } from "./port-error.ts";
import { openSerialCable } from "./serial-balance.ts";
import { readShape, shapes } from "./shapes/index.ts";
import { shapeMessage } from "./shapes/shape.ts";

/** What came back at one setting. */
export interface Tried {
  /** "9600-8n1" */
  line: string;
  bytes: number;
  /** the first bytes, escaped */
  first: string;
  message: Message;
  /** length of frames that came in place of text, bytes */
  frame?: number;
}

/** `line` null: no setting gave readable text. `shape` null: the text is readable but of no generic shape. */
export interface Detection {
  line: string | null;
  shape: string | null;
  /** the lines that were read, as received, escaped */
  lines: string[];
  tried: Tried[];
  /** the outcome and what to do next */
  message: Message;
}

export interface DetectionOptions {
  path: string;
  clock?: Clock;
  /** how long to listen at each setting, ms */
  listenMs?: number;
  /** a request the owner typed and agreed to, as bytes; without one nothing is sent */
  request?: Uint8Array;
  open?: (path: string, line: LineSettings, clock: Clock) => OpenCable;
  signal?: AbortSignal;
  /** told the setting that is listened at next, and what was tried before it */
  onStep?: (now: string, tried: readonly Tried[]) => void;
}

/** Lines that are enough to judge by, and bytes without a line that are enough to give up a setting. */
const enoughLines = 6;
const enoughNoise = 80;

/**
 * Finds speed, bits, parity and shape of a balance by listening at one setting after the other. Seven bits with
 * parity, heard as eight, are known by their fingerprint, so every speed is tried with eight bits first.
 */
export async function detect(options: DetectionOptions): Promise<Detection> {
  const tried: Tried[] = [];
  for (const line of settingsToTry()) {
    if (options.signal?.aborted) break;
    options.onStep?.(lineSettingsText(line), tried);
    const heard = await listen(options, line);
    if (heard instanceof Refusal) {
      tried.push({ line: lineSettingsText(line), bytes: 0, first: "", message: heard });
      return { line: null, shape: null, lines: [], tried, message: heard };
    }
    const { outcome, result } = judged(line, heard);
    tried.push(outcome);
    if (result) return { ...result, tried };
  }
  return { line: null, shape: null, lines: [], tried, message: nothingFound(tried) };
}

function settingsToTry(): LineSettings[] {
  const set = (baudRate: number, parity: LineSettings["parity"]): LineSettings => ({
    baudRate,
    dataBits: 8,
    parity,
    stopBits: 1,
    flowControl: "none",
  });
  return [
    ...baudRates.map((baudRate) => set(baudRate, "none")),
    ...baudRates.slice(0, 4).flatMap((baudRate) => [set(baudRate, "even"), set(baudRate, "odd")]),
  ];
}

interface Heard {
  bytes: Uint8Array;
  lines: { raw: string; text: string }[];
}

async function listen(
  { path, clock = systemClock, listenMs = 3000, request, open = openSerialCable, signal }: DetectionOptions,
  line: LineSettings,
): Promise<Heard | Refusal> {
  const bytes: number[] = [];
  const lines: Heard["lines"] = [];
  const cutter = createLineCutter({
    onLine: (cut) => lines.push({ raw: escapeBytes(cut.bytes), text: cut.text }),
    onTooLong() {},
  });
  let enough = () => {};
  const waited = new Promise<void>((resolve) => {
    enough = resolve;
  });
  const callOff = clock.after(listenMs, enough);
  signal?.addEventListener("abort", enough, { once: true });
  try {
    const cable = await open(
      path,
      line,
      clock,
    )({
      bytes(chunk) {
        bytes.push(...chunk);
        cutter.push(chunk);
        if (lines.length >= enoughLines || (lines.length === 0 && bytes.length >= enoughNoise)) enough();
      },
      report() {},
      lost: enough,
    });
    if (request) cable.send(request);
    await waited;
    await cable.close();
  } catch (error) {
    if (error instanceof Refusal) return error;
    return new Refusal("line.refused.other", { port: path, reason: errorFacts(error).message });
  } finally {
    callOff();
    signal?.removeEventListener("abort", enough);
  }
  cutter.idle();
  return { bytes: Uint8Array.from(bytes), lines };
}

function judged(line: LineSettings, { bytes, lines }: Heard) {
  const outcome = (outcomeMessage: Message): Tried => ({
    line: lineSettingsText(line),
    bytes: bytes.length,
    first: escapeBytes(bytes.subarray(0, 24)),
    message: outcomeMessage,
  });
  if (bytes.length === 0) return { outcome: outcome(message("port.search.outcome.nothing")) };
  const text = lines.filter((each) => /^[\t\x02\x03\f\x20-\x7e\u00b0-\u00b3\u2212]+$/.test(each.text));
  if (lines.length === 0 || text.length < 0.8 * lines.length)
    return { outcome: { ...outcome(message("port.search.outcome.unreadable")), ...framesOf(bytes) } };
  const found = lineSettingsText(withParity(line, eighthBit(bytes)));
  const shape = bestShape(text.map((each) => each.text));
  const raw = lines.map((each) => each.raw);
  if (!shape)
    return {
      outcome: outcome(message("port.search.outcome.no-format")),
      result: {
        line: found,
        shape: null,
        lines: raw,
        message: message("port.search.found.no-format", { settings: found }),
      },
    };
  const format = shapeMessage(shape);
  return {
    outcome: outcome(message("port.search.outcome.weights", { format })),
    result: {
      line: found,
      shape: shape.id,
      lines: raw,
      message: message("port.search.found", { settings: found, format }),
    },
  };
}

/** What the eighth bit says about a line that was heard with eight bits and no parity. */
function withParity(line: LineSettings, kind: EighthBit): LineSettings {
  if (kind === "even-parity") return { ...line, dataBits: 7, parity: "even" };
  if (kind === "odd-parity") return { ...line, dataBits: 7, parity: "odd" };
  return kind === "always-set" ? { ...line, dataBits: 7, stopBits: 2 } : line;
}

/** The shape that reads most lines as weights; among equals the one that knows about rest. */
function bestShape(lines: readonly string[]) {
  const scored = shapes.map((shape) => {
    const read = readShape(shape);
    const readings = lines.flatMap((line) => {
      const meaning = read(line);
      return meaning && "reading" in meaning ? [meaning.reading] : [];
    });
    return {
      shape,
      score: readings.length + (readings.some(({ stability }) => stability !== "unknown") ? 0.5 : 0),
    };
  });
  const best = scored.reduce((a, b) => (b.score > a.score ? b : a));
  return best.score >= 1 ? best.shape : null;
}

/** Lengths of frames that are looked for, bytes. */
const frameLengths = Array.from({ length: 29 }, (_, i) => i + 4);

/** The length of frames that begin alike again and again, where there is one: what a balance set to a binary output sends. */
function framesOf(bytes: Uint8Array): Pick<Tried, "frame"> {
  const begins = (length: number) =>
    bytes.length >= 4 * length &&
    bytes.every((byte, i) => i % length > 1 || byte === bytes[i % length]) &&
    new Set(bytes.subarray(0, length)).size > 2;
  const frame = frameLengths.find(begins);
  return frame === undefined ? {} : { frame };
}

function nothingFound(all: readonly Tried[]): Message {
  const tried = all.map(({ line, bytes }) => message("port.search.tried", { settings: line, bytes }));
  const binary = all.find(({ frame }) => frame !== undefined);
  if (binary?.frame !== undefined)
    return message("port.search.binary", { settings: binary.line, bytes: binary.frame, first: binary.first });
  return all.every(({ bytes }) => bytes === 0)
    ? message("port.search.silent", { tried })
    : message("port.search.none", { tried });
}
