import { expect, test } from "vitest";
import { createReadingStream } from "../../drivers/reading-stream.ts";
import { createSimulatedBalance } from "../../drivers/simulated-balance.ts";
import { createHandClock } from "./hand-clock.ts";

const air = 1.19;
const liquid = 997.9;
const piece = { name: "invented bar", massGrams: 31.1035, densityGPerCm3: 10.49 };

function bench(options: Parameters<typeof createSimulatedBalance>[0] = {}) {
  const clock = createHandClock();
  const balance = createSimulatedBalance({
    clock,
    liquidKgPerM3: liquid,
    airKgPerM3: air,
    seed: 3,
    ...options,
  });
  const stream = createReadingStream({ balance, clock });
  const take = async () => {
    clock.pass(4000);
    const captured = stream.capture();
    clock.pass(15_000);
    return Number((await captured).reading.grams);
  };
  balance.start();
  return { clock, balance, stream, take };
}

// The simulated density must come back from ρ = (R/D)(ρ_L − ρ_a) + ρ_a. Tolerance: noise of 0.04 mg on each of four
// readings moves 2.96 g of displaced mass by 0.08 mg, so the density by 0.0003 g/cm³; five times that.
const tolerance = 0.0015;
const density = (dry: number, displaced: number) => ((dry / displaced) * (liquid - air) + air) / 1000;

test("hung from the balance, an invented piece has the density it was given", async () => {
  const { balance, take } = bench();
  balance.put(piece);
  const dry = (await take()) - 0;
  balance.emptyHanger();
  const hanger = await take();
  balance.hang(piece);
  const immersed = (await take()) - hanger;
  expect(Math.abs(density(dry, dry - immersed) - 10.49)).toBeLessThan(tolerance);
});

test("hung from a stand into the beaker, it has the same density", async () => {
  const { balance, take } = bench();
  balance.put(piece);
  const dry = await take();
  balance.beaker();
  const beaker = await take();
  balance.immerse(piece);
  const rise = (await take()) - beaker;
  expect(Math.abs(density(dry, rise) - 10.49)).toBeLessThan(tolerance);
  balance.drop();
  expect(Math.abs((await take()) - beaker - dry)).toBeLessThan(0.001);
});

test("the same seed plays the same lines", () => {
  const play = () => {
    const { clock, balance, stream } = bench({ seed: 42 });
    balance.put(piece);
    clock.pass(5000);
    return stream.recent().map(({ raw }) => raw);
  };
  expect(play()).toEqual(play());
});

test("an overload is an event and no number", () => {
  const { clock, balance, stream } = bench();
  clock.pass(2000);
  balance.overload();
  clock.pass(3000);
  expect(stream.latest().record).toBeUndefined();
  expect(stream.error()?.event?.kind).toBe("overload");
});

test("garbled and halved lines are never captured as the weight", async () => {
  const { clock, balance, stream } = bench();
  balance.put(piece);
  clock.pass(4000);
  for (let round = 0; round < 200; round += 1) {
    if (round % 2 === 0) balance.garble(3);
    else balance.halve(3);
    const captured = stream.capture();
    clock.pass(15_000);
    expect(Math.abs(Number((await captured).reading.grams) - 31.1046)).toBeLessThan(0.003);
  }
});
