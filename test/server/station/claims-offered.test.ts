import { expect, test } from "vitest";
import { builtIn } from "../../../server/metals/library.ts";
import { claimsOf, metalBands } from "../../../server/station/metal-bands.ts";

const offered = (mostly: "any" | "silver") => claimsOf(metalBands(builtIn, mostly)).map(({ id }) => id);

test("claims are offered as a price list names them: gold, silver, platinum, palladium, the finest first", () => {
  expect(offered("any").slice(0, 6)).toEqual(["au-24", "au-999", "au-995", "au-990", "au-986", "au-958"]);
  const metals = offered("any").map((id) => id.slice(0, 2));
  expect([...new Set(metals)]).toEqual(["au", "ag", "pt", "pd"]);
  expect(metals).toEqual(
    [...metals].sort((a, b) => ["au", "ag", "pt", "pd"].indexOf(a) - ["au", "ag", "pt", "pd"].indexOf(b)),
  );
});

test("a bench that mostly sees silver is offered silver first, and nothing is lost by it", () => {
  expect(offered("silver").slice(0, 3)).toEqual(["ag-9999", "ag-999", "ag-990"]);
  expect(new Set(offered("silver"))).toEqual(new Set(offered("any")));
});
