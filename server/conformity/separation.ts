import { entriesOf } from "../../calibration/keyed.ts";
import { type Message, message } from "../../calibration/message.ts";
import { called } from "../metals/called.ts";
import type { Metal } from "../metals/metal.ts";
import { couldLook, deadens, drags, tooPoorToDrag } from "./evidence/appearance.ts";
import { type SoundThrough, soundThrough } from "./sound-through.ts";

/** The harmless tests that can tell apart two metals which density cannot, easiest first, and the last way out. */
export const separatingTests = ["magnet", "colour", "ring", "conductivity", "sound", "laboratory"] as const;
export type SeparatingTest = (typeof separatingTests)[number];
export type HarmlessTest = Exclude<SeparatingTest, "laboratory">;

/** A test, with what it would show of each of two metals. */
export interface Separation {
  test: SeparatingTest;
  message: Message;
}

/** A coil meter on a small or curved piece is good to about 10 % (common practice): ranges must be further apart. */
const conductivityMargin = 1.15;
/** A thickness gauge on a piece whose thickness is known to 2 to 3 %: two speeds must differ by more (common practice). */
const soundMargin = 1.08;

function byMagnet(a: Metal, b: Metal): Message | null {
  const [pulled, other] = a.magnetism === "strong" ? [a, b] : [b, a];
  if (pulled.magnetism === "strong" && other.magnetism !== "strong")
    return message("separation.magnet", { pulled: called(pulled), other: called(other) });
  const [dragging, free] = drags(a) ? [a, b] : [b, a];
  return drags(dragging) && tooPoorToDrag(free)
    ? message("separation.magnet-drag", { dragging: called(dragging), other: called(free) })
    : null;
}

/** Colour where the piece is worn or scratched already: a thin skin is gone there. */
function byColour(a: Metal, b: Metal): Message | null {
  if (a.family === "cored-and-plated" || b.family === "cored-and-plated" || couldLook(a.colour, b.colour))
    return null;
  return message("separation.colour", {
    one: called(a),
    one_colour: message(`metal-page.colours.${a.colour}`),
    other: called(b),
    other_colour: message(`metal-page.colours.${b.colour}`),
  });
}

function byRing(a: Metal, b: Metal): Message | null {
  if (deadens(a) === deadens(b)) return null;
  const [dull, other] = deadens(a) ? [a, b] : [b, a];
  return message("separation.ring", { dull: called(dull), other: called(other) });
}

function byConductivity(a: Metal, b: Metal): Message | null {
  const [x, y] = [a.conductivityIacsPercent, b.conductivityIacsPercent];
  if (!x || !y || a.family === "cored-and-plated" || b.family === "cored-and-plated") return null;
  const apart = x[0] > y[1] * conductivityMargin || y[0] > x[1] * conductivityMargin;
  if (!apart) return null;
  return message("separation.conductivity", {
    one: called(a),
    one_low_iacs: x[0],
    one_high_iacs: x[1],
    other: called(b),
    other_low_iacs: y[0],
    other_high_iacs: y[1],
  });
}

function bySound(a: Metal, b: Metal): Message | null {
  const [x, y] = [soundThrough(a), soundThrough(b)];
  if (!x || !y || Math.max(x.mPerS, y.mPerS) < Math.min(x.mPerS, y.mPerS) * soundMargin) return null;
  const speed = ({ mPerS, estimated }: SoundThrough) =>
    message(estimated ? "separation.speed-about" : "separation.speed", { speed_m_s: mPerS });
  return message("separation.sound", {
    one: called(a),
    one_speed: speed(x),
    other: called(b),
    other_speed: speed(y),
  });
}

function byWeakMagnet(a: Metal, b: Metal): Message | null {
  if (a.magnetism === b.magnetism) return null;
  const [drawn, other] = a.magnetism === "weak" ? [a, b] : [b, a];
  return message("separation.magnet-weak", { drawn: called(drawn), other: called(other) });
}

/** What each harmless test would show of two metals, or null where it would not tell them apart; easiest first. */
export const separationBy: Readonly<Record<HarmlessTest, (a: Metal, b: Metal) => Message | null>> = {
  magnet: byMagnet,
  colour: byColour,
  ring: byRing,
  conductivity: byConductivity,
  sound: bySound,
};

const easiestFirst = entriesOf(separationBy);

/** The easiest harmless test that tells the two apart; a laboratory when none here does. Pure. */
export function separation(a: Metal, b: Metal): Separation {
  for (const [test, by] of easiestFirst) {
    const sentence = by(a, b);
    if (sentence) return { test, message: sentence };
  }
  const weak = byWeakMagnet(a, b);
  return weak
    ? { test: "magnet", message: weak }
    : { test: "laboratory", message: message("separation.laboratory", { one: called(a), other: called(b) }) };
}
