import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { listPorts, stableName } from "../../drivers/ports.ts";
import { PluggedPorts } from "./plugged-ports.ts";

let tree: PluggedPorts;
beforeEach(() => {
  tree = new PluggedPorts();
});
afterEach(() => tree.remove());

test("a device with a name of its own is listed by it, and found again under another number", () => {
  tree.plugIn("ttyUSB1", "1-1", "usb-adapter_A113", "A113");
  expect(listPorts(tree.roots)).toMatchObject([
    {
      path: join(tree.roots.dev, "serial/by-id/usb-adapter_A113"),
      device: join(tree.roots.dev, "ttyUSB1"),
      stableBy: "device",
      identity: "USB 1a2b:0003 #A113",
    },
  ]);
  expect(stableName(join(tree.roots.dev, "ttyUSB1"), tree.roots)).toBe(
    join(tree.roots.dev, "serial/by-id/usb-adapter_A113"),
  );
});

test("two adapters that call themselves the same are named by their sockets", () => {
  tree.plugIn("ttyUSB0", "1-1", "usb-adapter", null);
  tree.plugIn("ttyUSB1", "1-2", null, null);
  const ports = listPorts(tree.roots);
  expect(ports.map(({ stableBy }) => stableBy)).toEqual(["socket", "socket"]);
});

test("without the links of the system a port keeps its bare name", () => {
  mkdirSync(join(tree.root, "sys/class/tty/ttyACM0"));
  writeFileSync(join(tree.root, "dev/ttyACM0"), "");
  expect(listPorts(tree.roots)).toMatchObject([{ stableBy: "nothing", identity: null }]);
});

test("ports of the board without hardware are not listed, and neither are terminals", () => {
  for (const name of ["ttyS3", "tty1", "ptmx"]) mkdirSync(join(tree.root, "sys/class/tty", name));
  expect(listPorts(tree.roots)).toEqual([]);
});
