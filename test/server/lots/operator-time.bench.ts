import { type Benchmark, quantile } from "../../bench/benchmark.ts";
import { peers } from "../../setup/debian.ts";
import { longRun } from "../../setup/long-run.ts";
import { screenedLot, secondsPerPress } from "./operator-time.ts";

const pieces = longRun(20, 6);
/** 240 pieces an hour. */
const secondsPerPiece = 15;

export default {
  name: `a lot of ${pieces} pieces on the simulated balance, 240 an hour`,
  aboutSeconds: 18 * pieces,
  needs: [peers.chromium],
  async measure() {
    const times = await screenedLot(pieces);
    const steps = { ticket: "ticketS", dry: "dryS", "immersed and record": "immersedS" } as const;
    const whole = times.map((t) => t.presses * secondsPerPress + t.ticketS + t.dryS + t.immersedS);
    return [
      ...Object.entries(steps).map(([what, key]) => ({
        what: `wait for ${what}, median`,
        value: quantile(
          times.map((time) => time[key]),
          0.5,
        ),
        unit: "s",
      })),
      { what: "presses a piece", value: times[0]?.presses ?? Number.NaN, unit: "" },
      {
        what: "keys and waits, slowest piece; the rest is left to the hands",
        value: quantile(whole, 1),
        unit: "s",
        atMost: secondsPerPiece,
      },
    ];
  },
} satisfies Benchmark;
