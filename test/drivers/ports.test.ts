import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { listPorts, type PortRoots, stableName } from "../../drivers/ports.ts";
import { keptFor } from "../../server/routes/balance-words.ts";

// A small tree of /dev and /sys as the system keeps it for USB serial adapters.
let root: string;
let roots: PortRoots;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "ports-"));
  roots = { dev: join(root, "dev"), sys: join(root, "sys") };
  for (const folder of ["dev/serial/by-id", "dev/serial/by-path", "sys/class/tty"])
    mkdirSync(join(root, folder), { recursive: true });
});
afterEach(() => rmSync(root, { recursive: true }));

function plugIn(name: string, socket: string, idName: string | null, serial: string | null): void {
  const usb = join(root, "sys/devices/usb1", socket);
  mkdirSync(join(usb, "interface", name), { recursive: true });
  writeFileSync(join(usb, "idVendor"), "1a2b\n");
  writeFileSync(join(usb, "idProduct"), "0003\n");
  if (serial !== null) writeFileSync(join(usb, "serial"), `${serial}\n`);
  mkdirSync(join(root, "sys/class/tty", name));
  symlinkSync(join(usb, "interface", name), join(root, "sys/class/tty", name, "device"));
  writeFileSync(join(root, "dev", name), "");
  if (idName) symlinkSync(join(root, "dev", name), join(root, "dev/serial/by-id", idName));
  symlinkSync(join(root, "dev", name), join(root, "dev/serial/by-path", `socket-${socket}`));
}

test("what is told of a balance is kept for the device when it has a name of its own, and else it is said why not", () => {
  plugIn("ttyUSB1", "1-1", "usb-adapter_A113", "A113");
  expect(keptFor(join(roots.dev, "ttyUSB1"), roots)).toMatch(
    /^the device itself \(USB device 1a2b:0003, .* A113\)/,
  );
  plugIn("ttyUSB2", "1-2", null, "A113");
  expect(keptFor(join(roots.dev, "ttyUSB2"), roots)).toMatch(/^this socket, because another device/);
});

test("a device with a name of its own is listed by it, and found again under another number", () => {
  plugIn("ttyUSB1", "1-1", "usb-adapter_A113", "A113");
  expect(listPorts(roots)).toMatchObject([
    {
      path: join(roots.dev, "serial/by-id/usb-adapter_A113"),
      device: join(roots.dev, "ttyUSB1"),
      stableBy: "device",
      identity: "USB device 1a2b:0003, serial number A113",
    },
  ]);
  expect(stableName(join(roots.dev, "ttyUSB1"), roots)).toBe(
    join(roots.dev, "serial/by-id/usb-adapter_A113"),
  );
});

test("two adapters that call themselves the same are named by their sockets, and the words say so", () => {
  plugIn("ttyUSB0", "1-1", "usb-adapter", null);
  plugIn("ttyUSB1", "1-2", null, null);
  const ports = listPorts(roots);
  expect(ports.map(({ stableBy }) => stableBy)).toEqual(["socket", "socket"]);
  expect(ports[0]?.says).toMatch(/named by its socket, because another device calls itself the same/);
});

test("without the links of the system a port keeps its bare name and the words say so", () => {
  mkdirSync(join(root, "sys/class/tty/ttyACM0"));
  writeFileSync(join(root, "dev/ttyACM0"), "");
  expect(listPorts(roots)).toMatchObject([
    { stableBy: "nothing", identity: null, says: expect.stringMatching(/no stable name/) },
  ]);
});

test("ports of the board without hardware are not listed, and neither are terminals", () => {
  for (const name of ["ttyS3", "tty1", "ptmx"]) mkdirSync(join(root, "sys/class/tty", name));
  expect(listPorts(roots)).toEqual([]);
});
