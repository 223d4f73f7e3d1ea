import { afterEach, beforeEach, expect, test } from "vitest";
import { type Cable, createCable } from "../../drivers/pty.ts";
import { PluggedProbe } from "../../drivers/sensors/plugged-probe.ts";
import { until } from "../../until.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { textOf } from "./recorded.ts";

let at: TestBench;
let probe: Cable;
beforeEach(async () => {
  probe = createCable();
  at = await buildTestBench();
});
afterEach(async () => {
  await at.close();
  await at.sensors.close();
  probe.unplug();
});

const add = (fields: Record<string, string> = {}) =>
  at.post("/settings/sensors", {
    address: probe.path,
    line: "9600-8n1",
    place: "liquid",
    "half-temperature": "0.05",
    ...fields,
  });

/** Sends a line until the sensor shows it; what comes before the first line end is dropped. */
async function shows(line: string, celsius: number): Promise<void> {
  await until(() => {
    probe.send(`${line}\r\n`);
    return at.sensors.now().sensed.some(({ value }) => value === celsius);
  }, `the probe at ${celsius} °C`);
}

test("a probe is added, and its temperature goes with each reading into the record, drift and all", async () => {
  expect((await add()).statusCode).toBe(303);
  await shows("21.40 °C", 21.4);
  await at.post("/bench/piece", { ticket: "L-1", method: "hung", claim: "ag-999", key: "L-1" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await shows("21.44 °C", 21.44);
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await shows("21.48 °C", 21.48);
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1437", unit: "g" });
  expect(at.bench.item?.captures[1]?.sensed).toMatchObject([
    { sensor: probe.path, place: "liquid", quantity: "temperature", text: "21.44", unit: "°C", value: 21.44 },
  ]);
  expect(at.bench.item?.captures[1]?.sensed?.[0]?.raw).toBe("21.44 \\xB0C\\r\\n");
  const response = await at.post("/bench/record", {});
  expect(response.statusCode).toBe(303);
  const [result] = await at.ledger.entries({ kind: "result" });
  if (result?.kind !== "result") throw new Error("no record");
  expect(result.body.request).toMatchObject({
    liquid: {
      // the mean of both immersed readings, the half-width its owner stated over √3, half of the range of all three
      temperature_c: expect.closeTo(21.46, 9),
      temperature_u_c: expect.closeTo(0.05 / Math.sqrt(3), 9),
      gradient_c: expect.closeTo(0.04, 9),
    },
  });
});

test("a probe that was checked is corrected by it, with its uncertainty; what it showed is kept, and a changed display is asked about", async () => {
  await add();
  await shows("21.40 °C", 21.4);
  expect(await textOf(at, "/checks/thermometer")).toContain(probe.path);
  const reading = (name: string, values: string[]) =>
    Object.fromEntries(values.map((value, i) => [`${name}-${i + 1}`, value]));
  const kept = await at.post("/checks/thermometer", {
    sensor: probe.path,
    ...reading("stated", ["21.70", "21.70", "21.70"]),
    ...reading("reading", ["21.40", "21.40", "21.40"]),
    referenceU: "0.02",
    by: "A. Berg",
    step: "probe",
  });
  expect(kept.statusCode).toBe(303);
  await at.post("/bench/piece", { ticket: "L-5", method: "hung", claim: "ag-999", key: "L-5" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await shows("21.4 °C", 21.4);
  await until(() => {
    probe.send("21.4 °C\r\n");
    return at.sensors.now().sensed[0]?.text === "21.4";
  }, "the other display");
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1437", unit: "g" });
  expect(at.bench.checks.map(({ code }) => code)).toContain("check.sensor-display-changed");
  expect((await at.post("/bench/record", {})).statusCode).toBe(303);
  const [result] = await at.ledger.entries({ kind: "result" });
  if (result?.kind !== "result") throw new Error("no record");
  // three like pairs: of the correction only the last place, read twice, and the reference are left
  const u = Math.hypot(0.01 / Math.sqrt(6), 0.02);
  expect(result.body.request).toMatchObject({
    liquid: {
      temperature_c: expect.closeTo(21.7, 9),
      temperature_correction_c: expect.closeTo(0.3, 9),
      temperature_u_c: expect.closeTo(Math.hypot(u, (0.01 * 0.3) / Math.sqrt(3)), 9),
    },
  });
  const capture = (await at.ledger.entriesOf("L-5")).find(({ body }) => "sensed" in body);
  expect(capture?.body).toMatchObject({ sensed: [{ text: "21.40", value: 21.4 }] });
});

test("the same form sent twice takes one reading, also when the probe moved in between", async () => {
  await add();
  await shows("21.40 °C", 21.4);
  await at.post("/bench/piece", { ticket: "L-4", method: "hung", claim: "ag-999", key: "L-4" });
  const version = `${at.bench.about.seen}`;
  const form = { role: "dry", reading: "31.1035", unit: "g", version };
  expect((await at.post("/bench/typed-readings", form)).statusCode).toBe(303);
  await shows("21.45 °C", 21.45);
  expect((await at.post("/bench/typed-readings", form)).statusCode).toBe(303);
  expect(at.bench.item?.captures.map(({ sensed }) => sensed?.[0]?.value)).toEqual([21.4]);
  const other = await at.post("/bench/typed-readings", { ...form, reading: "31.1036" });
  expect(other.statusCode).toBe(422);
});

test("lines without units are set up by what the probe shows; a typed temperature counts before it", async () => {
  await add();
  await until(() => {
    probe.send("t1=21.37 t2=21.37 ok\r\n");
    return (at.sensors.all[0]?.recent() ?? []).filter(({ raw }) => raw !== "").length >= 4;
  }, "lines of the probe");
  expect(at.sensors.now().silent).toEqual([probe.path]);
  const unit = { "temperature-unit": "°C" };
  const asked = await at.post("/settings/sensors/set-up", {
    address: probe.path,
    temperature: "21.37",
    ...unit,
  });
  expect(asked.body.match(/<input type="radio" name="at"/g)).toHaveLength(2);
  await at.post("/settings/sensors/set-up", { address: probe.path, temperature: "21,37", ...unit, at: "3" });
  await until(() => {
    probe.send("t1=21.10 t2=21.60 ok\r\n");
    return at.sensors.now().sensed.length === 1;
  }, "the probe read as set up");
  expect(at.sensors.now().sensed).toMatchObject([{ value: 21.6 }]);

  await at.post("/bench/piece", { ticket: "L-2", method: "hung", claim: "ag-999", key: "L-2" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await at.post("/bench/water", { celsius: "23.0" });
  // 0.05 °C of the sensor and the usual 0.5 °C of what was typed do not bridge 1.4 °C
  expect(at.bench.checks.map(({ code }) => code)).toContain("check.thermometers-differ");
  expect(await textOf(at, "/")).toContain("23.0");
});

test("a probe that falls silent or leaps is asked about, and is heard again after a restart", async () => {
  await add();
  await shows("21.40 °C", 21.4);
  await at.post("/bench/piece", { ticket: "L-3", method: "hung", claim: "ag-999", key: "L-3" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await shows("24.90 °C", 24.9);
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  expect(at.bench.checks.map(({ code }) => code)).toContain("check.temperature-jumped");
  probe.unplug();
  await until(() => at.sensors.now().silent.length === 1, "the silence of the probe");
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1436", unit: "g" });
  expect(at.bench.checks.map(({ code }) => code)).toContain("check.sensor-silent");
  await at.close();
  await at.sensors.close();
  at = await buildTestBench(at.file);
  expect(at.sensors.all.map(({ choice }) => choice.address)).toEqual([probe.path]);
});

test("a USB probe that the kernel shows as files is offered, chosen, and weighed with beside a balance on its cable, up to the record", async () => {
  const plugged = new PluggedProbe();
  const cable = createCable();
  const folder = plugged.plugIn(0, { in_temp_raw: "2140", in_temp_scale: "10.000000" });
  await at.close();
  at = await buildTestBench(undefined, { roots: plugged.roots });
  const address = "iio:temperature (1a2b:0003) #A113";
  expect(await textOf(at, "/settings/sensors")).toContain(address);
  expect((await add({ address: folder })).statusCode).toBe(303);
  expect(at.sensors.found()).toEqual([]);
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  await at.post("/bench/piece", { ticket: "L-6", method: "hung", claim: "ag-999", key: "L-6" });
  const take = async (role: string, grams: string, celsius: number, count: number) => {
    plugged.write({ in_temp_raw: `${Math.round(celsius * 100)}` });
    await until(() => at.sensors.now().sensed.some(({ value }) => value === celsius), `${celsius} °C`);
    for (const { kind } of at.bench.scale?.checks() ?? [])
      await at.post("/bench/balance-looked-at", { kind });
    await until(() => {
      cable.send(`  ${grams} g   stable\r\n`);
      return at.bench.scale?.live().state === "reading";
    }, "the balance");
    await at.post("/bench/captures", { role });
    await until(() => {
      cable.send(`  ${grams} g   stable\r\n`);
      return at.bench.item?.captures.length === count;
    }, `reading ${count}`);
  };
  await take("dry", "31.1035", 21.4, 1);
  await take("immersed", "28.1435", 21.44, 2);
  expect(at.bench.item?.captures[1]?.sensed).toMatchObject([
    {
      sensor: address,
      quantity: "temperature",
      text: "21.44",
      raw: "in_temp_raw=2144 in_temp_scale=10.000000",
    },
  ]);
  plugged.unplug();
  await until(() => at.sensors.now().silent.length === 1, "the probe pulled out");
  const response = await at.post("/bench/record", {});
  expect(response.statusCode).toBe(303);
  const [result] = await at.ledger.entries({ kind: "result" });
  if (result?.kind !== "result") throw new Error("no record");
  expect(result.body.request).toMatchObject({
    liquid: {
      temperature_c: expect.closeTo(21.44, 9),
      temperature_u_c: expect.closeTo(0.05 / Math.sqrt(3), 9),
      gradient_c: expect.closeTo(0.02, 9),
    },
  });
  await at.close();
  await at.sensors.close();
  plugged.plugIn(5, { in_temp_raw: "2150", in_temp_scale: "10.000000" });
  at = await buildTestBench(at.file, { roots: plugged.roots });
  await until(() => at.sensors.now().sensed.some(({ value }) => value === 21.5), "the probe after a restart");
  await at.sensors.close();
  cable.unplug();
  plugged.remove();
});

test.each([
  [{ address: "/dev/hidraw7" }, "address"],
  [{ address: "iio:thermometer at 1-2" }, "address"],
  [{ address: "COM3" }, "address"],
  [{ "half-temperature": "0" }, "half-temperature"],
  [{ line: "9601-8n1" }, "line"],
])("what cannot be right is refused beside its entry: %j", async (fields, field) => {
  const refused = await add(fields);
  expect(refused.statusCode).toBe(422);
  expect(refused.body).toContain(`id="${field}-problem"`);
  expect(at.sensors.all).toHaveLength(0);
});
