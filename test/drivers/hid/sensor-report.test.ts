import { expect, test } from "vitest";
import { sensorReports } from "../../../drivers/hid/sensor-report.ts";
import { scaleDescriptor, sensorDescriptor } from "./descriptors.ts";

type Parts = Parameters<typeof sensorDescriptor>[0];

function read(parts: Parts, ...report: number[]): string | null {
  const [reports] = sensorReports(sensorDescriptor(parts));
  const meaning = reports!.read(Uint8Array.from(report));
  if (meaning === null) return null;
  if ("event" in meaning) return meaning.event.kind;
  return meaning.reading.values
    .map(({ text, unit, value }) => `${text} ${unit} = ${value.toFixed(2)}`)
    .join(" ");
}

// Reports and descriptors are written by hand: usages 0x0434 temperature, 0x0431 pressure and 0x0433 humidity, units
// 0x01000100 K and 0x03000100 °F as in Linux 6.1, include/linux/hid-sensor-ids.h; without a unit the tables' own, °C,
// bar and % (HID Usage Tables, from memory).
test.each<[string, Parts, number[], string | null]>([
  ["°C", {}, [1, 2, 0x5c, 0x08], "21.40 °C = 21.40"],
  ["below zero", {}, [1, 2, 0x88, 0xff], "-1.20 °C = -1.20"],
  [
    "an exponent as a whole byte",
    { value: "0A 34 04 16 00 80 26 FF 7F 55 FE" },
    [1, 2, 0x5c, 0x08],
    "21.40 °C = 21.40",
  ],
  [
    "K",
    { value: "0A 34 04 15 00 27 FF FF 00 00 67 00 01 00 01 55 0E" },
    [1, 2, 0x13, 0x73],
    "294.59 K = 21.44",
  ],
  [
    "°F",
    { value: "0A 34 04 15 00 27 FF FF 00 00 67 00 01 00 03 55 0F" },
    [1, 2, 0xc1, 0x02],
    "70.5 °F = 21.39",
  ],
  ["bar", { value: "0A 31 04 15 00 27 FF FF 00 00 55 0C" }, [1, 2, 0x95, 0x27], "1.0133 bar = 1013.30"],
  ["%", { value: "0A 33 04 15 00 26 10 27 55 0E" }, [1, 2, 0xa8, 0x11], "45.20 % = 45.20"],
  ["without a state", { state: false }, [1, 0x5c, 0x08], "21.40 °C = 21.40"],
  ["not ready", {}, [1, 3, 0x5c, 0x08], "error"],
  ["starting", {}, [1, 5, 0x00, 0x00], "error"],
  ["state not known", {}, [1, 1, 0x5c, 0x08], "error"],
  [
    "outside the range of the field: none",
    { value: "0A 33 04 15 00 26 10 27 55 0E" },
    [1, 2, 0xff, 0xff],
    "error",
  ],
  ["hotter than a sensor can be", {}, [1, 2, 0xff, 0x7f], "damaged"],
  ["a report that breaks off", {}, [1, 2, 0x5c], "damaged"],
  ["another report", {}, [2, 2, 0x5c, 0x08], null],
])("%s", (_, parts, report, expected) => {
  expect(read(parts, ...report)).toBe(expected);
});

test.each<[string, Uint8Array]>([
  ["a scale", scaleDescriptor()],
  ["an unknown unit", sensorDescriptor({ value: "0A 34 04 16 00 80 26 FF 7F 65 14" })],
  ["a physical range of its own", sensorDescriptor({ physical: "36 00 00 46 E8 03" })],
])("%s is no sensor that can be read", (_, descriptor) => {
  expect(sensorReports(descriptor)).toEqual([]);
});
