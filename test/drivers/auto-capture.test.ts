import { expect, test } from "vitest";
import { message } from "../../calibration/message.ts";
import { type AutoCaptureOptions, type AutoStep, createAutoCapture } from "../../drivers/auto-capture.ts";
import { createSimulatedBalance } from "../../drivers/simulated-balance.ts";
import { createHandClock } from "./hand-clock.ts";

const bar = { name: "invented bar", massGrams: 31.1035, densityGPerCm3: 10.49 };
const coin = { name: "invented coin", massGrams: 6.72, densityGPerCm3: 17.6 };

/** An empty hanger, zeroed. */
function bench({
  readabilityGrams = 0.001,
  ...options
}: AutoCaptureOptions & { readabilityGrams?: number } = {}) {
  const clock = createHandClock();
  const balance = createSimulatedBalance({ clock, seed: 9, readabilityGrams, settlingSeconds: 0.35 });
  const steps: AutoStep[] = [];
  balance.start();
  balance.emptyHanger();
  balance.zero();
  clock.pass(10_000);
  const arm = (more: AutoCaptureOptions = {}) => {
    const auto = createAutoCapture({ ...options, ...more });
    balance.onLine((record) => steps.push(auto.hear(record)));
  };
  const taken = () => steps.flatMap((step) => step.taken?.reading.text ?? []);
  const refused = () => steps.flatMap(({ event, message: { code } }) => (event === "refused" ? code : []));
  return { clock, balance, steps, arm, taken, refused };
}
/** The piece in water of 997.9 kg/m³, read against weights of 8000 kg/m³ in air of 1.19. */
const immersed = ({ massGrams, densityGPerCm3 }: typeof bar) =>
  (massGrams - (massGrams / densityGPerCm3) * 0.9979) / (1 - 1.19 / 8000);

test("each piece is taken once, when it is still, and the next only after it was lifted", () => {
  const { clock, balance, arm, taken, steps } = bench();
  arm();
  clock.pass(1000);
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

test("a load that lies there already counts once it is seen at rest; one that was taken must be lifted first", () => {
  const armed = bench();
  armed.balance.hang(bar);
  armed.clock.pass(10_000);
  armed.arm({ rested: true });
  armed.clock.pass(2500);
  expect(armed.taken()).toHaveLength(1);

  const again = bench();
  again.balance.hang(bar);
  again.clock.pass(10_000);
  again.arm({ rested: true, isTaken: true });
  again.clock.pass(10_000);
  expect(again.taken()).toEqual([]);
  again.balance.lift();
  again.clock.pass(5000);
  again.balance.hang(bar);
  again.clock.pass(10_000);
  expect(again.taken()).toHaveLength(1);
});

test("a hanger that was weighed in is no load", () => {
  const { clock, balance, arm, taken } = bench({ emptyGrams: () => 6.2 });
  balance.hang({ name: "hanger", massGrams: 6.2, densityGPerCm3: 1e6 });
  clock.pass(5000);
  arm();
  clock.pass(10_000);
  expect(taken()).toEqual([]);
  balance.hang({ name: "hanger and piece", massGrams: 20, densityGPerCm3: 1e6 });
  clock.pass(10_000);
  expect(taken()).toHaveLength(1);
});

test("a small coin on a scale of tenths of a gram is noticed, and drops left on the hanger are no next piece", () => {
  const { clock, balance, arm, taken, steps } = bench({ readabilityGrams: 0.1 });
  arm();
  clock.pass(1000);
  expect(steps.at(-1)?.message.params?.smallest_g).toBeCloseTo(0.5, 12);
  // Its weight in water is eleven last places.
  balance.hang({ name: "invented small coin", massGrams: 1.2, densityGPerCm3: 12 });
  clock.pass(12_000);
  expect(taken()).toHaveLength(1);

  const fine = bench({ readabilityGrams: 0.0001 });
  fine.arm();
  fine.clock.pass(1000);
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

test("a piece that is lifted before it is still is not taken, and that is told aloud", () => {
  const { clock, balance, arm, taken, refused } = bench();
  arm();
  clock.pass(1000);
  balance.hang(bar);
  clock.pass(2600);
  balance.lift();
  clock.pass(5000);
  expect(taken()).toEqual([]);
  expect(refused()).toEqual(["balance.hands-free.lifted-early"]);
});

test("a second load beside the first, a display below zero and an empty balance are told once, and nothing is taken", () => {
  const { clock, balance, arm, taken, refused, steps } = bench();
  arm();
  clock.pass(1000);
  balance.hang(bar);
  clock.pass(10_000);
  balance.hang({ ...bar, massGrams: 40 });
  clock.pass(10_000);
  expect(taken()).toHaveLength(1);
  expect(refused()).toEqual(["balance.hands-free.not-lifted"]);
  balance.lift();
  clock.pass(5000);
  balance.clear();
  clock.pass(10_000);
  expect(refused().at(-1)).toBe("balance.hands-free.below-zero");
  balance.emptyHanger();
  clock.pass(25_000);
  expect(steps.filter(({ event }) => event === "empty")).toHaveLength(1);
  expect(taken()).toHaveLength(1);
});

test("a load that is refused stays so until it is lifted; one that waits is taken once it may be", () => {
  let verdict: ReturnType<NonNullable<AutoCaptureOptions["judge"]>> = {
    refused: message("balance.hands-free.no-ticket"),
  };
  const { clock, balance, arm, taken, refused } = bench({ judge: () => verdict });
  arm();
  balance.hang(bar);
  clock.pass(10_000);
  verdict = "take";
  clock.pass(10_000);
  expect(taken()).toEqual([]);
  balance.lift();
  clock.pass(5000);
  verdict = { waits: message("balance.hands-free.no-ticket") };
  balance.hang(bar);
  clock.pass(10_000);
  expect(taken()).toEqual([]);
  verdict = "take";
  clock.pass(1000);
  expect(taken()).toHaveLength(1);
  expect(refused()).toEqual(["balance.hands-free.no-ticket", "balance.hands-free.no-ticket"]);
});

test("after a lost cable whatever lies there is lifted first", () => {
  const { clock, balance, arm, taken, steps } = bench();
  arm();
  balance.hang(bar);
  balance.unplug();
  clock.pass(1000);
  balance.replug();
  clock.pass(8000);
  expect(steps.at(-1)?.state).toBe("waiting-for-lift");
  expect(taken()).toEqual([]);
  balance.lift();
  clock.pass(5000);
  balance.hang(bar);
  clock.pass(10_000);
  expect(taken()).toHaveLength(1);
});

test("what is taken came after the load changed and kept still for the holding time", () => {
  const { clock, balance, arm, steps } = bench();
  arm();
  const hungMs = clock.monotonicMs();
  balance.hang(bar);
  clock.pass(10_000);
  const lines = steps.find(({ taken }) => taken)?.taken?.lines ?? [];
  expect(lines.length).toBeGreaterThan(1);
  expect(Math.min(...lines.map(({ monotonicMs }) => monotonicMs))).toBeGreaterThan(hungMs + 1500);
});
