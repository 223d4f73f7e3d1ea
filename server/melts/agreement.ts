import { compared, exactly, type Fraction, less, ratio, sumOf, zero } from "../../calibration/fraction.ts";
import { type Message, message } from "../../calibration/message.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { PreciousMetal } from "../metals/precious-metal.ts";
import { written } from "../settlements/mass-text.ts";
import type { Melt } from "./melt.ts";
import type { Side } from "./side.ts";

/** What a side found of a metal: its duplicates and their mean, ‰. */
export interface SideResult {
  side: Side;
  mean: Fraction;
  /** between its lowest and its highest */
  apart: Fraction;
  entries: string[];
}

type Result = BodyOf<"melt-settled">["results"][number];

/** How the assays of one metal of a melt stand: a result, or why there is none yet. */
export interface Agreement {
  metal: PreciousMetal;
  sides: readonly SideResult[];
  result?: Result;
  missing?: Message;
}

/** Duplicates: each side assays at least two samples. Common practice. */
const fewestOfSide = 2;

/** The agreement of each metal that a laboratory found in a melt. */
export function agreementsOf(melt: Pick<Melt, "assays" | "tolerances">): Agreement[] {
  const counting = melt.assays.flatMap(({ entry, excluded }) => (excluded === undefined ? [entry] : []));
  const metals = [...new Set(counting.map(({ body }) => body.metal))];
  return metals.map((metal) => {
    const of = (side: Side) => counting.filter(({ body }) => body.metal === metal && body.side === side);
    const sides = (["house", "seller", "umpire"] as const).flatMap((side): SideResult[] => {
      const assays = of(side);
      if (assays.length === 0) return [];
      const found = assays.map(({ body }) => exactly(body.permille)).toSorted(compared);
      return [
        {
          side,
          mean: ratio(sumOf(found), exactly(`${found.length}`)),
          apart: less(found.at(-1)!, found[0]!),
          entries: assays.map(({ id }) => id),
        },
      ];
    });
    return { metal, sides, ...settledBy(metal, sides, melt.tolerances[metal]) };
  });
}

/**
 * Duplicates of a side agree within their tolerance, or nothing follows. Where both sides assay and agree, the mean of both
 * is final; where they do not, the umpire is asked, and the middle one of the three is: the umpire's between the two, else
 * that of the nearer side. Common practice in the exchange of assays.
 */
function settledBy(
  metal: PreciousMetal,
  sides: readonly SideResult[],
  tolerance: BodyOf<"melt-tolerance"> | undefined,
): Pick<Agreement, "result" | "missing"> {
  if (!tolerance) return { missing: message("melt.missing.tolerance", named(metal)) };
  const parties = sides.filter(({ side }) => side !== "umpire");
  const umpire = sides.find(({ side }) => side === "umpire");
  const few = parties.find(({ entries }) => entries.length < fewestOfSide);
  if (parties.length === 0 || few)
    return { missing: message("melt.missing.duplicates", { ...named(metal), needed: fewestOfSide }) };
  const within = exactly(tolerance.duplicates_permille);
  const apart = sides.find((one) => compared(one.apart, within) > 0);
  if (apart)
    return {
      missing: message("melt.missing.duplicates-differ", {
        ...named(metal),
        side: message(`melts.sides.${apart.side}`),
        apart_permille: { decimal: written(apart.apart) },
        within_permille: { decimal: tolerance.duplicates_permille },
      }),
    };
  const [one, other] = parties;
  if (!one) return { missing: message("melt.missing.duplicates", { ...named(metal), needed: fewestOfSide }) };
  if (!other) return { result: resultOf(metal, [one], one.side === "seller" ? "seller" : "house") };
  const between = absolute(less(one.mean, other.mean));
  if (compared(between, exactly(tolerance.sides_permille)) <= 0)
    return { result: resultOf(metal, [one, other], "mean") };
  if (!umpire)
    return {
      missing: message("melt.missing.umpire", {
        ...named(metal),
        apart_permille: { decimal: written(between) },
        within_permille: { decimal: tolerance.sides_permille },
      }),
    };
  const middle = [one, other, umpire].toSorted((a, b) => compared(a.mean, b.mean))[1] ?? umpire;
  return { result: resultOf(metal, [middle], middle.side) };
}

function resultOf(
  metal: PreciousMetal,
  of: readonly Pick<SideResult, "mean" | "entries">[],
  from: Result["from"],
): Result {
  const mean = ratio(sumOf(of.map((one) => one.mean)), exactly(`${of.length}`));
  return { metal, permille: written(mean), from, entries: of.flatMap(({ entries }) => entries) };
}

const absolute = (value: Fraction): Fraction => (compared(value, zero) < 0 ? less(zero, value) : value);

const named = (metal: PreciousMetal) => ({ metal: message(`lots.metals.${metal}`) });
