import type { Code, Params } from "./message.ts";

/** Something to know beside a result: a code with its values. */
export interface MeasurementCheck {
  code: Code;
  severity: "warn";
  params: Params;
}
