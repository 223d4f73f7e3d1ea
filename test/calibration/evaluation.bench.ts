import { spawn } from "node:child_process";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { hung } from "../../calibration/hung.ts";
import { measure } from "../../calibration/measure.ts";
import type { Measurement } from "../../calibration/measurement.ts";
import { seededRandom } from "../../calibration/random.ts";
import { repeats } from "../../calibration/repeats.ts";
import { compute } from "../../server/compute/compute.ts";
import { type Benchmark, type Figure, medianMs, quantile } from "../bench/benchmark.ts";
import { peers } from "../setup/debian.ts";

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

/** The same weighing as a request, with what the piece is claimed to be. */
const request = {
  id: "kitchen",
  method: "hung",
  dry: { readings: ["8.00"] },
  immersed: { readings: ["7.38"] },
  liquid: { kind: "water", temperature_c: 19, temperature_u_c: 0.5, purity: "distilled" },
  air: { density_kg_m3: 1.2, u_kg_m3: 0.03 },
  balance: { readability_g: 0.01, repeatability_g: 0.01 },
  bubble_allowance_mg: 1,
};
const claimed = { ...request, claim: "au-14y" };

const warmingUp = 2000;

const program = fileURLToPath(new URL("./million-trials.py", import.meta.url));

/** numpy of Debian's python3-numpy, in a process that stays up, so that no start-up is counted. */
async function startNumpy() {
  const python = spawn("/usr/bin/python3", [program], { stdio: ["pipe", "pipe", "inherit"] });
  const lines = createInterface({ input: python.stdout })[Symbol.asyncIterator]();
  const first = await lines.next();
  if (first.value !== "ready") throw new Error(`numpy did not start: ${first.value ?? "the process ended"}`);
  return {
    async millionTrials(): Promise<number[]> {
      python.stdin.write("\n");
      return String((await lines.next()).value)
        .split(" ")
        .map(Number);
    },
    stop: () => python.kill(),
  };
}

const ends = (seed: number) => measure(kitchen, seededRandom(seed)).monteCarlo!;

/** Processor time of one call in ms over a hundred of them, which other work on the machine does not lengthen. */
function processorMs(work: () => unknown, calls = 100): number {
  const before = process.cpuUsage();
  for (let call = 0; call < calls; call++) work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / calls;
}

/** How far the ends of the interval scatter from run to run, in parts of u. */
function scatter(whose: string, intervals: (readonly number[])[]): Figure[] {
  const u = measure(kitchen).uGPerCm3;
  return ["low", "high"].map((end, i) => ({
    what: `scatter of the ${end} end over u, ${whose}`,
    value: repeats(intervals.map((interval) => interval[i]!)).s / u,
    unit: "",
  }));
}

export default {
  name: "one evaluation with a validated Monte Carlo interval, and a million plain trials in numpy",
  aboutSeconds: 25,
  needs: [peers.numpy],
  async measure() {
    const numpy = await startNumpy();
    try {
      let seed = 0;
      // numpy comes compiled; what is compiled here while it runs is so after this many
      for (let call = 0; call < warmingUp; call++) for (const what of [request, claimed]) compute(what);
      const rows: number[][] = [];
      const own = Array.from({ length: 20 }, (_, i) => ends(1000 + i).intervalGPerCm3);
      const took = {
        numpy: [] as number[],
        interval: [] as number[],
        asked: [] as number[],
        claim: [] as number[],
      };
      for (let turn = 0; turn < 11; turn++) {
        const million = await numpy.millionTrials();
        rows.push(million.slice(2, 4));
        took.numpy.push(million[4]! * 1000);
        took.interval.push(processorMs(() => ends(++seed)));
        took.asked.push(processorMs(() => compute(request)));
        took.claim.push(processorMs(() => compute(claimed)));
      }
      // numpy's first turn is slower
      const ms = (times: readonly number[]) => quantile(times.slice(1), 0.5);
      const rate = (times: readonly number[]) => ms(took.numpy) / ms(times);
      return [
        ...scatter("here", own),
        ...scatter("numpy", rows),
        { what: "numpy, a million trials, processor time", value: ms(took.numpy), unit: "ms" },
        { what: "validated interval with its budget, processor time", value: ms(took.interval), unit: "ms" },
        {
          what: "a request answered: interval, budget, checks, what fits, processor time",
          value: ms(took.asked),
          unit: "ms",
        },
        {
          what: "the same with a claim, conformity and fineness too, processor time",
          value: ms(took.claim),
          unit: "ms",
        },
        {
          what: "rate over numpy's of answers with budget, conformity and fineness of a claim",
          value: rate(took.claim),
          unit: "×",
          atLeast: 100,
        },
        { what: "rate over numpy's of answers without a claim", value: rate(took.asked), unit: "×" },
        { what: "rate over numpy's of validated intervals alone", value: rate(took.interval), unit: "×" },
        { what: "GUM alone, fine balance", value: await medianMs(() => measure(fine), 1), unit: "ms" },
        {
          what: "GUM alone, kitchen scale with the second-order check",
          value: await medianMs(() => measure(kitchen), 1),
          unit: "ms",
        },
      ];
    } finally {
      numpy.stop();
    }
  },
} satisfies Benchmark;
