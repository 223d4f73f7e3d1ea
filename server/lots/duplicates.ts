import { message } from "../../calibration/message.ts";
import type { LotCheck } from "./lot-check.ts";
import type { WeighedMass } from "./weighed-mass.ts";

/** So few pairs as near as this may be chance before a pair says anything. */
const chancePairs = 0.5;

interface Pair {
  pieces: readonly [WeighedMass, WeighedMass];
  /** g */
  apart: number;
}

/**
 * Pieces of nearly one mass whose densities go together: perhaps one piece weighed twice, under another unit or in
 * another lot too. Two masses are near within twice one step of each display, added in squares (common practice). On a
 * coarse scale such pairs are chance; then only a pair that explains what the sum has too much is told. Masses in g.
 */
export function duplicates(
  items: readonly WeighedMass[],
  elsewhere: readonly WeighedMass[],
  excess: number | undefined,
  withinG: number,
): LotCheck[] {
  const explains = (dryG: number) => excess !== undefined && Math.abs(excess - dryG) <= withinG;
  const here = { pairs: (items.length * (items.length - 1)) / 2, spanG: spanOf(items) };
  const beside = { pairs: items.length * elsewhere.length, spanG: spanOf([...items, ...elsewhere]) };
  const pairs = pairsOf(items, elsewhere).filter(
    (pair) =>
      explains(pair.pieces[0].dryG) ||
      expectedByChance(pair, pair.pieces[1].elsewhere ? beside : here) <= chancePairs,
  );
  return groupsOf(pairs).map((group): LotCheck => {
    const ofLot = group.filter((one) => one.elsewhere === undefined);
    const other = group.find((one) => one.elsewhere !== undefined);
    const mass_g = Number(ofLot[0]!.dryG.toPrecision(8));
    return {
      flag: "same mass",
      message:
        other?.elsewhere && ofLot.length === 1
          ? message("lot-check.same-mass-elsewhere", {
              ticket: ofLot[0]!.ticket,
              mass_g,
              other: other.ticket,
              lot: other.elsewhere.lot,
            })
          : message(
              ofLot.some(({ dryG }) => explains(dryG))
                ? "lot-check.same-mass-in-excess"
                : "lot-check.same-mass",
              { tickets: ofLot.length, mass_g },
            ),
      remedy: message("lot-check.same-mass-remedy"),
      tickets: ofLot.map(({ ticket }) => ticket),
    };
  });
}

/** Each piece of the lot with every other that is near it, of the lot or elsewhere. */
function pairsOf(items: readonly WeighedMass[], elsewhere: readonly WeighedMass[]): Pair[] {
  const byMass = [...items, ...elsewhere].sort((one, other) => one.dryG - other.dryG);
  const widest = 2 * Math.SQRT2 * Math.max(0, ...byMass.map(({ stepG }) => stepG)) + 1e-9;
  return byMass.flatMap((one, place) => {
    const pairs: Pair[] = [];
    for (const other of byMass.slice(place + 1)) {
      const apart = other.dryG - one.dryG;
      if (apart > widest) break;
      if (one.elsewhere && other.elsewhere) continue;
      if (apart <= 2 * Math.hypot(one.stepG, other.stepG) + 1e-9 && goTogether(one.density, other.density))
        pairs.push({ pieces: one.elsewhere ? [other, one] : [one, other], apart });
    }
    return pairs;
  });
}

/** Pairs at least as near as this one that so many pairs of masses spread evenly over their span would give. */
function expectedByChance(
  { pieces: [one, other], apart }: Pair,
  { pairs, spanG }: { pairs: number; spanG: number },
): number {
  return spanG > 0 ? (pairs * (2 * apart + Math.max(one.stepG, other.stepG))) / spanG : 0;
}

/** g */
function spanOf(pieces: readonly WeighedMass[]): number {
  const masses = pieces.map(({ dryG }) => dryG);
  return Math.max(...masses) - Math.min(...masses);
}

/** Pieces that hang together by pairs, lightest first. */
function groupsOf(pairs: readonly Pair[]): WeighedMass[][] {
  const groups: Set<WeighedMass>[] = [];
  for (const { pieces } of pairs) {
    const touched = groups.filter((group) => pieces.some((piece) => group.has(piece)));
    const joined = new Set([...touched.flatMap((group) => [...group]), ...pieces]);
    for (const group of touched) groups.splice(groups.indexOf(group), 1);
    groups.push(joined);
  }
  return groups.map((group) => [...group].sort((one, other) => one.dryG - other.dryG));
}

/** True when two densities differ by no more than their uncertainties. */
function goTogether(one: WeighedMass["density"], other: WeighedMass["density"]): boolean {
  if (!one || !other) return false;
  return Math.abs(one.value - other.value) <= Math.hypot(one.expanded, other.expanded);
}
