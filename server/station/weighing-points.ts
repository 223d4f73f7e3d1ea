import { lastPlace } from "../../calibration/decimal.ts";
import { type Message, message, type Reason } from "../../calibration/message.ts";
import { gramsPerUnit, isMassUnit } from "../../calibration/units.ts";
import type { ChartPoint } from "../checks/charts/control-chart.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";
import { firstMethod, type MethodName, methods } from "../methods/index.ts";
import { balanceLabel } from "./balance-label.ts";

/** A point that a piece gives to a chart of its balance. */
export interface WeighingPoint extends ChartPoint {
  chart: "zero-after-lift" | "dry-after";
  /** balance and, for a zero, the way to weigh: a beaker loses water where a hanger does not */
  of: string;
  ofTold?: Message | string;
  excluded: boolean;
}

/** What the charts need of one reading of a piece. */
interface Weighed {
  id: string;
  at: string;
  what: "zero" | "dry" | "dry-after" | "wet";
  grams: number;
  /** last place shown, g */
  resolution: number;
  balance: string;
  by: string;
  excluded?: Reason;
}

/** A piece as far as its charts go. */
export interface WeighedItem {
  method: MethodName;
  weighed: readonly Weighed[];
}

/** Kinds of entry that `withEntry` reads. */
export const weighingKinds = ["piece-opened", "capture", "voiding"] as const;

/** The piece with one more entry about it; undefined until it was opened. */
export function withEntry(item: WeighedItem | undefined, entry: Entry): WeighedItem | undefined {
  if (entry.kind === "piece-opened") return { method: entry.body.method ?? firstMethod, weighed: [] };
  if (item === undefined) return undefined;
  if (entry.kind === "voiding") {
    const { entry: id, reason } = entry.body;
    return {
      ...item,
      weighed: item.weighed.map((one) => (one.id === id ? { ...one, excluded: reason } : one)),
    };
  }
  const weighed = entry.kind === "capture" ? weighedOf(entry) : undefined;
  return weighed ? { ...item, weighed: [...item.weighed, weighed] } : item;
}

function weighedOf({ id, at, body }: EntryOf<"capture">): Weighed | undefined {
  if (!("reading" in body)) return undefined;
  const { what, reading, balance = "typed", operator } = body;
  if (!isMassUnit(reading.unit)) return undefined;
  return {
    id,
    at,
    what: what === "zero" || what === "dry" || what === "dry-after" ? what : "wet",
    grams: Number(reading.grams),
    resolution: lastPlace(reading.text) * Number(gramsPerUnit[reading.unit]),
    balance,
    by: operator ?? "",
  };
}

/**
 * What a piece gives to the charts, oldest first, every attempt: each zero after a lift minus the zero before the
 * immersion (0 where the empty hanger was set to zero instead of read), and each dry reading after the immersion minus
 * the mean of those before. A reading set aside stays a point, with its reason as the cause found.
 */
export function pointsOf({ method, weighed }: WeighedItem): WeighingPoint[] {
  const points: WeighingPoint[] = [];
  let zeroBefore = 0;
  let immersed = false;
  const dryBefore: number[] = [];
  const add = (chart: WeighingPoint["chart"], one: Weighed, value: number) => {
    const { id, at, by, excluded, resolution } = one;
    const before = points.findLast((point) => point.chart === chart);
    points.push({
      chart,
      of: one.balance,
      ofTold: balanceLabel(one.balance),
      ...(chart === "zero-after-lift" && {
        of: `${one.balance}, ${methods[method].called}`,
        ofTold: message("bench-check.chart.way-on", {
          balance: balanceLabel(one.balance),
          method: message(`method.${method}.name`),
        }),
      }),
      at,
      value,
      by,
      resolution,
      // what replaces a reading set aside is a further attempt, any other one a weighing of its own
      session: before?.excluded ? before.session : id,
      excluded: excluded !== undefined,
      ...(excluded === undefined ? {} : { cause: excluded }),
    });
  };
  for (const one of weighed) {
    const counts = one.excluded === undefined;
    if (one.what === "wet") immersed ||= counts;
    else if (one.what === "zero") {
      if (immersed) add("zero-after-lift", one, one.grams - zeroBefore);
      if (counts) zeroBefore = one.grams;
    } else if (one.what === "dry" && !immersed) {
      if (counts) dryBefore.push(one.grams);
    } else if (dryBefore.length > 0)
      add("dry-after", one, one.grams - dryBefore.reduce((sum, dry) => sum + dry, 0) / dryBefore.length);
  }
  return points;
}
