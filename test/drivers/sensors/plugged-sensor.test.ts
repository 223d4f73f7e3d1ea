import { execFileSync } from "node:child_process";
import { closeSync, constants, mkdirSync, openSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { listPluggedSensors, pluggedSensor } from "../../../drivers/sensors/plugged-sensors.ts";
import { sensorAt } from "../../../drivers/sensors/sensor-at.ts";
import { sensorDescriptor } from "../hid/descriptors.ts";
import { PluggedProbe } from "./plugged-probe.ts";

let probe: PluggedProbe;
const stops: (() => unknown)[] = [];
beforeEach(() => {
  probe = new PluggedProbe();
});
afterEach(async () => {
  for (const stop of stops.splice(0)) await stop();
  probe.remove();
});

function hear(address: string) {
  const heard: string[] = [];
  const raw: string[] = [];
  const sensor = sensorAt({ address, roots: probe.roots });
  sensor.onLine((record) => {
    const values = record.reading?.values.map(({ text, unit }) => `${text} ${unit}`);
    heard.push(values?.join(" ") ?? record.event?.kind ?? "");
    raw.push(record.raw);
  });
  sensor.start();
  stops.push(() => sensor.stop());
  const until = (text: string) =>
    vi.waitFor(() => expect(heard.at(-1)).toBe(text), { timeout: 20_000, interval: 10 });
  return { until, heard, raw };
}

test("a probe the kernel shows as files is read again and again, and found again under another number", async () => {
  const folder = probe.plugIn(0, { in_temp_raw: "2140", in_temp_offset: "0", in_temp_scale: "10.000000" });
  const address = "iio:temperature (1a2b:0003) #A113";
  expect(listPluggedSensors(probe.roots)).toMatchObject([
    { address, path: folder, quantities: ["temperature"] },
  ]);
  const { until, heard, raw } = hear(address);
  await until("21.40 °C");
  expect(raw.at(-1)).toBe("in_temp_raw=2140 in_temp_scale=10.000000 in_temp_offset=0");
  probe.write({ in_temp_raw: "2152" });
  await until("21.52 °C");
  probe.write({ in_temp_raw: "" });
  await until("error");
  probe.unplug();
  await until("refused");
  expect(heard).toContain("lost");
  probe.plugIn(3, { in_temp_input: "21600" }, { serial: "B220" });
  expect(() => pluggedSensor(address, probe.roots)).toThrow("line.refused.missing-sensor");
  probe.unplug();
  probe.plugIn(4, { in_temp_input: "21700" });
  await until("21.700 °C");
  expect(heard).toContain("back");
});

test("where one quantity is there twice each is chosen by itself; without serial number the socket counts", async () => {
  probe.plugIn(
    0,
    { in_temp_object_raw: "2140", in_temp_ambient_raw: "2310", in_temp_scale: "10" },
    { serial: "" },
  );
  const name = "iio:temperature (1a2b:0003) at 1-2";
  expect(listPluggedSensors(probe.roots).map(({ address }) => address)).toEqual([
    `${name} in_temp_ambient`,
    `${name} in_temp_object`,
  ]);
  await hear(`${name} in_temp_ambient`).until("23.10 °C");
  await hear(name).until("refused");
});

test("a raw USB sensor is found by its descriptor, read report by report, and told when it is gone", async () => {
  const { roots } = probe;
  const device = join(roots.sys, "class/hidraw/hidraw2/device");
  mkdirSync(device, { recursive: true });
  mkdirSync(roots.dev);
  writeFileSync(join(device, "report_descriptor"), sensorDescriptor());
  writeFileSync(
    join(device, "uevent"),
    "HID_ID=0003:00001A2B:00000007\nHID_NAME=invented probe\nHID_PHYS=usb-1.0-2/input0\nHID_UNIQ=\n",
  );
  const path = join(roots.dev, "hidraw2");
  execFileSync("mkfifo", [path]);
  const far = openSync(path, constants.O_RDWR);
  const address = "hid:invented probe (1A2B:0007) at usb-1.0-2/input0";
  expect(listPluggedSensors(roots)).toMatchObject([{ address, path, quantities: ["temperature"] }]);
  const { until, raw } = hear(address);
  await until("open");
  writeSync(far, Uint8Array.of(1, 2, 0x5c, 0x08)); // 0x085C = 2140
  await until("21.40 °C");
  expect(raw.at(-1)).toBe("\\x01\\x02\\\\\\x08");
  rmSync(join(roots.sys, "class"), { recursive: true });
  closeSync(far);
  await until("refused");

  // what the kernel shows as files is listed once
  mkdirSync(join(device, "HID-SENSOR-200033.1.auto/iio:device0"), { recursive: true });
  writeFileSync(join(device, "report_descriptor"), sensorDescriptor());
  writeFileSync(join(device, "uevent"), "HID_ID=0003:00001A2B:00000007\n");
  expect(listPluggedSensors(roots)).toEqual([]);
});
