import { bench, describe } from "vitest";
import { findingFor } from "../../../../server/conformity/finding.ts";
import { candidates } from "../../../../server/metals/composites/candidates.ts";
import { metal } from "../../../../server/metals/library.ts";
import { normally } from "../../conformity/normally.ts";

const round = { kind: "disc", diameterMm: 39, thicknessMm: 3 } as const;

describe("one measurement, every answer; the bench wants it within 50 ms", () => {
  bench("single, binary and core-and-skin for fine silver with skin thickness", () => {
    candidates([10.45, 10.55], metal("ag-999"), round);
  });
  bench("the same for 750 gold at a kitchen scale's width", () => {
    candidates([15, 16], metal("au-750"), round);
  });
  bench("the finding alone", () => {
    findingFor(normally(10.47, 0.01), "ag-999", 0.9545);
  });
});
