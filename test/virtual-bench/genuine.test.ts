import { beforeAll, describe, expect, test } from "vitest";
import { longRun, seed, whole } from "../setup/long-run.ts";
import { benches } from "./benches.ts";
import { type Chance, chances } from "./chance.ts";
import { alloyDensity, drawAlloy, type Stamped, stampedAlloys } from "./stamped-alloys.ts";
import { type Answer, compute } from "./underhook.ts";
import { weigh } from "./weighing.ts";

/** Risk of a wrong exclusion that the decision rule states. */
const risk = 1 - 0.9545;
/** Three standard deviations of a share counted over n: what few draws may show by chance. */
const byChance = (n: number) => 3 * Math.sqrt((risk * (1 - risk)) / n);
const count = longRun(1000, 25);
/** The scale factor of the balance is right: an error of it is on every mass, and this owner states none. */
const bench = { ...benches["0.1 mg"].bench, spanRelative: 0 };

type Fine = { element: string; permille: [number, number]; fine_g: [number, number] } | null;

interface Drawn {
  stamp: string;
  /** true share and mass of the precious metal */
  share: number;
  fineG: number;
  answer: Answer & { fineness: Fine };
}

function pieceOf(stamped: Stamped, chance: Chance) {
  const fractions = drawAlloy(stamped, chance);
  const piece = { grams: chance.between("mass", 5, 30), gPerCm3: alloyDensity(fractions) };
  const share = fractions[stamped.precious]!;
  const { stamp } = stamped;
  const request = weigh({ id: stamp, method: "hung", piece, bench, repeats: 1, chance, claim: stamp });
  return { stamp, share, fineG: share * piece.grams, request };
}

let drawn: Drawn[];

beforeAll(async () => {
  const pieces = stampedAlloys.flatMap((stamped, place) =>
    chances(seed + place, count).map((chance) => pieceOf(stamped, chance)),
  );
  const answers = await compute(pieces.map(({ request }) => request));
  drawn = pieces.map(({ stamp, share, fineG }, n) => ({
    stamp,
    share,
    fineG,
    answer: answers[n] as Drawn["answer"],
  }));
}, 3_600_000);

describe("a genuine piece drawn at random from all that its stamp allows", () => {
  test.each(stampedAlloys.map(({ stamp }) => stamp))(
    "%s is excluded no more often than the stated risk, and its fineness and fine mass are covered",
    (stamp) => {
      const all = drawn.filter((one) => one.stamp === stamp);
      const excluded = all.filter(({ answer }) => answer.conformity.state === "excluded").length;
      const fine = all.flatMap(({ share, fineG, answer: { fineness } }) =>
        fineness ? [{ share, fineG, ...fineness }] : [],
      );
      const covered = fine.filter(
        ({ share, fineG, permille: [low, high], fine_g: [lowG, highG] }) =>
          low <= 1000 * share && 1000 * share <= high && lowG <= fineG && fineG <= highG,
      ).length;
      const percent = (part: number, of: number) => `${((100 * part) / of).toFixed(1)} %`;
      if (whole)
        console.log(
          `${stamp}: ${count} drawn, excluded ${percent(excluded, count)}, covered ${percent(covered, fine.length)}`,
        );
      expect(excluded / count).toBeLessThanOrEqual(risk + byChance(count));
      expect(fine.length).toBe(count - excluded);
      expect(covered / fine.length).toBeGreaterThanOrEqual(1 - risk - byChance(count));
    },
  );
});

test("what has another density is still excluded", async () => {
  // densities of handbooks (from memory)
  const [lead, brass, copper, steel, tungsten, silver] = [11.34, 8.5, 8.94, 7.85, 19.25, 10.5];
  const others: Readonly<Record<string, readonly number[]>> = {
    "ag-999": [lead, brass, copper, steel, tungsten],
    "ag-925": [lead, brass, copper, steel, tungsten],
    "ag-800": [lead, brass, copper, steel, tungsten],
    "au-333": [brass, copper, steel, tungsten],
    "au-375": [brass, copper, steel, tungsten],
    "au-585": [lead, brass, copper, silver, tungsten],
    "au-750": [lead, brass, copper, silver, tungsten],
    "au-916": [lead, brass, copper, silver, tungsten],
    "pt-950": [lead, silver, steel],
    "pd-950": [brass, silver, tungsten],
  };
  const [chance] = chances(seed, 1);
  const requests = Object.entries(others).flatMap(([claim, densities]) =>
    densities.map((gPerCm3) =>
      weigh({
        ...{ id: `${claim} ${gPerCm3}`, method: "hung", piece: { grams: 20, gPerCm3 }, bench },
        ...{ repeats: 1, chance: chance!, claim },
      }),
    ),
  );
  for (const { id, conformity } of await compute(requests)) expect(conformity.state, id).toBe("excluded");
});
