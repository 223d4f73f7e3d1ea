import { mean } from "../../calibration/mean.ts";
import { message } from "../../calibration/message.ts";
import type { Verdict } from "../../drivers/auto-capture.ts";
import { methods, type Role } from "../methods/index.ts";
import { type Item, standing } from "../weighing/item.ts";

/** Even osmium (22.59 g/cm³) in alcohol displaces more than this share of its mass: less hangs in no liquid. */
const leastDisplaced = 1 / 30;
/** A piece that displaces more than this share of its mass is lighter than any metal of the trade (common practice). */
const mostDisplaced = 1 / 1.5;
/** Two loads this share apart are one: what a scale of tenths of a gram still tells. */
const same = 0.005;

/**
 * Whether a load at rest, g, can be the reading of this role. The first reading can be anything; one in the liquid is
 * held against the dry one.
 */
export function loadVerdict(item: Item, role: Role, grams: number): Verdict {
  const { wetReading, loads } = methods[item.method];
  const dry = meanGrams(item, "dry");
  if (role === "dry" || dry === undefined || role !== loads.at(-1)?.role) return "take";
  const full = loads.length > 2 ? meanGrams(item, loads[1]!.role) : 0;
  if (full === undefined) return "take";
  const displaced =
    wetReading === "remaining" ? dry - grams : wetReading === "contents" ? full + dry - grams : grams;
  const params = { grams, dry_g: dry };
  if (grams > (1 + same) * (full + dry)) return { refused: message("balance.hands-free.too-heavy", params) };
  const isDry =
    wetReading === "displaced" ? displaced > mostDisplaced * dry : displaced < leastDisplaced * dry;
  if (isDry) return { refused: message("balance.hands-free.still-dry", params) };
  const isOdd =
    wetReading === "displaced" ? displaced < leastDisplaced * dry : displaced > mostDisplaced * dry;
  return isOdd ? { refused: message("balance.hands-free.not-this-piece", params) } : "take";
}

function meanGrams(item: Item, role: Role): number | undefined {
  const readings = standing(item, role);
  return readings.length === 0 ? undefined : mean(readings.map(({ grams }) => Number(grams)));
}
