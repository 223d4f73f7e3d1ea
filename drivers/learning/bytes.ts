import type { Ending, Parity, Profile } from "./profile.ts";
import type { Chunk } from "./recording.ts";
import type { Typed } from "./typed.ts";

const ones = (byte: number) => {
  let rest = byte;
  let count = 0;
  for (; rest > 0; rest >>= 1) count += rest & 1;
  return count;
};

/** Share of bytes that must agree before the eighth bit is called a parity bit; noise may spoil the others. */
const enough = 0.97;

/**
 * What the eighth bit of a whole recording carries. Seven data bits with parity that are received as eight without
 * show it: every byte comes out even (or odd) in its count of ones.
 */
export function parityOf(bytes: Uint8Array): Parity {
  let high = 0;
  let even = 0;
  for (const byte of bytes) {
    if (byte > 0x7f) high += 1;
    if (ones(byte) % 2 === 0) even += 1;
  }
  const share = (count: number) => count / Math.max(1, bytes.length);
  // Blanks are odd by themselves: in a line filled up with them few bytes need their parity bit.
  if (share(high) < 0.005) return "none";
  if (share(high) >= enough) return "mark";
  if (share(even) >= enough) return "even";
  if (share(bytes.length - even) >= enough) return "odd";
  return "none";
}

/** True when every byte carries the parity it should. With "none" nothing can be told, so it holds. */
export function parityHolds(bytes: Uint8Array, parity: Parity): boolean {
  if (parity === "none") return true;
  if (parity === "mark") return bytes.every((byte) => byte > 0x7f);
  return bytes.every((byte) => ones(byte) % 2 === (parity === "even" ? 0 : 1));
}

/** The bytes without their parity bit. */
export function withoutParity(bytes: Uint8Array, parity: Parity): Uint8Array {
  return parity === "none" ? bytes : bytes.map((byte) => byte & 0x7f);
}

/** Text of a framed line: CR and LF behind the closing character are no part of it. */
const framedText = (body: Uint8Array) => textOf(body).replace(/[\r\n]+$/, "");

/** Bytes as text: UTF-8 where it is that, Latin-1 otherwise. XON, XOFF, byte-order marks and padding NULs are no text. */
function textOf(bytes: Uint8Array): string {
  let text = Buffer.from(bytes).toString("latin1");
  if (bytes.some((byte) => byte > 0x7f))
    try {
      text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    } catch {
      // not UTF-8: Latin-1 stands
    }
  // A NUL inside a line may stand for a lost character, so only those at its ends are taken off.
  return text
    .replace(/[\x11\x13\uFEFF]/g, "")
    .replace(/^\0+|\0+$/g, "")
    .replace(/\u00A0/g, " ");
}

/** Where a whole number stands in a frame of bytes, and how it is written there. */
export type BinaryNumber = NonNullable<Profile["binary"]>;

const numberWriting = [
  "high-byte-first",
  "low-byte-first",
  "packed-decimals",
  "packed-decimals-low-first",
] as const;

/** Bytes that come together, with nothing for so long before them, begin a frame, ms. */
const pauseMs = 15;

/** Frames of one length that begin alike, told by the pauses between them; null when there are none. */
export function framesOf(chunks: readonly Chunk[]): Extract<Ending, { kind: "length" }> | null {
  const bursts: number[][] = [];
  let lastMs = Number.NEGATIVE_INFINITY;
  for (const { atMs, bytes } of chunks) {
    if (atMs - lastMs > pauseMs) bursts.push([]);
    bursts.at(-1)!.push(...bytes);
    lastMs = atMs;
  }
  const lengths = [...new Set(bursts.map(({ length }) => length))].filter((n) => n >= 4 && n <= 64);
  const found = lengths.flatMap((length) => {
    // a network puts several frames into one packet
    const frames = bursts
      .filter((burst) => burst.length % length === 0)
      .flatMap((burst) => cut(burst, length));
    const start = startOf(frames);
    const enough = frames.length >= 8 && bursts.filter((burst) => burst.length === length).length >= 3;
    return enough && start.length > 0 ? [{ length, start, bytes: frames.length * length }] : [];
  });
  const all = bursts.reduce((sum, { length }) => sum + length, 0);
  const [best] = found.sort((one, other) => other.bytes - one.bytes || one.length - other.length);
  if (!best || best.bytes < 0.3 * all) return null;
  return { kind: "length", bytes: best.length, start: Buffer.from(best.start).toString("hex") };
}

