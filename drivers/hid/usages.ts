import type { MassUnit } from "../../calibration/units.ts";

/** Scales page of the USB HID usage tables: HID Usage Tables 1.7, section 33; first in POS Usage Tables 1.02 (2001). */
const scalesPage = 0x8d;

const onPage = (usage: number) => scalesPage * 0x10000 + usage;

export const dataWeight = onPage(0x40);
export const dataScaling = onPage(0x41);

/** Usages 0x51 to 0x5C. Null: a unit of mass that is not read here. */
const units: Record<number, MassUnit | null> = {
  [onPage(0x51)]: "mg",
  [onPage(0x52)]: "g",
  [onPage(0x53)]: "kg",
  [onPage(0x54)]: "ct",
  [onPage(0x55)]: null, // tael
  [onPage(0x56)]: "gn",
  [onPage(0x57)]: "dwt",
  [onPage(0x58)]: null, // metric tonne
  [onPage(0x59)]: null, // avoirdupois ton
  [onPage(0x5a)]: "ozt",
  [onPage(0x5b)]: "oz",
  [onPage(0x5c)]: null, // pound
};

export type ScaleStatus =
  | "fault"
  | "stable-at-zero"
  | "in-motion"
  | "stable"
  | "under-zero"
  | "over-limit"
  | "requires-calibration"
  | "requires-rezero";

/** Usages 0x71 to 0x78. */
const statuses: Record<number, ScaleStatus> = {
  [onPage(0x71)]: "fault",
  [onPage(0x72)]: "stable-at-zero",
  [onPage(0x73)]: "in-motion",
  [onPage(0x74)]: "stable",
  [onPage(0x75)]: "under-zero",
  [onPage(0x76)]: "over-limit",
  [onPage(0x77)]: "requires-calibration",
  [onPage(0x78)]: "requires-rezero",
};

export function isUnitUsage(usage: number): boolean {
  return Object.hasOwn(units, usage);
}

/** The unit of a usage; null for a unit that is not read and for a usage that is no unit. */
export function unitOf(usage: number): MassUnit | null {
  return units[usage] ?? null;
}

export function statusOf(usage: number): ScaleStatus | null {
  return statuses[usage] ?? null;
}
