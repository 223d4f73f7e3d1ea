import { expect, test } from "vitest";
import { cautions } from "../../../server/conformity/cautions.ts";
import { cautionsAbout, cautionsAt } from "../../../server/conformity/cautions-for.ts";
import { distinctNames } from "../../../server/conformity/distinct-names.ts";
import { metal } from "../../../server/metals/library.ts";

test("before wetting, the pieces that must stay dry are named", () => {
  const text = cautionsAt("before-wetting")
    .map((c) => c.says)
    .join(" ");
  for (const word of ["Pearl", "opal", "turquoise", "coral", "amber", "Glue", "patina", "Water goes in"])
    expect(text.toLowerCase() + cautionsAt("before-wetting").map((c) => c.title.toLowerCase())).toContain(
      word.toLowerCase(),
    );
});

test("a toxic metal still alive brings its caution, and only then", () => {
  const about = (...ids: string[]) => cautionsAbout(ids.map((id) => metal(id))).map((c) => c.id);
  expect(about("du", "el-au")).toEqual(["uranium"]);
  expect(about("pb-sn")).toEqual(["lead"]);
  expect(about("brass-c360")).toContain("lead");
  expect(about("au-750")).toEqual(["nickel"]);
  expect(about("ag-925-cu")).toEqual([]);
});

test("a report says that density is no assay, and names the referee methods", () => {
  expect(cautionsAt("report")[0]!.says).toMatch(/ISO 11426.*ISO 11427/);
});

test("every caution has a source and an id of its own", () => {
  expect(new Set(cautions.map((c) => c.id)).size).toBe(cautions.length);
  for (const c of cautions) expect(c.source.length, c.id).toBeGreaterThan(5);
});

test("a sentence names a family once, not each of its recipes", () => {
  const entries = ["au-750", "au-18y", "au-18r", "el-w", "w-pure"].map((id) => metal(id));
  expect(distinctNames(entries)).toEqual(["Gold 750 (18 ct)", "Tungsten, sintered/rolled"]);
});
