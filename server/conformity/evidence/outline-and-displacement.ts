import { type Message, message } from "../../../calibration/message.ts";

/** A volume in cm³ with its standard uncertainty. */
export interface Volume {
  cm3: number;
  uCm3: number;
}

/**
 * Volume of the outline against the volume that was displaced. Relief and rounded edges make the displaced volume the
 * smaller one; the other way round the weighing or the rule is at fault. Null when the two go together.
 */
export function outlineCheck(outline: Volume, displaced: Volume): Message | null {
  const u = Math.hypot(outline.uCm3, displaced.uCm3);
  const volumes = { displaced_cm3: displaced.cm3, outline_cm3: outline.cm3 };
  if (displaced.cm3 - outline.cm3 > 2 * u) return message("test.check.outline-too-small", volumes);
  if (displaced.cm3 < outline.cm3 * 0.5 - 2 * u) return message("test.check.outline-too-large", volumes);
  return null;
}
