import { spawn } from "node:child_process";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { afterAll, bench, describe } from "vitest";
import { hung } from "../../calibration/hung.ts";
import { measure } from "../../calibration/measure.ts";
import type { Measurement } from "../../calibration/measurement.ts";
import { seededRandom } from "../../calibration/random.ts";
import { repeats } from "../../calibration/repeats.ts";

/** 8 g at a 0.01 g display, twelve uncertain inputs; the same model stands in million-trials.py. Readings invented. */
const kitchen: Measurement = {
  dry: { readings: ["8.00"], unit: "g" },
  weighing: hung({ readings: ["7.38"], unit: "g" }),
  liquid: { kind: "water", temperature: { celsius: 19, uCelsius: 0.5 }, purity: "distilled" },
  air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.03 },
  balance: { readabilityGrams: 0.01, repeatabilityGrams: 0.01, linearityGrams: 0 },
  hanger: { wireMillimetres: 0 },
  bubbleAllowanceMg: 1,
  pieces: 1,
  confidence: 0.9545,
};
const fine: Measurement = {
  ...kitchen,
  dry: { readings: ["31.1035"], unit: "g" },
  weighing: hung({ readings: ["28.1435"], unit: "g" }),
  balance: { readabilityGrams: 1e-4, repeatabilityGrams: 1e-4, linearityGrams: 0 },
};

// numpy of Debian's python3-numpy, in a process that stays up, so that no start-up is counted
const python = spawn("/usr/bin/python3", [fileURLToPath(new URL("./million-trials.py", import.meta.url))], {
  stdio: ["pipe", "pipe", "inherit"],
});
const lines = createInterface({ input: python.stdout })[Symbol.asyncIterator]();
const numpyReady = (await lines.next()).value === "ready";

async function millionTrials(): Promise<number[]> {
  python.stdin.write("\n");
  return String((await lines.next()).value)
    .split(" ")
    .map(Number);
}

afterAll(() => {
  python.kill();
});

const ends = (seed: number) => measure(kitchen, seededRandom(seed)).monteCarlo!;
let seed = 0;

/** How far the ends of the interval scatter from run to run, in parts of u. */
async function scatter(): Promise<void> {
  const u = measure(kitchen).uGPerCm3;
  const own = Array.from({ length: 20 }, (_, i) => ends(1000 + i).intervalGPerCm3);
  const numpy: number[][] = [];
  for (let i = 0; i < 10; i++) numpy.push(await millionTrials());
  const say = (rows: (readonly number[])[]) =>
    [0, 1].map((i) => (repeats(rows.map((row) => row[i]!)).s / u).toExponential(1)).join(" ");
  console.log(
    `scatter of the interval's ends over u: here ${say(own)}, numpy ${say(numpy.map((r) => r.slice(2)))}`,
  );
}

if (numpyReady) await scatter();

describe("one whole evaluation with a validated Monte Carlo interval", () => {
  bench(
    "here: GUM, trials, clause 8",
    () => {
      ends(++seed);
    },
    { time: 3000 },
  );
  bench.runIf(numpyReady)(
    "numpy: a million plain trials",
    async () => {
      await millionTrials();
    },
    { time: 3000 },
  );
});

describe("GUM alone", () => {
  bench("a fine balance", () => {
    measure(fine);
  });
  bench("a kitchen scale, with the second-order check", () => {
    measure(kitchen);
  });
});
