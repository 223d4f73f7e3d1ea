import type { grammar } from "./grammar.ts";
import type { Placed } from "./places.ts";
import type { Part } from "./profile.ts";
import type { Observed } from "./recording.ts";

/**
 * True when a run of changing digits beside the number is neither a clock nor a counter: what it says is not known, and it
 * might be the sign or the place of the point.
 */
export function unexplainedDigits(parts: readonly Part[], lines: readonly Placed[]): boolean {
  const free = parts.filter((part) => part.is === "digits");
  if (free.length === 0) return false;
  const pattern = new RegExp(`^${parts.map(loosely).join("")}$`, "s");
  const found = lines.flatMap(({ observed }) => {
    const match = pattern.exec(observed.text);
    return match ? [match.slice(1)] : [];
  });
  if (found.length < 0.8 * lines.length) return true;
  // Hours, minutes and seconds run together: the digits of all runs, one behind the other, go up.
  return (
    !free.every((_, i) => goesUp(found.map((runs) => runs[i]!))) &&
    !goesUp(found.map((runs) => runs.join("")))
  );
}

/**
 * True when free digits run straight into the number, without a blank that a greater number could fill: where the number begins
 * is not known.
 */
export const gluedDigits = (parts: readonly Part[]): boolean =>
  parts.some((part, i) => {
    const next = parts[i + 1];
    return part.is === "digits" && next?.is === "number" && next.padMost === 0;
  });

/** Goes up from line to line, and begins anew seldom. */
function goesUp(values: readonly string[]): boolean {
  let down = 0;
  let up = 0;
  for (const [i, value] of values.slice(1).entries()) {
    const before = Number(values[i]);
    if (Number(value) > before) up += 1;
    else if (Number(value) < before) down += 1;
  }
  return up > 0 && down <= Math.max(1, 0.05 * values.length);
}

const literal = (text: string) => text.replace(/[.*+?^${}()|[\]\\/-]/g, "\\$&");

function loosely(part: Part): string {
  switch (part.is) {
    case "text":
      return literal(part.text);
    case "mark":
      return `(?:${part.marks.map(({ text }) => literal(text)).join("|")})`;
    case "digits":
      return `(\\d{${part.least},${part.most}})`;
    case "other-number":
      return " *[+\\-\\u2212]? *\\d[\\d.,']*(?:\\[\\d\\])? *";
    case "pad-to":
      return " *";
    case "number":
      return ".*?";
  }
}

/** Lines this close follow each other without time to tare and lift between, ms. */
const nextMs = 1200;
/** Share of the greatest number from which on a number is far from zero. */
const farFromZero = 0.05;
const sameSize = 0.25;

/**
 * Two lines, one right after the other, of about the same size far from zero and of different signs: one of them has lost its
 * sign. So do two such pairs at any pace. Empty where there are none.
 */
export function lostSigns(readings: readonly Observed[], match: ReturnType<typeof grammar>): Observed[] {
  const values = readings.map(({ text }) => Number(match(text)?.text ?? 0));
  const far = farFromZero * Math.max(...values.map(Math.abs));
  const turns = values.flatMap((value, i) => {
    const before = values[i - 1] ?? 0;
    const [least, most] = [value, before].map(Math.abs).sort((a, b) => a - b) as [number, number];
    return value * before < 0 && least > far && most - least <= sameSize * most ? [i] : [];
  });
  const soon = turns.find((i) => readings[i]!.atMs - readings[i - 1]!.atMs <= nextMs);
  const at = soon ?? (turns.length > 1 ? turns[0] : undefined);
  return at === undefined ? [] : readings.slice(at - 1, at + 1);
}
