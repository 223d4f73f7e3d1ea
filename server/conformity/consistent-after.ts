import { remembered } from "../../calibration/remembered.ts";
import type { Metal } from "../metals/metal.ts";
import type { WorthTable } from "../metals/worth-table.ts";
import type { Candidate } from "./candidate.ts";
import type { Evidence } from "./evidence/evidence.ts";
import { excludedBy } from "./evidence/exclusion-by-test.ts";
import { testOf } from "./next-test.ts";
import type { HarmlessTest } from "./separation.ts";
import { soundThrough } from "./sound-through.ts";
import { leftBeside } from "./state.ts";

/** The way to a claim that stands alone, or what stays beside it whatever harmless test is made. */
export type ConsistentAfter =
  | { tests: readonly HarmlessTest[] }
  | { tests: null; stays: readonly Candidate[] };

/**
 * The fewest harmless tests, each found as the claim shows it, after which nothing else that is met is left beside the
 * claim; of equally few the easiest. None of them is one that is done already.
 */
export function consistentAfter(
  claimed: Metal,
  alternatives: readonly Candidate[],
  evidence: readonly Evidence[],
  worth: WorthTable,
): ConsistentAfter {
  const done = new Set(evidence.map(({ kind }) => testOf[kind]));
  const tests = shown(claimed).filter(({ kind }) => !done.has(testOf[kind]));
  // each test is held once against each alternative that matters, and not again for every choice of tests
  const met = leftBeside(claimed, alternatives, []);
  const passing = new Map(
    tests.map((one) => [
      one,
      met.map(({ metal, recipes = [metal] }) => recipes.some((m) => leaves(one, m, worth))),
    ]),
  );
  const left = (made: readonly Evidence[]) =>
    leftBeside(
      claimed,
      met.filter((_, at) => made.every((one) => passing.get(one)?.[at])),
      [...evidence, ...made].map(({ kind }) => kind),
    );
  const stays = left(tests);
  // what all of them together leave, fewer leave as well
  if (stays.length > 0) return { tests: null, stays };
  const ways = subsets(tests).sort((a, b) => a.length - b.length);
  const way = ways.find((made) => left(made).length === 0) ?? tests;
  return { tests: way.map(({ kind }) => testOf[kind]).filter((test) => test !== undefined) };
}

const shown = remembered(asClaimShows);

const known = remembered((worth: WorthTable) =>
  remembered((shows: Evidence) => remembered((metal: Metal) => excludedBy(shows, metal, worth) === null)),
);

/** True where what a test shows leaves the metal. */
const leaves = (shows: Evidence, metal: Metal, worth: WorthTable): boolean =>
  metal.made ? excludedBy(shows, metal, worth) === null : known(worth)(shows)(metal);

/** What each harmless test shows of the metal, easiest first; none of a test whose outcome is not known. */
function asClaimShows(metal: Metal): Evidence[] {
  const { conductivityIacsPercent: range } = metal;
  const sound = soundThrough(metal);
  return [
    ...(metal.magnetism === "none" ? [{ kind: "magnet", shows: "none" } as const] : []),
    { kind: "worn", colour: metal.colour },
    { kind: "ring", heard: "clear" },
    ...(range
      ? [
          {
            kind: "conductivity",
            percentIacs: (range[0] + range[1]) / 2,
            uPercentIacs: 0,
            celsius: 20,
          } as const,
        ]
      : []),
    ...(sound ? [{ kind: "sound", mPerS: sound.mPerS, uMPerS: 0 } as const] : []),
  ];
}

/** Every choice of the items, the earlier items first among equally many. */
function subsets<T>(items: readonly T[]): T[][] {
  return items.reduce<T[][]>((found, item) => found.flatMap((one) => [[...one, item], one]), [[]]);
}
