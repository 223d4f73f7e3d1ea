import { Worker } from "node:worker_threads";
import { afterEach, describe, expect, it } from "vitest";
import { measure } from "../../../calibration/measure.ts";
import type { Measurement } from "../../../calibration/measurement.ts";
import { seededRandom } from "../../../calibration/random.ts";
import { Refusal } from "../../../calibration/refusals.ts";
import { type Aside, openAside } from "../../../server/compute/aside.ts";
import { fixedSeed } from "../../../server/compute/compute.ts";

const piece: Measurement = {
  dry: { readings: ["8.00"], unit: "g" },
  weighing: { method: "hung", immersed: { readings: ["7.38"], unit: "g" } },
  liquid: { kind: "water", temperature: { celsius: 19, uCelsius: 0.5 }, purity: "distilled" },
  air: { kind: "altitude", metres: 0 },
  balance: { readabilityGrams: 0.01, repeatabilityGrams: 0.01, linearityGrams: 0 },
  hanger: { wireMillimetres: 0 },
  bubbleAllowanceMg: 0,
  pieces: 1,
  confidence: 0.9545,
};

describe("the computing thread", () => {
  let aside: Aside | undefined;
  afterEach(() => aside?.close());

  it("gives the very result that the same code gives here, while this thread stays free", async () => {
    aside = openAside();
    let turns = 0;
    const counting = setInterval(() => turns++, 1);
    const results = await Promise.all([aside.measure(piece), aside.measure(piece), aside.measure(piece)]);
    clearInterval(counting);
    for (const result of results) expect(result).toEqual(measure(piece, seededRandom(fixedSeed)));
    expect(turns).toBeGreaterThan(0);
  });

  it("hands a refusal over as the refusal it is, and a bad request as the contract's error", async () => {
    aside = openAside();
    const swapped = { ...piece, dry: { readings: ["7.00"], unit: "g" as const } };
    await expect(aside.measure(swapped)).rejects.toThrow(Refusal);
    await expect(aside.measure({ ...piece, air: { kind: "altitude", metres: 9000 } })).rejects.toThrow(
      /9000 m/,
    );
    expect(await aside.compute({ id: "x" })).toMatchObject({ id: "x", error: { at: "method" } });
  });

  it("rejects what was asked of a thread that dies, and starts another for the next question", async () => {
    let started = 0;
    aside = openAside({
      start: () =>
        ++started === 1
          ? new Worker("process.exit(3)", { eval: true })
          : new Worker(
              "const { parentPort } = require('node:worker_threads'); parentPort.on('message', ({ number }) => parentPort.postMessage({ number, computed: { id: 'second' } }))",
              { eval: true },
            ),
    });
    await expect(aside.compute({})).rejects.toThrow(/code 3.*Ask again/);
    expect(await aside.compute({})).toEqual({ id: "second" });
  });
});
