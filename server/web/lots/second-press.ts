import { isMassUnit, stepGrams } from "../../../calibration/units.ts";
import type { Role } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import type { Live } from "../../station/scale.ts";
import type { Seen } from "../about.ts";

/** A display at rest flickers by so many of its steps at most [common practice]. */
const flickerSteps = 2;

/** True for a second press of the key: its page was drawn before the reading that it asks for was there. */
export function isAskedTwice(
  { about, item }: Pick<Bench, "about" | "item">,
  { subject, seen }: Seen,
  role: Role,
): boolean {
  return about.subject === subject && seen < about.seen && item?.captures.at(-1)?.role === role;
}

/** True while the display has shown nothing but the reading taken last, of another role, ever since it was taken. */
export function hasNotMoved(
  { scale, item }: Pick<Bench, "scale" | "item">,
  role: string | undefined,
): boolean {
  const last = item?.captures.filter(({ excluded }) => excluded === undefined).at(-1);
  const live = scale?.live();
  if (!last || last.role === role || last.takenBy === "typed" || !live) return false;
  return isUnmovedSince(live, last);
}

/** True while the display has shown nothing but this reading ever since it was taken. */
export function isUnmovedSince(
  live: Live,
  last: { text: string; unit: string; grams: string; at: string },
): boolean {
  if (live.state !== "reading") return false;
  if (!live.trace || !isMassUnit(last.unit)) return last.text === live.text && last.unit === live.unit;
  const secondsAgo = (Date.now() - Date.parse(last.at)) / 1000;
  if (!live.trace.some((point) => point.secondsAgo >= secondsAgo)) return false;
  const within = flickerSteps * stepGrams(last.text, last.unit) * (1 + 1e-9);
  return live.trace
    .filter((point) => point.secondsAgo <= secondsAgo)
    .every(({ grams }) => Math.abs(grams - Number(last.grams)) <= within);
}
