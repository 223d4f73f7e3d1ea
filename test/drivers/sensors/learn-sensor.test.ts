import { expect, test } from "vitest";
import { learnSensor } from "../../../drivers/sensors/learn-sensor.ts";
import { readPlainLines } from "../../../drivers/sensors/plain-lines.ts";
import { sensedValue } from "../../../drivers/sensors/quantity.ts";
import { readBySensorProfile } from "../../../drivers/sensors/sensor-profile.ts";

const none = new Uint8Array();

test.each([
  // 0 °C = 273.15 K = 32 °F by definition of the units (SI brochure, 9th edition)
  ["32", "°F", "temperature", 0],
  ["294.55", "K", "temperature", 21.4],
  // 1 mmHg = 133.3224 Pa (NIST SP 811, appendix B.8, from memory)
  ["760", "mmHg", "pressure", 1013.25],
  ["101.325", "kPa", "pressure", 1013.25],
  ["1013.25", "mbar", "pressure", 1013.25],
  ["45", "%", "humidity", 45],
] as const)("%s %s is a %s of %f", (text, unit, quantity, value) => {
  const sensed = sensedValue(text, unit);
  expect(sensed?.quantity).toBe(quantity);
  // 760 × half a last digit of that factor is 0.0004 hPa
  expect(sensed?.value).toBeCloseTo(value, 3);
});

test("lines that name each unit are read without set-up, anything unknown beside a number is not", () => {
  const read = readPlainLines();
  expect(read("  21.43 °C", none)).toMatchObject({
    reading: { values: [{ quantity: "temperature", text: "21.43", value: 21.43 }] },
  });
  expect(read("21.4 °C; 1009.8 hPa; 41 %", none)).toMatchObject({
    reading: { values: [{ value: 21.4 }, { quantity: "pressure" }, { quantity: "humidity", value: 41 }] },
  });
  expect(read("-3.5 °C", none)).toMatchObject({ reading: { values: [{ value: -3.5 }] } });
  for (const line of ["21.43", "21.43 °C LOW", "max 21.43 °C", "21.43 °C 7", "21.43 g", "°C 21.43", ""])
    expect(read(line, none)).toBeNull();
  expect(read("214.3 °C", none)).toMatchObject({ event: { code: "line.damaged.sensor" } });
});

test("a learned sensor reads lines built alike, below zero too, and no others", () => {
  const lines = ["ch1=  21.37 ch2=1008.2 q7", "ch1=  21.41 ch2=1008.2 q7", "ch1=  21.42 ch2=1008.1 q7"];
  const learned = learnSensor("bath", lines, [
    { text: "21,42", unit: "°C" },
    { text: "1008.1", unit: "hPa" },
  ]);
  if (!("profile" in learned)) throw new Error(JSON.stringify(learned));
  const read = readBySensorProfile(learned.profile);
  expect(read("ch1=  -1.05 ch2= 987.4 q7", none)).toMatchObject({
    reading: { values: [{ value: -1.05 }, { value: 987.4 }] },
  });
  for (const line of [
    "ch1=  21.42 ch2=1008.1 e7",
    "ch1=  21.42 ch2=1008.1 q3",
    "ch1=  21.42 ch2=1008.1",
    "  21.42 ch2=1008.1 q7",
    "ch1=ERR ch2=1008.1 q7",
  ])
    expect(read(line, none)).toBeNull();
});

test("a value that stands at two places is asked, the answer settles it", () => {
  const lines = ["A 21.4 B 21.4", "A 21.4 B 21.5", "A 21.4 B 21.4"];
  const asked = learnSensor("air", lines, [{ text: "21.4", unit: "°C" }]);
  expect(asked).toMatchObject({ asks: { code: "sensor.learn.which" }, options: [{ at: 0 }, { at: 1 }] });
  const settled = learnSensor("air", lines, [{ text: "21.4", unit: "°C", at: 1 }]);
  expect(settled).toMatchObject({ profile: { values: [{ at: 1, unit: "°C" }] } });
});

test.each([
  ["sensor.learn.few-lines", ["T 21.4"], "21.4", "°C"],
  ["sensor.learn.lines-differ", ["T 21.4", "T 21.4", "P 1008.1 x"], "21.4", "°C"],
  ["sensor.learn.no-number", ["ready", "ready", "ready"], "21.4", "°C"],
  ["sensor.learn.not-found", ["T 214", "T 214", "T 215"], "21.4", "°C"],
  ["sensor.learn.value", ["T 21.4", "T 21.4", "T 21.4"], "21.4", "g"],
  ["sensor.learn.point-and-comma", ["T 21.4 3,5", "T 21.4 3,5", "T 21.4 3,5"], "21.4", "°C"],
])("%s is said where nothing can be learned", (code, lines, text, unit) => {
  expect(learnSensor("x", lines, [{ text, unit }])).toMatchObject({ refused: { code } });
});
