import type { InventedFormat } from "./invented-format.ts";

export interface Weighing {
  /** in steps of the last decimal */
  steps: number;
  moving: boolean;
  /** moving, but nearly at rest */
  nearly: boolean;
  over: boolean;
  /** counts readings */
  index: number;
}

export interface Sent {
  /** whole lines in order, each with its bytes as they leave the balance */
  lines: Uint8Array[];
  /** what they mean together; null when they carry no weight, or were spoiled on the way */
  means: { text: string; stability: "stable" | "moving" | "unknown" } | null;
}

export function decimalTextOf(steps: number, decimals: number): string {
  const digits = String(Math.abs(steps)).padStart(decimals + 1, "0");
  const text = decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
  return steps < 0 ? `-${text}` : text;
}

/** The number as it is shown: coarse above a load where the balance has two ranges. */
function shownText({ field, decimals }: InventedFormat, steps: number): string {
  const coarse = field.coarseAbove > 0 && Math.abs(steps) > field.coarseAbove;
  return coarse
    ? decimalTextOf(Math.sign(steps) * Math.round(Math.abs(steps) / 10), decimals - 1)
    : decimalTextOf(steps, decimals);
}

function numberField(format: InventedFormat, steps: number): string {
  const { field } = format;
  const minus = field.longMinus ? "\u2212" : "-";
  const below = steps < 0 || (field.negativeZero && Object.is(steps, -0));
  let digits = shownText(format, Math.abs(steps));
  if (field.grouping !== "") {
    const [whole = "", fraction] = digits.split(".");
    const groups = whole.replace(/\B(?=(\d{3})+$)/g, field.grouping === "." ? "_" : field.grouping);
    digits = fraction === undefined ? groups : `${groups}.${fraction}`;
  }
  if (field.mark === ",") digits = digits.replace(".", ",").replaceAll("_", ".");
  else digits = digits.replaceAll("_", ".");
  if (field.mark === "implied") digits = digits.replace(".", "");
  if (field.auxiliary) digits = `${digits.slice(0, -1)}[${digits.slice(-1)}]`;
  const pinned = field.sign === "pinned-left";
  if (field.width === null) {
    const sign = below ? minus : field.plus ? "+" : pinned ? " " : "";
    return sign + digits;
  }
  const sign = below ? minus : field.plus ? "+" : " ";
  if (field.fill === "0") return sign + digits.padStart(field.width - 1, "0");
  if (field.align === "left") return (sign + digits).padEnd(field.width);
  if (pinned) return sign + digits.padStart(field.width - 1);
  return (sign.trim() + digits).padStart(field.width);
}

/** The lines of one reading. */
export function sentBy(format: InventedFormat, weighing: Weighing): Sent {
  const { state, block } = format;
  const lines = block.map((line) => {
    if (line === "weight") return weightLine(format, weighing);
    if (line === "state") return `state ${weighing.moving ? state.moving : state.steady}`;
    if (line === "gross") return `GR ${numberField(format, weighing.steps)} ${format.unit.word}`;
    if (line === "tare") return `TA ${numberField(format, 0)} ${format.unit.word}`;
    if (line === "time") return `2031-05-17 ${clock(weighing.index)}`;
    return line.label;
  });
  const bytes = lines.map((line) => framed(format, line));
  if (format.labelEvery > 0 && weighing.index % format.labelEvery === 0)
    bytes.push(framed(format, `bench 7731 at ${clock(weighing.index)}`));
  return {
    lines: bytes,
    means:
      weighing.over || (format.blindWhileMoving && weighing.moving)
        ? null
        : {
            text: shownText(format, weighing.steps),
            stability: stabilityOf(format, weighing.moving),
          },
  };
}

/** A balance that sends no number while it moves says by a number that it rests. */
function stabilityOf({ state, blindWhileMoving }: InventedFormat, moving: boolean) {
  if (blindWhileMoving) return "stable" as const;
  if (state.where === "nowhere") return "unknown" as const;
  return moving ? ("moving" as const) : ("stable" as const);
}

const clock = (index: number) =>
  [9 + Math.floor(index / 3600), Math.floor(index / 60) % 60, index % 60]
    .map((n) => String(n).padStart(2, "0"))
    .join(":");

function weightLine(format: InventedFormat, { steps, moving, nearly, over, index }: Weighing): string {
  const { state, unit, head, gap, tail } = format;
  const field = numberField(format, steps);
  const dashes = format.blindWhileMoving && moving ? "-----" : "";
  const words = over ? format.overload : dashes;
  const number = words === "" ? field : words.padEnd(field.length).slice(0, field.length);
  const still = moving ? state.moving : state.steady;
  const first = format.third !== "" && nearly ? format.third : still;
  const second = moving ? state.moving2 : state.steady2;
  const ahead = state.where === "before" || state.where === "both" ? `${first} ` : "";
  const after = state.where === "after" ? ` ${first}` : state.where === "both" ? ` ${second}` : "";
  const zero = format.zeroMark === "" ? "" : steps === 0 && !over ? format.zeroMark : " ";
  const unitGone = unit.where === "after-when-steady" && (moving || over);
  const behind =
    unit.where === "after" || unit.where === "after-when-steady"
      ? gap + (unitGone ? " ".repeat(unit.word.length) : unit.word)
      : "";
  const count = format.counter ? `${String(index).padStart(4, "0")};` : "";
  const time = format.clock ? `${clock(index)} ` : "";
  const tare = format.tareBehind ? ` T${numberField(format, 0)}` : "";
  const line = `${time}${head}${count}${zero}${ahead}${unit.where === "before" ? `${zero && !ahead ? " " : ""}${unit.word} ` : ""}${number}${behind}${after}${tare}${tail}`;
  return format.total === null ? line : line.padEnd(format.total);
}

function framed(format: InventedFormat, line: string): Uint8Array {
  const { frame, check, lineEnd, parity } = format;
  const payload = [...Buffer.from(frame.start + line + frame.end, "utf8")];
  const mask = parity === "none" ? 0xff : 0x7f;
  const xor = payload.reduce((a, b) => a ^ b, 0);
  const sum = payload.reduce((a, b) => a + b, 0);
  const hex = (n: number) => [...Buffer.from((n & 0xff).toString(16).padStart(2, "0").toUpperCase())];
  const checks = {
    none: [],
    "xor-byte": [xor & mask],
    "xor-hex": hex(xor),
    "sum-byte": [sum & mask],
    "sum-hex": hex(sum),
    "zero-hex": hex(-sum),
  };
  const bytes = [
    ...payload,
    ...checks[check],
    ...Buffer.from(lineEnd, "latin1"),
    ...(format.flowBytes ? [0x11] : []),
  ];
  return Uint8Array.from(bytes, (byte) => withParity(byte, parity));
}

function withParity(byte: number, parity: InventedFormat["parity"]): number {
  if (parity === "none") return byte;
  const seven = byte & 0x7f;
  if (parity === "mark") return seven | 0x80;
  const odd = [...seven.toString(2)].filter((bit) => bit === "1").length % 2;
  return odd === (parity === "odd" ? 0 : 1) ? seven | 0x80 : seven;
}
