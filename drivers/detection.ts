import type { OpenCable } from "./cable.ts";
import { type Clock, systemClock } from "./clock.ts";
import { escapeBytes } from "./escape.ts";
import { createLineCutter } from "./line.ts";
import { baudRates, type LineSettings, lineSettingsText } from "./line-settings.ts";
import { type EighthBit, eighthBit } from "./parity.ts";
import { openSerialCable } from "./serial-balance.ts";
import { readShape, shapes } from "./shapes/index.ts";

/** What came back at one setting. */
export interface Tried {
  /** "9600-8n1" */
  line: string;
  bytes: number;
  /** the first bytes, escaped */
  first: string;
  says: string;
}

/** `line` null: no setting gave readable text. `shape` null: the text is readable but of no generic shape. */
export interface Detection {
  line: string | null;
  shape: string | null;
  /** the lines that were read, as received, escaped */
  lines: string[];
  tried: Tried[];
  /** the outcome and what to do next */
  says: string;
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
    if ("trouble" in heard) {
      tried.push({ line: lineSettingsText(line), bytes: 0, first: "", says: heard.trouble });
      return { line: null, shape: null, lines: [], tried, says: heard.trouble };
    }
    const { outcome, result } = judged(line, heard);
    tried.push(outcome);
    if (result) return { ...result, tried };
  }
  return { line: null, shape: null, lines: [], tried, says: nothingFound(tried) };
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
): Promise<Heard | { trouble: string }> {
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
    return { trouble: error instanceof Error ? error.message : String(error) };
  } finally {
    callOff();
    signal?.removeEventListener("abort", enough);
  }
  cutter.idle();
  return { bytes: Uint8Array.from(bytes), lines };
}

function judged(line: LineSettings, { bytes, lines }: Heard) {
  const outcome = (says: string): Tried => ({
    line: lineSettingsText(line),
    bytes: bytes.length,
    first: escapeBytes(bytes.subarray(0, 24)),
    says,
  });
  if (bytes.length === 0) return { outcome: outcome("Nothing came.") };
  const text = lines.filter((each) => /^[\x02\x03\f\x20-\x7e\u00b0-\u00b3\u2212]+$/.test(each.text));
  if (lines.length === 0 || text.length < 0.8 * lines.length)
    return { outcome: outcome("Characters came, but no readable lines: another speed or parity.") };
  const found = lineSettingsText(withParity(line, eighthBit(bytes)));
  const shape = bestShape(text.map((each) => each.text));
  const raw = lines.map((each) => each.raw);
  if (!shape)
    return {
      outcome: outcome("Readable lines came, but of no known shape."),
      result: {
        line: found,
        shape: null,
        lines: raw,
        says: `The line is ${found}, and its text is readable, but none of the generic shapes reads a weight in it. Let the bench learn its lines.`,
      },
    };
  return {
    outcome: outcome(`Weights came, written as ${shape.says}.`),
    result: {
      line: found,
      shape: shape.id,
      lines: raw,
      says: `The line is ${found}; its lines are ${shape.says}.`,
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
      score: readings.length + (readings.some(({ steady }) => steady !== "not-told") ? 0.5 : 0),
    };
  });
  const best = scored.reduce((a, b) => (b.score > a.score ? b : a));
  return best.score >= 1 ? best.shape : null;
}

function nothingFound(tried: readonly Tried[]): string {
  const list = tried.map(({ line, bytes }) => `${line}: ${bytes} bytes`).join("; ");
  if (tried.every(({ bytes }) => bytes === 0))
    return `Nothing came at any setting (${list}). The balance may be off, may send only on its key or when asked, or the cable may be of the wrong kind. Press its print key while the bench listens, or type the request from its manual.`;
  return `No setting gave readable lines (${list}). Look up speed, data bits and parity in the balance's menu and enter them by hand; that always works.`;
}
