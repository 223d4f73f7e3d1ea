import { toGrams } from "../../calibration/units.ts";
import { type Evaluation, isRefused } from "../compute/evaluation.ts";
import { called } from "../metals/called.ts";
import type { Library } from "../metals/library.ts";
import { methods, type Role } from "../methods/index.ts";
import type { Situation } from "./checks/situation.ts";
import { type Capture, type Item, standing } from "./item.ts";
import type { balanceFor } from "./request.ts";
import { stepsOf } from "./request-situation.ts";
import { liquidTemperature, liquidTemperatures, sensedAir } from "./sensed.ts";
import { statedLiquidGPerCm3 } from "./stated-liquid.ts";

/** Names of budget inputs that further immersions would lessen. */
const lessenedByRepeats = /repeatability/;

/** What the procedure watch is told of a piece, as far as it goes. */
export function situationOf(
  item: Item,
  balance: ReturnType<typeof balanceFor>,
  evaluation: Evaluation | undefined,
  library: Library,
): Situation {
  const of = (role: Role) => standing(item, role).map(shownBy);
  const roles = methods[item.method].loads.slice(1).map(({ role }) => role);
  const [wet, full] = roles.reverse();
  const claimed = item.claim !== undefined && library.has(item.claim) ? library.metal(item.claim) : undefined;
  const hanger = item.details.hanger?.in_liquid;
  const liquidGPerCm3 = statedLiquidGPerCm3(item.details);
  const captures = item.captures.filter(({ excluded }) => excluded === undefined);
  const water = liquidTemperature(item);
  const room = item.details.air?.temperature_c ?? sensedAir(item)?.temperature_c;
  const evaluated = evaluation && !isRefused(evaluation) ? evaluation.statement : undefined;
  return {
    method: item.method,
    dry: of("dry"),
    wet: wet ? of(wet) : [],
    ...(full ? { flaskFull: of(full) } : {}),
    dryAfter: of("dry-after"),
    stated: item.details.method,
    zeros: zerosOf(item),
    paired: item.details.paired === true,
    ...(hanger === undefined ? {} : { hangerGrams: Number(toGrams(hanger.text, hanger.unit)) }),
    ...(water === undefined ? {} : { waterCelsius: water.celsius }),
    ...(liquidGPerCm3 === undefined ? {} : { liquidGPerCm3 }),
    ...(captures.some(({ sensed, silent }) => sensed || silent)
      ? {
          sensors: {
            liquid: captures.flatMap(liquidTemperatures).map(({ sensor, value, half_width, text, unit }) => ({
              sensor,
              celsius: value,
              shown: { text, unit },
              ...(half_width === undefined ? {} : { halfWidth: half_width }),
            })),
            silent: [
              ...new Set(captures.filter(({ role }) => role !== "dry").flatMap(({ silent = [] }) => silent)),
            ],
            typed: item.waterCelsius !== undefined,
          },
        }
      : {}),
    ...(room === undefined ? {} : { roomCelsius: Number(room) }),
    ...(claimed
      ? {
          claim: {
            metal: called(claimed),
            lowGPerCm3: claimed.densityGPerCm3.low,
            highGPerCm3: claimed.densityGPerCm3.high,
          },
        }
      : {}),
    ...(evaluated
      ? {
          density: { valueGPerCm3: evaluated.density_g_cm3, expandedGPerCm3: evaluated.expanded_g_cm3 },
          repeatsShare: evaluated.budget
            .filter(({ input }) => lessenedByRepeats.test(input))
            .reduce((sum, { share }) => sum + share, 0),
        }
      : {}),
    balance: stepsOf(balance),
  };
}

const shownBy = ({ at, text, unit, unmoved, atRest }: Capture) => ({
  at,
  text,
  unit,
  ...(unmoved ? { unmoved } : {}),
  ...(atRest?.flags.includes("creep") ? { crept: true as const } : {}),
});

/** Zeros about the immersions. Of a hanger, every zero is one; otherwise those of the dry weighing had no vessel on the pan. */
function zerosOf({ method, captures }: Item) {
  const counting = captures.filter(({ excluded }) => excluded === undefined);
  const firstWet = counting.findIndex(({ role }) => role !== "dry" && role !== "zero");
  const before = counting.slice(0, Math.max(0, firstWet));
  const from =
    methods[method].zeros === "of-hanger" ? 0 : before.findLastIndex(({ role }) => role === "dry") + 1;
  return counting
    .slice(from)
    .filter(({ role }) => role === "zero")
    .map(shownBy);
}
