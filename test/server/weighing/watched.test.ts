import { expect, test } from "vitest";
import type { Entry } from "../../../server/ledger/entry.ts";
import { evolve, weighingOf } from "../../../server/weighing/evolve.ts";
import { standing } from "../../../server/weighing/item.ts";
import { seriesAsked } from "../../../server/weighing/series-asked.ts";
import { watchedIn, withWatched } from "../../../server/weighing/watched.ts";
import { result } from "../ledger/bench-ledger.ts";

const entry = (seq: number, id: string, kind: string, body: object) =>
  ({
    ...{ seq, id, bench: "test", at: new Date(Date.UTC(2026, 2, 2, 9, 0, seq)).toISOString(), kind },
    ...{ subject: "n8", body, prevHash: "", hash: "" },
  }) as Entry;

const capture = (seq: number, what: "dry" | "immersed", grams: string) =>
  entry(seq, `e-${seq}`, "capture", {
    what,
    reading: { text: grams, unit: "g", grams },
    ...{ source: "balance", balance: "one", lines: [], settled: { by: "own-criterion" } },
    at_rest: {
      ...{ grams: Number(grams), u_g: 0.00005, drift_u_g: 0.00003 },
      ...{ possible_g: 0.0007, flags: ["creep-possible"] },
    },
  });

const entries = [
  entry(1, "n8", "piece-opened", { ticket: "8", description: "", claim: null, method: "hung" }),
  capture(2, "dry", "31.1035"),
  capture(3, "immersed", "28.1435"),
  capture(4, "immersed", "28.1437"),
];
const drift = (item: ReturnType<typeof weighingOf>, role: "dry" | "immersed") => {
  const asked = seriesAsked(item!, standing(item!, role));
  return "drift_u_g" in asked ? asked.drift_u_g : undefined;
};
// one in twenty creeps, by 0.05 to 10 mg, each order of magnitude as likely as another: ∫ s² d(ln s) up to 0.7 mg
const open = 0.0007 * Math.sqrt(0.05 / (2 * Math.log(200)));

test("what was not excluded when a load was lifted widens the drift of immersed readings alone, and repeats do not lessen it", () => {
  const item = weighingOf(entries);
  expect(drift(item, "dry")).toBeCloseTo(0.00003, 12);
  expect(drift(item, "immersed")).toBeCloseTo(Math.hypot(0.00003, open), 12);
});

test("a load that was watched for long enough leaves nothing open; its record says so and its reading stays as written", () => {
  const item = withWatched(weighingOf(entries)!, ["e-4"]);
  expect(drift(item, "immersed")).toBeCloseTo((Math.hypot(0.00003, open) + 0.00003) / 2, 12);
  expect(item.captures.map(({ atRest }) => atRest?.flags)).toEqual([
    ["creep-possible"],
    ["creep-possible"],
    [],
  ]);
  expect(watchedIn(item)).toEqual(["e-4"]);
  // a restart knows it from the record
  const recorded = evolve(
    weighingOf(entries),
    entry(5, "result-n8", "result", { ...result, watched: ["e-4"] }),
  );
  expect(recorded?.captures).toEqual(item.captures);
});
