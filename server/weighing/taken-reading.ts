import { type MassUnit, toGrams } from "../../calibration/units.ts";
import type { Role } from "../methods/index.ts";
import type { AtRest, LineNote, TakenBy } from "./item.ts";
import type { Known } from "./known.ts";

/** A reading as typed or taken, with the lines it came from. */
export interface Reading {
  text: string;
  unit: MassUnit;
  takenBy: TakenBy;
  balance: string;
  /** the learned profile its lines were read by, with its version */
  profile?: string;
  lines: LineNote[];
  /** set when every line since the capture before was the same, to the last sign */
  unmoved?: true;
  /** where the display was going */
  atRest?: AtRest;
}

/** A reading as the ledger keeps it: the text as it stood, the same in grams, where it came from and why it was taken. */
export function captureOf(
  role: Role,
  reading: Reading,
  { simulated, sensors }: Pick<Known, "simulated" | "sensors">,
) {
  const { text, unit, takenBy, balance, profile, lines, unmoved, atRest } = reading;
  const cabled = simulated ? ("simulated" as const) : ("balance" as const);
  return {
    what: role,
    reading: { text, unit, grams: toGrams(text, unit) },
    source: takenBy === "typed" ? ("typed" as const) : cabled,
    balance,
    ...(profile === undefined ? {} : { profile }),
    lines,
    ...(unmoved ? { unmoved } : {}),
    ...(atRest ? { at_rest: { ...atRest, flags: [...atRest.flags] } } : {}),
    ...(sensors && sensors.sensed.length > 0 ? { sensed: [...sensors.sensed] } : {}),
    ...(sensors && sensors.silent.length > 0 ? { silent: [...sensors.silent] } : {}),
    settled: { by: takenBy },
  };
}