const cut = (burst: readonly number[], length: number) =>
  Array.from({ length: burst.length / length }, (_, i) => burst.slice(i * length, (i + 1) * length));

/** The bytes with which every frame begins. */
function startOf(frames: readonly (readonly number[])[]): number[] {
  const start: number[] = [];
  for (let at = 0; at < 3; at += 1) {
    const byte = frames[0]?.[at] ?? 0;
    // a number may begin with zeros, or with ones when it is below zero
    if (byte === 0 || (at > 0 && byte === 0xff) || !frames.every((frame) => frame[at] === byte)) break;
    start.push(byte);
  }
  return start;
}

/** A frame as text: its number in decimal digits, what stands before and behind it in hexadecimal ones. Null when it has none. */
function frameText(frame: Uint8Array, { at, size, writes }: BinaryNumber): string | null {
  const field = frame.subarray(at, at + size);
  if (field.length < size) return null;
  const number =
    writes === "packed-decimals"
      ? packed(field)
      : writes === "packed-decimals-low-first"
        ? packed(field.toReversed())
        : whole(field, writes);
  if (number === null) return null;
  const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString("hex");
  return `${hex(frame.subarray(0, at))}: ${number} :${hex(frame.subarray(at + size))}`;
}

function packed(field: Uint8Array): string | null {
  const digits = Buffer.from(field).toString("hex");
  return /^\d+$/.test(digits) ? digits.replace(/^0+(?=\d)/, "") : null;
}

/** Two's complement. */
function whole(field: Uint8Array, writes: "high-byte-first" | "low-byte-first"): string {
  const bytes = writes === "high-byte-first" ? [...field] : [...field].reverse();
  const unsigned = bytes.reduce((value, byte) => value * 256 + byte, 0);
  const range = 256 ** bytes.length;
  return String(unsigned >= range / 2 ? unsigned - range : unsigned);
}

/**
 * Every place in the frames at which each typed value stands, its point left out; the widest of those that agree. A size
 * without its sign is looked for where no place has both.
 */
export function binaryNumbers(
  length: number,
  typed: readonly Typed[],
  bodyOf: (bytes: Uint8Array) => Uint8Array,
): BinaryNumber[] {
  const signed = placesOf(length, typed, bodyOf, true);
  return signed.length > 0 ? signed : placesOf(length, typed, bodyOf, false);
}

function placesOf(
  length: number,
  typed: readonly Typed[],
  bodyOf: (bytes: Uint8Array) => Uint8Array,
  signed: boolean,
): BinaryNumber[] {
  const found: BinaryNumber[] = [];
  for (const writes of numberWriting)
    for (const size of [5, 4, 3, 2])
      for (let at = 1; at + size <= length; at += 1) {
        const place: BinaryNumber = { at, size, writes };
        const isIn = (value: Typed) =>
          value.lines.some(({ bytes }) => {
            const number = /: (-?\d+) :/.exec(frameText(bodyOf(bytes), place) ?? "")?.[1];
            if (number === undefined || number.replace("-", "") !== value.digits) return false;
            return number.startsWith("-") === (signed && value.negative);
          });
        const inside = found.some(
          (wider) => wider.writes === writes && wider.at <= at && at + size <= wider.at + wider.size,
        );
        if (!inside && typed.filter(({ digits }) => digits !== "").every(isIn)) found.push(place);
      }
  return found;
}

/** The text of a line without parity, end and check. */
export function bodyText(
  body: Uint8Array,
  { ending, binary }: { ending: Ending; binary?: BinaryNumber | null | undefined },
): string {
  if (binary) return frameText(body, binary) ?? "";
  return ending.kind === "frame" ? framedText(body) : textOf(body);
}
