import { z } from "zod";
import { isDecimal } from "../../calibration/decimal.ts";
import { isMessage, type Message } from "../../calibration/message.ts";
import { massUnits } from "../../calibration/units.ts";

/** Decimal text, kept as text: 31.10 stays 31.10. */
export const decimalText = z
  .string()
  .refine(isDecimal, { error: "write a plain decimal number as text, such as 31.1035" });

/** A moment: ISO 8601, UTC. */
export const moment = z.iso.datetime({
  error: "write the moment as ISO 8601 in UTC, 2026-03-01T09:30:00.000Z",
});

export const words = z.string().min(1, { error: "say it in words, it must not be empty" }).max(4000);

/** What is told to a person: a message, or the sentence that an entry of earlier versions holds. */
export const sentence = z.union([z.custom<Message>(isMessage, { error: "a code with its values" }), words]);

/** Anything JSON can say. */
export const json = z.json();

/** A reading with its unit, and the same in grams. */
export const weightReading = z.strictObject({
  text: decimalText,
  unit: z.enum(massUnits),
  grams: decimalText,
});

/** A line as it was received: the original observation. */
export const receivedLine = z.strictObject({
  at: moment,
  monotonicMs: z.number(),
  raw: z.string(),
});

/** A message: a code of the catalogues with its values. */
export const message = z.custom<Message>(isMessage, { error: "a code with its values" });
