import { expect, test } from "vitest";
import { createReadingStream } from "../../drivers/reading-stream.ts";
import { createSimulatedBalance } from "../../drivers/simulated-balance.ts";
import { faultScript, playScript, type SimulatedFault } from "./fault-script.ts";
import { createHandClock } from "./hand-clock.ts";

const piece = { name: "invented bar", massGrams: 31.1035, densityGPerCm3: 10.49 };
// 31.1035 g less the air it displaces against weights of 8000 kg/m³.
const shown = 31.1035 * (1 - 1.19 / 10490 + 1.19 / 8000);

// Faults that change what truly stands on the pan or what the balance truly shows are left out: they give other
// readings, and rightly so.
const cableFaults: SimulatedFault[] = [
  "unplug",
  "power-off",
  "freeze",
  "garble",
  "halve",
  "double",
  "overload",
  "other-unit",
  "low-battery",
];

test("an hour of seeded cable faults gives no capture that is off", async () => {
  const clock = createHandClock();
  const balance = createSimulatedBalance({ clock, seed: 11, driftGramsPerHour: 0 });
  const stream = createReadingStream({ balance, clock });
  balance.start();
  balance.put(piece);
  clock.pass(5000);
  const steps = faultScript(5, 3600, cableFaults);
  expect(new Set(steps.map(({ fault }) => fault))).toEqual(new Set(cableFaults));
  playScript(balance, steps, clock);
  let taken = 0;
  for (let i = 0; i < 700; i += 1) {
    const capture = stream.capture({ patienceMs: 4900 }).then(
      ({ reading }) => {
        taken += 1;
        // Switching off and on zeroes a balance: then the load shows as nothing.
        const near = Math.min(Math.abs(Number(reading.grams) - shown), Math.abs(Number(reading.grams)));
        // Four standard deviations of its noise of 0.04 mg, and half a last place in g or ct.
        expect(near).toBeLessThan(0.0003);
      },
      () => {},
    );
    clock.pass(5000);
    await capture;
  }
  expect(taken).toBeGreaterThan(400);
});

test("the same seed makes the same day", () => {
  expect(faultScript(5, 600)).toEqual(faultScript(5, 600));
  expect(faultScript(5, 600)).not.toEqual(faultScript(6, 600));
});

test("another balance in the same socket is refused", async () => {
  const clock = createHandClock();
  const balance = createSimulatedBalance({ clock });
  const stream = createReadingStream({ balance, clock });
  balance.start();
  clock.pass(3000);
  playScript(balance, [{ atSeconds: 1, fault: "another-balance", forSeconds: 2 }], clock);
  clock.pass(6000);
  await expect(stream.capture()).rejects.toMatchObject({
    code: expect.stringMatching(/^balance\.check\.other-(device|display)$/),
  });
});
