import { expect, test } from "vitest";
import { cautionsAbout } from "../../../server/conformity/cautions.ts";
import { repeatedAmong } from "../../../server/conformity/repeated.ts";
import { builtIn, metal } from "../../../server/metals/library.ts";

test("a toxic metal that is not excluded brings its caution, and only then", () => {
  const about = (...ids: string[]) => cautionsAbout(ids.map((id) => metal(id)));
  expect(about("du", "el-au")).toEqual(["uranium"]);
  expect(about("pb-sn")).toEqual(["lead"]);
  expect(about("brass-c360")).toContain("lead");
  expect(about("au-750")).toEqual(["nickel"]);
  expect(about("ag-925-cu")).toEqual([]);
});

test("a family stands for its recipes, and one name for one thing", () => {
  const ids = ["au-750", "au-18y", "au-18r", "el-w", "w-pure"];
  const isRepeated = repeatedAmong(ids, builtIn);
  expect(ids.filter((id) => !isRepeated(id))).toEqual(["au-750", "w-pure"]);
});
