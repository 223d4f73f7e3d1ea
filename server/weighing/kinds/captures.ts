import { z } from "zod";
import { decimalText, moment, receivedLine, weightReading, words } from "../../ledger/shapes.ts";
import { roles } from "../../methods/index.ts";

const settled = z.looseObject({
  /** why the reading was taken as settled: the sentence of earlier versions */
  because: words.optional(),
  scatter_g: z.number().nonnegative().optional(),
  seconds: z.number().nonnegative().optional(),
});

/** What a sensor beside the balance showed with a reading. */
const sensed = z.strictObject({
  sensor: words,
  place: z.enum(["liquid", "air"]),
  quantity: z.enum(["temperature", "pressure", "humidity"]),
  text: decimalText,
  unit: words,
  /** in °C, hPa or % */
  value: z.number(),
  half_width: z.number().positive().optional(),
  at: moment,
  monotonicMs: z.number(),
  raw: z.string(),
});

/** Where the display was going when the reading was taken, in g. */
const atRest = z.strictObject({
  grams: z.number(),
  u_g: z.number().nonnegative(),
  drift_u_g: z.number().nonnegative(),
  /** the most that a creep may have brought which was not excluded when it was taken */
  possible_g: z.number().positive().optional(),
  flags: z.array(words),
});

export const weightCapture = z.strictObject({
  what: z.enum(roles),
  reading: weightReading,
  source: z.enum(["balance", "typed", "simulated"]),
  balance: words.optional(),
  profile: words.optional(),
  readability_g: z.number().positive().optional(),
  lines: z.array(receivedLine),
  /** every line since the capture before was the same, to the last sign */
  unmoved: z.literal(true).optional(),
  at_rest: atRest.optional(),
  sensed: z.array(sensed).optional(),
  /** sensors that were silent when it was taken */
  silent: z.array(words).optional(),
  settled: settled.optional(),
  operator: words.optional(),
});

export const temperatureCapture = z.strictObject({
  what: z.enum(["temperature", "air-temperature"]),
  celsius: decimalText,
  source: z.enum(["thermometer", "typed", "simulated"]),
  thermometer: words.optional(),
  u_celsius: z.number().nonnegative().optional(),
  lines: z.array(receivedLine),
  operator: words.optional(),
});
