import { lastPlace } from "../../calibration/decimal.ts";
import { message } from "../../calibration/message.ts";
import type { Verdict } from "../../drivers/auto-capture.ts";
import { lightestItem, solidMetal } from "../metals/possible-densities.ts";
import { methods, type Role } from "../methods/index.ts";
import { roughDensity } from "../weighing/checks/situation.ts";
import { type Item, meanGrams, standing } from "../weighing/item.ts";
import { statedLiquidGPerCm3 } from "../weighing/stated-liquid.ts";

/** Two loads this share apart are one: what a scale of tenths of a gram still tells. */
const same = 0.005;

/**
 * Whether a load at rest, g, can be the reading of this role. The first reading can be anything; one in the liquid is
 * held against the dry one.
 */
export function loadVerdict(item: Item, role: Role, grams: number): Verdict {
  const { wetReading, loads } = methods[item.method];
  const dry = meanOf(item, "dry");
  if (role === "dry" || dry === undefined || role !== loads.at(-1)?.role) return "take";
  const full = loads.length > 2 ? meanOf(item, loads[1]!.role) : 0;
  if (full === undefined) return "take";
  const displaced =
    wetReading === "remaining" ? dry - grams : wetReading === "contents" ? full + dry - grams : grams;
  const params = { grams, dry_g: dry };
  if (grams > (1 + same) * (full + dry)) return { refused: message("balance.hands-free.too-heavy", params) };
  // nobody knows yet how much a liquid that was measured with a body lifts
  if (item.details.liquid?.kind === "measured") return "take";
  const rough = (of: number) => roughDensity(dry, of, statedLiquidGPerCm3(item.details));
  const step = lastPlace(standing(item, "dry")[0]!.grams);
  const tooDense = displaced <= 0 || rough(displaced + step) > solidMetal.high;
  const tooLight = displaced > step && rough(displaced - step) < lightestItem;
  if (wetReading === "displaced" ? tooLight : tooDense)
    return { refused: message("balance.hands-free.still-dry", params) };
  return tooDense || tooLight ? { refused: message("balance.hands-free.not-this-piece", params) } : "take";
}

function meanOf(item: Item, role: Role): number | undefined {
  const readings = standing(item, role);
  return readings.length === 0 ? undefined : meanGrams(readings);
}
