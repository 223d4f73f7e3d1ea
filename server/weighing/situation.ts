import { toGrams } from "../../calibration/units.ts";
import { type Evaluation, isRefused } from "../compute/evaluation.ts";
import { omitUndefined } from "../compute/omit-undefined.ts";
import type { Library } from "../metals/library.ts";
import { methods, type Role } from "../methods/index.ts";
import type { Situation } from "./checks/situation.ts";
import { type Capture, type Item, standing } from "./item.ts";
import { repeatsShare } from "./repeats-share.ts";
import type { balanceFor } from "./request.ts";
import { stepsOf } from "./request-situation.ts";
import { liquidTemperature, liquidTemperatures, sensedAir } from "./sensed.ts";
import { situationClaim } from "./situation-claim.ts";
import { statedLiquidGPerCm3 } from "./stated-liquid.ts";

/** What the procedure watch is told of a piece, as far as it goes. */
export function situationOf(
  item: Item,
  balance: ReturnType<typeof balanceFor>,
  evaluation: Evaluation | undefined,
  library: Library,
): Situation {
  const { method, details } = item;
  const of = (role: Role) => standing(item, role).map(shownBy);
  const [wet, full] = methods[method].loads
    .slice(1)
    .map(({ role }) => role)
    .reverse();
  const hanger = details.hanger?.in_liquid;
  const room = details.air?.temperature_c ?? sensedAir(item)?.temperature_c;
  const evaluated = evaluation && !isRefused(evaluation) ? evaluation.statement : undefined;
  return omitUndefined({
    method,
    dry: of("dry"),
    wet: wet ? of(wet) : [],
    flaskFull: full && of(full),
    dryAfter: of("dry-after"),
    stated: details.method,
    zeros: zerosOf(item),
    paired: details.paired === true,
    hangerGrams: hanger && Number(toGrams(hanger.text, hanger.unit)),
    waterCelsius: liquidTemperature(item)?.celsius,
    liquidGPerCm3: statedLiquidGPerCm3(details),
    sensors: sensorsOf(item),
    roomCelsius: room === undefined ? undefined : Number(room),
    claim: situationClaim(item.claim, library),
    density: evaluated && {
      valueGPerCm3: evaluated.density_g_cm3,
      expandedGPerCm3: evaluated.expanded_g_cm3,
    },
    repeatsShare: evaluated && repeatsShare(evaluated.budget),
    balance: stepsOf(balance),
  });
}

/** What sensors showed with the readings that count, and which were silent; undefined where there is none. */
function sensorsOf(item: Item): Situation["sensors"] {
  const captures = item.captures.filter(({ excluded }) => excluded === undefined);
  if (!captures.some(({ sensed, silent }) => sensed || silent)) return undefined;
  const wet = captures.filter(({ role }) => role !== "dry");
  return {
    liquid: captures
      .flatMap(liquidTemperatures)
      .map(({ sensor, value, half_width, text, unit }) =>
        omitUndefined({ sensor, celsius: value, shown: { text, unit }, halfWidth: half_width }),
      ),
    silent: [...new Set(wet.flatMap(({ silent = [] }) => silent))],
    typed: item.waterCelsius !== undefined,
  };
}

const shownBy = ({ at, text, unit, unmoved, atRest }: Capture) => ({
  at,
  text,
  unit,
  ...(unmoved ? { unmoved } : {}),
  ...(atRest?.flags.includes("creep") ? { crept: true as const } : {}),
  ...(atRest?.possible_g ? { possibleGrams: atRest.possible_g } : {}),
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
