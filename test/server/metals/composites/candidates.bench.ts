import { candidates } from "../../../../server/metals/composites/candidates.ts";
import { metal } from "../../../../server/metals/library.ts";
import { type Benchmark, medianMs } from "../../../bench/benchmark.ts";
import { normally } from "../../conformity/normally.ts";
import { stands } from "../../conformity/stands.ts";

const round = { kind: "disc", diameterMm: 39, thicknessMm: 3 } as const;

export default {
  name: "one measurement, every answer",
  aboutSeconds: 4,
  async measure() {
    return [
      {
        what: "single, binary and core-and-skin for fine silver with skin thickness",
        value: await medianMs(() => candidates([10.45, 10.55], metal("ag-999"), round), 1),
        unit: "ms",
        atMost: 50,
      },
      {
        what: "the same for 750 gold at a kitchen scale's width",
        value: await medianMs(() => candidates([15, 16], metal("au-750"), round), 1),
        unit: "ms",
        atMost: 50,
      },
      {
        what: "conformity alone",
        value: await medianMs(() => stands(normally(10.47, 0.01), "ag-999"), 1),
        unit: "ms",
        atMost: 50,
      },
    ];
  },
} satisfies Benchmark;
