import { expect, test } from "vitest";
import type { EntryOf } from "../../../server/ledger/entry.ts";
import { agreementsOf } from "../../../server/melts/agreement.ts";
import type { MeltAssay } from "../../../server/melts/melt.ts";
import type { Side } from "../../../server/melts/side.ts";

/*
 * Exchange of assays with a splitting limit and an umpire: common practice. Where the sides agree the mean of both is
 * final; where they do not, the umpire's figure if it lies between them, else that of the nearer side. Figures invented.
 */

const tolerance = {
  gold: { metal: "gold" as const, duplicates_permille: "0.4", sides_permille: "1.0", by: "KR" },
};

function assays(of: Partial<Record<Side, readonly string[]>>): MeltAssay[] {
  return (["house", "seller", "umpire"] as const).flatMap((side) =>
    (of[side] ?? []).map((permille, place) => ({
      entry: { id: `${side}-${place}`, body: { side, metal: "gold", permille } } as EntryOf<"melt-assay">,
    })),
  );
}
const gold = (of: Partial<Record<Side, readonly string[]>>, tolerances = tolerance) =>
  agreementsOf({ assays: assays(of), tolerances })[0];

test.each([
  ["one side alone: (585.1 + 585.3) ÷ 2", { house: ["585.1", "585.3"] }, "585.2", "house"],
  [
    "both within 1.0 ‰: (585.2 + 586.0) ÷ 2",
    { house: ["585.1", "585.3"], seller: ["585.9", "586.1"] },
    "585.6",
    "mean",
  ],
  // thirds are written to nine decimals and no further
  [
    "three of ours: 1755.8 ÷ 3, with theirs 586.0: 585.633…",
    { house: ["585.1", "585.3", "585.4"], seller: ["586.0", "586.0"] },
    "585.633333333",
    "mean",
  ],
  [
    "apart by 2.0, the umpire between: 586.4",
    { house: ["585.0", "585.0"], seller: ["587.0", "587.0"], umpire: ["586.4"] },
    "586.4",
    "umpire",
  ],
  [
    "apart by 2.0, the umpire below both: the nearer, ours",
    { house: ["585.0", "585.0"], seller: ["587.0", "587.0"], umpire: ["584.2"] },
    "585",
    "house",
  ],
  [
    "apart by 2.0, the umpire above both: the nearer, theirs",
    { house: ["585.0", "585.0"], seller: ["587.0", "587.0"], umpire: ["588.8"] },
    "587",
    "seller",
  ],
])("%s", (_, of, permille, from) => {
  expect(gold(of)?.result).toMatchObject({ permille, from });
});

test.each([
  ["no tolerance is agreed", { house: ["585.1", "585.3"] }, {}, "melt.missing.tolerance"],
  ["a single assay", { house: ["585.1"] }, tolerance, "melt.missing.duplicates"],
  [
    "the seller gave a single one",
    { house: ["585.1", "585.3"], seller: ["585.2"] },
    tolerance,
    "melt.missing.duplicates",
  ],
  ["only the umpire's", { umpire: ["585.1", "585.1"] }, tolerance, "melt.missing.duplicates"],
  ["duplicates 0.5 apart", { house: ["585.0", "585.5"] }, tolerance, "melt.missing.duplicates-differ"],
  [
    "sides 1.1 apart and no umpire",
    { house: ["585.0", "585.0"], seller: ["586.1", "586.1"] },
    tolerance,
    "melt.missing.umpire",
  ],
])("nothing is final with %s", (_, of, tolerances, code) => {
  const found = gold(of, tolerances as typeof tolerance);
  expect([found?.result, found?.missing?.code]).toEqual([undefined, code]);
});

test("an assay that was set aside does not count", () => {
  const [first, ...rest] = assays({ house: ["560.0", "585.1", "585.3"] });
  const excluded = [{ ...first!, excluded: "of another bar" }, ...rest];
  expect(agreementsOf({ assays: excluded, tolerances: tolerance })[0]?.result).toMatchObject({
    permille: "585.2",
    entries: ["house-1", "house-2"],
  });
});
