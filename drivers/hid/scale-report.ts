import { toGrams } from "../../calibration/units.ts";
import { type EventCode, type LineMeaning, lineEvent, type Stability } from "../reading.ts";
import { chosenUsage, decimalSteps, fieldValue, inputFields } from "./descriptor.ts";
import { dataScaling, dataWeight, isUnitUsage, type ScaleStatus, statusOf, unitOf } from "./usages.ts";

/** Reads the weight reports of one scale. */
export interface ScaleReports {
  /** what one input report means; null for a report that carries no weight */
  read(report: Uint8Array): LineMeaning;
  /** the most the weight field can hold, in steps, and whether it can be negative: for the owner to know */
  largestSteps: number;
  signed: boolean;
}

/**
 * Finds weight, scaling, unit and status in a report descriptor and reads reports by it. Returns null when the
 * descriptor has no weight field, so is no scale. Throws RangeError for a descriptor that breaks off.
 */
export function scaleReports(descriptor: Uint8Array): ScaleReports | null {
  const fields = inputFields(descriptor);
  const weight = fields.find(({ usages }) => usages.includes(dataWeight));
  if (!weight) return null;
  const mine = fields.filter(({ reportId }) => reportId === weight.reportId);
  const scaling = mine.find(({ usages }) => usages.includes(dataScaling));
  const unit = mine.find(({ usages }) => usages.some(isUnitUsage));
  const status = mine.find(({ usages }) => usages.some((usage) => statusOf(usage) !== null));
  const signed = weight.logicalMinimum < 0;
  return {
    signed,
    largestSteps: 2 ** (signed ? weight.bitSize - 1 : weight.bitSize) - 1,
    read(report) {
      const body = weight.reportId === 0 ? report : report.subarray(1);
      if (weight.reportId !== 0 && report[0] !== weight.reportId) return null;
      const said = status ? statusOf(chosenUsage(status, body)) : null;
      const happened = said ? statusEvents[said] : undefined;
      if (happened) return lineEvent(happened);
      const steps = fieldValue(weight, body);
      const unitUsage = unit ? chosenUsage(unit, body) : 0;
      const known = unitOf(unitUsage);
      if (steps === null) return lineEvent("line.damaged.report", { bytes: report.length });
      if (!unit) return lineEvent("line.unit-missing.report", { steps });
      if (known === null) return lineEvent("line.not-a-weight.unit-not-read");
      const text = decimalSteps(steps, scaling ? asSignedByte(fieldValue(scaling, body) ?? 0) : 0);
      return { reading: { text, unit: known, grams: toGrams(text, known), stability: stabilityOf(said) } };
    },
  };
}

/** The power of ten is a signed byte; some descriptors declare it as unsigned. */
function asSignedByte(value: number): number {
  return value > 127 ? value - 256 : value;
}

function stabilityOf(status: ScaleStatus | null): Stability {
  if (status === null) return "unknown";
  return status === "in-motion" ? "moving" : "stable";
}

const statusEvents: Partial<Record<ScaleStatus, EventCode>> = {
  fault: "line.error.report-fault",
  "under-zero": "line.underload.report",
  "over-limit": "line.overload.report",
  "requires-calibration": "line.error.report-adjust",
  "requires-rezero": "line.error.report-zero",
};
