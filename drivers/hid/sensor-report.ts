import { type LineMeaning, lineEvent } from "../reading.ts";
import type { SensedQuantity, SensorReading } from "../sensors/quantity.ts";
import { sensedValue } from "../sensors/quantity.ts";
import { chosenUsage, decimalSteps, fieldValue, inputFields, type ReportField } from "./descriptor.ts";

/** Reads the reports of one number of one sensor. */
export interface SensorReports {
  /** 0 where reports carry no number */
  reportId: number;
  quantities: readonly SensedQuantity[];
  /** what one input report means; null for a report that carries no value of it */
  read(report: Uint8Array): LineMeaning<SensorReading>;
}

/** Sensor page of the USB HID usage tables (HID Usage Tables, section Sensors; usages as in Linux 6.1, hid-sensor-ids.h). */
const onPage = (usage: number) => 0x20 * 0x10000 + usage;

const quantities = new Map<number, SensedQuantity>([
  [onPage(0x0434), "temperature"],
  [onPage(0x0431), "pressure"],
  [onPage(0x0433), "humidity"],
]);

/** Units by their code in a descriptor, as there; without one the tables' own: °C, bar and % (HID Usage Tables, from memory). */
const units: Readonly<Record<SensedQuantity, ReadonlyMap<number, string>>> = {
  temperature: new Map([
    [0, "°C"],
    [0x01000100, "K"],
    [0x03000100, "°F"],
  ]),
  pressure: new Map([
    [0, "bar"],
    [0xf1e1, "Pa"],
  ]),
  humidity: new Map([
    [0, "%"],
    [0x17, "%"],
  ]),
};

/** States of a sensor: 0x0800 not known, 0x0801 ready, 0x0802 to 0x0806 without a value (HID Usage Tables, from memory). */
const stateReady = onPage(0x0801);

/**
 * The reports of a descriptor that carry temperature, pressure or humidity, each quantity once, in a unit that is read
 * here. Throws RangeError for a descriptor that breaks off.
 */
export function sensorReports(descriptor: Uint8Array): SensorReports[] {
  const fields = inputFields(descriptor);
  return [...new Set(fields.map(({ reportId }) => reportId))].flatMap((reportId) => {
    const mine = fields.filter((field) => field.reportId === reportId);
    const measured = mine.flatMap(measuredBy);
    const told = measured.map(({ quantity }) => quantity);
    if (measured.length === 0 || new Set(told).size < told.length) return [];
    const state = mine.find(({ usages }) => usages.includes(stateReady));
    return [
      { reportId, quantities: told, read: (report) => readReport(report, { reportId, measured, state }) },
    ];
  });
}

interface Measured {
  field: ReportField;
  quantity: SensedQuantity;
  unit: string;
}

/** The quantity of a field; none for a field that is scaled by a physical range of its own. */
function measuredBy(field: ReportField): Measured[] {
  const { usages, count, array, unit: code, physicalMinimum, physicalMaximum } = field;
  const quantity = quantities.get(usages[0] ?? 0);
  const unit = quantity && units[quantity].get(code);
  const scaled =
    (physicalMinimum !== 0 || physicalMaximum !== 0) &&
    (physicalMinimum !== field.logicalMinimum || physicalMaximum !== field.logicalMaximum);
  return quantity && unit && count === 1 && !array && !scaled ? [{ field, quantity, unit }] : [];
}

function readReport(
  report: Uint8Array,
  { reportId, measured, state }: { reportId: number; measured: Measured[]; state: ReportField | undefined },
): LineMeaning<SensorReading> {
  if (reportId !== 0 && report[0] !== reportId) return null;
  const body = reportId === 0 ? report : report.subarray(1);
  if (state && chosenUsage(state, body) !== stateReady) return lineEvent("line.error.sensor-not-ready");
  const values = [];
  for (const { field, unit } of measured) {
    const steps = fieldValue(field, body);
    if (steps === null) return lineEvent("line.damaged.report", { bytes: report.length });
    // a value outside its range is how the tables say that there is none
    if (steps < field.logicalMinimum || steps > field.logicalMaximum)
      return lineEvent("line.error.sensor-not-ready");
    const text = decimalSteps(steps, field.unitExponent);
    const value = sensedValue(text, unit);
    if (!value) return lineEvent("line.damaged.sensor", { line: `${text} ${unit}`, value: text, unit });
    values.push(value);
  }
  return { reading: { values } };
}
