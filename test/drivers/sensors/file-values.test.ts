import { expect, test } from "vitest";
import { channelsOf, channelValue } from "../../../drivers/sensors/file-values.ts";

const valuesOf = (files: Record<string, string>) =>
  channelsOf(Object.keys(files)).map((channel) => channelValue(channel, new Map(Object.entries(files))));

// Units and order of offset and scale: Linux 6.1, Documentation/ABI/testing/sysfs-bus-iio: temperature in milli degrees
// Celsius, pressure in kilopascal, humidity in milli percent; "offset to be added to <type>[Y]_raw prior to scaling".
test.each([
  [{ in_temp_input: "21437" }, "temperature", "21.437", "°C", 21.437],
  [
    { in_temp_raw: "2143", in_temp_offset: "0", in_temp_scale: "10.000000" },
    "temperature",
    "21.43",
    "°C",
    21.43,
  ],
  [
    { in_temp_raw: "29458", in_temp_offset: "-27315", in_temp_scale: "10" },
    "temperature",
    "21.43",
    "°C",
    21.43,
  ],
  [{ in_temp0_raw: "343", in_temp_scale: "62.500000000" }, "temperature", "21.44", "°C", 21.44],
  [{ in_temp_raw: "-12", in_temp_scale: "100" }, "temperature", "-1.2", "°C", -1.2],
  [{ in_pressure_input: "101.325000" }, "pressure", "101.325000", "kPa", 1013.25],
  [{ in_pressure_raw: "1013250", in_pressure_scale: "0.000100000" }, "pressure", "101.3250", "kPa", 1013.25],
  [{ in_humidityrelative_input: "45200" }, "humidity", "45.200", "%", 45.2],
  [
    { in_humidityrelative_raw: "452", in_humidityrelative_scale: "100.000000" },
    "humidity",
    "45.2",
    "%",
    45.2,
  ],
])("%j", (files, quantity, text, unit, value) => {
  expect(valuesOf(files)).toEqual([{ quantity, text, unit, value: expect.closeTo(value, 9) }]);
});

test.each([
  ["a raw value without scale has no unit", { in_temp_raw: "2143" }, []],
  ["a mean is no reading", { in_temp_mean_raw: "2143", in_temp_scale: "10" }, []],
  ["no plain number", { in_temp_input: "21437 dB" }, [undefined]],
  ["an empty file", { in_temp_raw: "", in_temp_scale: "10" }, [undefined]],
  ["a scale of nothing", { in_temp_raw: "2143", in_temp_scale: "0.000000" }, [undefined]],
  ["hotter than a sensor can be", { in_temp_input: "214370" }, [undefined]],
  ["other things", { in_accel_x_raw: "3", in_accel_scale: "1", name: "probe" }, []],
])("%s: no value", (_, files, expected) => {
  expect(valuesOf(files)).toEqual(expected);
});
