import { Worker } from "node:worker_threads";
import { afterEach, describe, expect, it } from "vitest";
import { compute } from "../../../server/compute/compute.ts";
import { type ComputeThread, openComputeThread } from "../../../server/compute/compute-thread.ts";

const request = {
  id: "x",
  method: "hung",
  dry: { readings: ["8.00"] },
  immersed: { readings: ["7.38"] },
  liquid: { kind: "water", temperature_c: 19, temperature_u_c: 0.5 },
  air: { altitude_m: 0 },
  balance: { readability_g: 0.01, repeatability_g: 0.01 },
};

describe("the computing thread", () => {
  let aside: ComputeThread | undefined;
  afterEach(() => aside?.close());

  it("gives the very result that the same code gives here, while this thread stays free", async () => {
    aside = openComputeThread();
    let turns = 0;
    const counting = setInterval(() => turns++, 1);
    const results = await Promise.all([
      aside.compute(request),
      aside.compute(request),
      aside.compute(request),
    ]);
    clearInterval(counting);
    for (const result of results) expect(result).toEqual(compute(request));
    expect(turns).toBeGreaterThan(0);
  });

  it("hands a refusal over at the key it is about, and a bad request as the contract's error", async () => {
    aside = openComputeThread();
    const swapped = { ...request, dry: { readings: ["7.00"] } };
    expect(await aside.compute(swapped)).toMatchObject({
      id: "x",
      density_g_cm3: null,
      conformity: { state: "no-valid-reading" },
    });
    expect(await aside.compute({ id: "x" })).toMatchObject({ id: "x", error: { at: "method" } });
  });

  it("rejects what was asked of a thread that dies, and starts another for the next question", async () => {
    let started = 0;
    aside = openComputeThread({
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
