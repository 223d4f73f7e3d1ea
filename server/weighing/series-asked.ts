import { uOfPossible } from "../../calibration/stable-reading/possible-creep.ts";
import { methods, rolesBeside } from "../methods/index.ts";
import type { Capture, Item } from "./item.ts";

const grams = ({ grams: text }: Capture) => text;

/** The standing readings of a piece in the order they were taken. */
const inOrder = ({ captures }: Item) => captures.filter(({ excluded }) => excluded === undefined);

/**
 * The readings of one load in the form of a compute request, in g, with the zeros that belong to them. Hung, one zero
 * serves both weighings and the nearest on either side counts. Otherwise the vessel is put on or taken off in between,
 * and only a zero with no other load in between counts; one after the lift is low by the liquid the piece took along,
 * so that a rise has none without a drift fit. Zeros of another balance are no zeros of this one.
 */
export function seriesAsked(item: Item, captures: readonly Capture[]) {
  const { details } = item;
  const { zeros, loads } = methods[item.method];
  const role = captures[0]?.role;
  const losesLiquid = zeros === "of-vessel" && role === loads.at(-1)?.role;
  if (losesLiquid && details.drift_fit !== undefined)
    return { timed: timedReadings(item, captures), lifted: details.drift_fit, ...driftOf(captures) };
  const readings = { readings: captures.map(grams), ...driftOf(captures) };
  const all = inOrder(item);
  const from = all.findIndex(({ id }) => id === captures[0]?.id);
  const to = all.findIndex(({ id }) => id === captures.at(-1)?.id);
  const near = (line: readonly Capture[]) => {
    const end = zeros === "of-hanger" ? -1 : line.findIndex((one) => isLoad(one) && one.role !== role);
    return (end < 0 ? line : line.slice(0, end)).find((one) => isZeroOf(one, captures))?.grams;
  };
  const before = near(all.slice(0, Math.max(0, from)).reverse());
  const after = losesLiquid ? undefined : near(all.slice(to + 1));
  return {
    ...readings,
    ...(before === undefined ? {} : { zero_before: before }),
    ...(after === undefined ? {} : { zero_after: after }),
  };
}

/** What the readings might still have drifted, as mean of each, since they drift alike. Bubbles hang on no dry piece. */
function driftOf(captures: readonly Capture[]) {
  const total = captures.reduce((sum, { role, atRest }) => {
    const { drift_u_g = 0, possible_g = 0 } = atRest ?? {};
    return sum + Math.hypot(drift_u_g, role === "dry" ? 0 : uOfPossible(possible_g));
  }, 0);
  return total > 0 ? { drift_u_g: total / captures.length } : {};
}

const isLoad = ({ role }: Capture) => !rolesBeside.some((beside) => beside === role);

const isZeroOf = ({ role, balance }: Capture, captures: readonly Capture[]) =>
  role === "zero" && balance === captures[0]?.balance;

/** Zeros and readings with their times from the first on, s: the drift shows in them. Zeros of another load stay out. */
function timedReadings(item: Item, captures: readonly Capture[]) {
  const all = inOrder(item);
  const own = all.filter((one) => captures.includes(one) || isZeroOf(one, captures));
  const lastOther = all.findLastIndex(
    (one) => isLoad(one) && !captures.includes(one) && all.indexOf(captures[0]!) > all.indexOf(one),
  );
  const looked = own.filter((one) => all.indexOf(one) > lastOther);
  const start = Date.parse(looked[0]?.at ?? "");
  return looked.map((one) => {
    const at_s = (Date.parse(one.at) - start) / 1000;
    return one.role === "zero" ? { at_s, zero: one.grams } : { at_s, reading: one.grams };
  });
}
