import type { Clock } from "../../drivers/clock.ts";
import type { SimulatedBalance } from "../../drivers/simulated/commands.ts";
import { createSeededRandom } from "../../drivers/simulated/seeded-random.ts";

/** A fault of cable, balance or person, with what puts it right again. */
interface Fault {
  begin(balance: SimulatedBalance): void;
  end?(balance: SimulatedBalance): void;
}

/** Every fault the simulated balance can be told to play. */
export const simulatedFaults = {
  unplug: { begin: (b) => b.unplug(), end: (b) => b.replug() },
  "another-balance": {
    begin: (b) => b.unplug(),
    end: (b) => b.replugOther(),
  },
  "power-off": { begin: (b) => b.powerOff(), end: (b) => b.powerOn() },
  freeze: { begin: (b) => b.freeze(), end: (b) => b.thaw() },
  stick: { begin: (b) => b.stick(), end: (b) => b.thaw() },
  garble: { begin: (b) => b.garble(3) },
  halve: { begin: (b) => b.halve(3) },
  double: { begin: (b) => b.double(3) },
  overload: { begin: (b) => b.overload(), end: (b) => b.relieve() },
  "other-unit": {
    begin: (b) => b.unitChange("ct"),
    end: (b) => b.unitChange("g"),
  },
  zero: { begin: (b) => b.zero() },
  bump: { begin: (b) => b.bump(0.05), end: (b) => b.bump(-0.05) },
  bubbles: { begin: (b) => b.bubbles(4), end: (b) => b.bubbles(0) },
  drop: { begin: (b) => b.drop() },
  "low-battery": { begin: (b) => b.say("LOW BATTERY\r\n") },
} satisfies Record<string, Fault>;

export type SimulatedFault = keyof typeof simulatedFaults;

export interface ScriptStep {
  atSeconds: number;
  fault: SimulatedFault;
  /** how long the fault lasts, s */
  forSeconds: number;
}

/** A day of faults from a seed: one after another, each put right before the next begins. */
export function faultScript(
  seed: number,
  seconds: number,
  faults: readonly SimulatedFault[] = Object.keys(simulatedFaults) as SimulatedFault[],
): ScriptStep[] {
  const random = createSeededRandom(seed);
  const steps: ScriptStep[] = [];
  for (let atSeconds = 3; atSeconds < seconds; ) {
    const forSeconds = 1 + 4 * random.uniform();
    steps.push({ atSeconds, fault: faults[random.whole(faults.length)]!, forSeconds });
    atSeconds += forSeconds + 2 + 6 * random.uniform();
  }
  return steps;
}

/** Plays a script from now on; returns the function that ends it. */
export function playScript(
  balance: SimulatedBalance,
  steps: readonly ScriptStep[],
  clock: Clock,
): () => void {
  const callOffs = steps.flatMap(({ atSeconds, fault, forSeconds }) => {
    const { begin, end }: Fault = simulatedFaults[fault];
    const begins = clock.after(atSeconds * 1000, () => begin(balance));
    return end ? [begins, clock.after((atSeconds + forSeconds) * 1000, () => end(balance))] : [begins];
  });
  return () => {
    for (const callOff of callOffs) callOff();
  };
}
