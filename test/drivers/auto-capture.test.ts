import { expect, test } from "vitest";
import { type AutoStep, createAutoCapture } from "../../drivers/auto-capture.ts";
import { createSimulatedBalance } from "../../drivers/simulated-balance.ts";
import { createHandClock } from "./hand-clock.ts";

const bar = { name: "invented bar", massGrams: 31.1035, densityGPerCm3: 10.49 };
const coin = { name: "invented coin", massGrams: 6.72, densityGPerCm3: 17.6 };

function bench(readabilityGrams = 0.001) {
  const clock = createHandClock();
  const balance = createSimulatedBalance({ clock, seed: 9, readabilityGrams });
  const auto = createAutoCapture();
  const steps: AutoStep[] = [];
  balance.onLine((record) => steps.push(auto.hear(record)));
  balance.start();
  balance.emptyHanger();
  clock.pass(10_000);
  const taken = () => steps.flatMap((step) => step.taken?.reading.text ?? []);
  return { clock, balance, steps, taken };
}
/** Empty hanger 6.2 g, plus the piece in water of 997.9 kg/m³, read against weights of 8000 kg/m³ in air of 1.19. */
const immersed = ({ massGrams, densityGPerCm3 }: typeof bar) =>
  6.2 + (massGrams - (massGrams / densityGPerCm3) * 0.9979) / (1 - 1.19 / 8000);

test("each piece is taken once, when it is still, and the next only after it was lifted", () => {
  const { clock, balance, taken, steps } = bench();
  const { code, params } = steps.at(-1)!.message;
  expect(code).toBe("balance.hands-free.ready");
  expect(params?.smallest_g).toBeGreaterThan(0.001);
  expect(params?.smallest_g).toBeLessThan(0.01);
  balance.hang(bar);
  clock.pass(20_000);
  expect(taken()).toHaveLength(1);
  expect(steps.at(-1)?.state).toBe("waiting-for-lift");
  balance.lift();
  clock.pass(5000);
  balance.hang(coin);
  clock.pass(12_000);
  expect(taken()).toHaveLength(2);
  // Noise of 0.4 mg and half a last place; five times that.
  for (const [i, piece] of [bar, coin].entries())
    expect(Math.abs(Number(taken()[i]) - immersed(piece))).toBeLessThan(0.004);
});

test("a small coin on a scale of tenths of a gram is noticed, and drops left on the hanger are no next piece", () => {
  const { clock, balance, taken, steps } = bench(0.1);
  expect(steps.at(-1)?.message.params?.smallest_g).toBeCloseTo(0.5, 12);
  // Its weight in water is eleven last places.
  balance.hang({ name: "invented small coin", massGrams: 1.2, densityGPerCm3: 12 });
  clock.pass(12_000);
  expect(taken()).toHaveLength(1);

  const fine = bench(0.0001);
  fine.balance.hang(bar);
  fine.clock.pass(20_000);
  fine.balance.lift();
  fine.clock.pass(300);
  // Thirty milligrams of water stay on the hanger: three hundred last places.
  fine.balance.hang({ name: "drops", massGrams: 0.03, densityGPerCm3: 1e6 });
  fine.clock.pass(20_000);
  expect(fine.taken()).toHaveLength(1);
  expect(fine.steps.at(-1)?.state).toBe("waiting-for-load");
});

test("a piece that is lifted before it is still is not taken", () => {
  const { clock, balance, taken, steps } = bench();
  balance.hang(bar);
  clock.pass(700);
  balance.lift();
  clock.pass(5000);
  expect(taken()).toEqual([]);
  expect(steps.map(({ message }) => message.code)).toContain("balance.hands-free.lifted");
});

test("after a lost cable it wants to see the empty hanger again", () => {
  const { clock, balance, taken, steps } = bench();
  balance.unplug();
  clock.pass(1000);
  balance.replug();
  clock.pass(300);
  expect(steps.at(-1)?.state).toBe("needs-empty");
  clock.pass(8000);
  balance.hang(bar);
  clock.pass(10_000);
  expect(taken()).toHaveLength(1);
});

test("what is taken came after the load changed and kept still for the holding time", () => {
  const { clock, balance, steps } = bench();
  const hungMs = clock.monotonicMs();
  balance.hang(bar);
  clock.pass(10_000);
  const lines = steps.find(({ taken }) => taken)?.taken?.lines ?? [];
  expect(lines.length).toBeGreaterThan(1);
  expect(Math.min(...lines.map(({ monotonicMs }) => monotonicMs))).toBeGreaterThan(hungMs + 1500);
});
