import type { Clock } from "../clock.ts";
import { createChance } from "./chance.ts";
import type { SimulatedBalance } from "./commands.ts";

/** A fault of cable, balance or person, with what puts it right again; for buttons and for scripts. */
interface Fault {
  /** for the button */
  says: string;
  begin(balance: SimulatedBalance): void;
  end?(balance: SimulatedBalance): void;
}

/** Every fault the simulated balance can be told to play. */
export const simulatedFaults = {
  unplug: { says: "pull the cable", begin: (b) => b.unplug(), end: (b) => b.replug() },
  "another-balance": {
    says: "plug another balance into the same socket",
    begin: (b) => b.unplug(),
    end: (b) => b.replugOther(),
  },
  "power-off": { says: "switch it off", begin: (b) => b.powerOff(), end: (b) => b.powerOn() },
  freeze: { says: "let the line go quiet", begin: (b) => b.freeze(), end: (b) => b.thaw() },
  stick: { says: "let the display stick at one value", begin: (b) => b.stick(), end: (b) => b.thaw() },
  garble: { says: "garble three lines", begin: (b) => b.garble(3) },
  halve: { says: "lose half of three lines", begin: (b) => b.halve(3) },
  double: { says: "send three lines twice", begin: (b) => b.double(3) },
  overload: { says: "lean on the pan", begin: (b) => b.overload(), end: (b) => b.relieve() },
  "other-unit": {
    says: "press its unit key",
    begin: (b) => b.unitChange("ct"),
    end: (b) => b.unitChange("g"),
  },
  zero: { says: "press its zero key", begin: (b) => b.zero() },
  bump: { says: "bump the table", begin: (b) => b.bump(0.05), end: (b) => b.bump(-0.05) },
  bubbles: { says: "let bubbles cling", begin: (b) => b.bubbles(4), end: (b) => b.bubbles(0) },
  drop: { says: "let the piece slip to the bottom", begin: (b) => b.drop() },
  "low-battery": { says: "run its battery down", begin: (b) => b.say("LOW BATTERY\r\n") },
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
  const chance = createChance(seed);
  const steps: ScriptStep[] = [];
  for (let atSeconds = 3; atSeconds < seconds; ) {
    const forSeconds = 1 + 4 * chance.uniform();
    steps.push({ atSeconds, fault: faults[chance.whole(faults.length)]!, forSeconds });
    atSeconds += forSeconds + 2 + 6 * chance.uniform();
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
