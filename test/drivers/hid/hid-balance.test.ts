import { execFileSync } from "node:child_process";
import {
  closeSync,
  constants,
  mkdirSync,
  mkdtempSync,
  openSync,
  rmSync,
  writeFileSync,
  writeSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { listScales } from "../../../drivers/hid/scales.ts";
import { createHidBalance } from "../../../drivers/hid-balance.ts";
import { inWords } from "../sample-lines.ts";
import { scaleDescriptor } from "./descriptors.ts";

test("a USB scale is found by its descriptor, read report by report, and told when it is gone", async () => {
  const root = mkdtempSync(join(tmpdir(), "hid-"));
  const roots = { dev: join(root, "dev"), sys: join(root, "sys") };
  const device = join(roots.sys, "class/hidraw/hidraw0/device");
  mkdirSync(device, { recursive: true });
  mkdirSync(roots.dev);
  writeFileSync(join(device, "report_descriptor"), scaleDescriptor());
  writeFileSync(
    join(device, "uevent"),
    "HID_ID=0003:00001A2B:00000003\nHID_NAME=invented scale\nHID_UNIQ=\n",
  );
  // A pipe stands in for the raw device: it too gives one report per read and cannot be sought.
  const path = join(roots.dev, "hidraw0");
  execFileSync("mkfifo", [path]);
  const far = openSync(path, constants.O_RDWR);
  const [scale] = listScales(roots);
  expect(scale).toMatchObject({ path, identity: "invented scale (1A2B:0003), no serial number" });

  const balance = createHidBalance({ path, scales: () => listScales(roots) });
  const heard: string[] = [];
  const raw: string[] = [];
  balance.onLine((record) => {
    heard.push(record.reading ? inWords({ reading: record.reading }) : record.event.kind);
    raw.push(record.raw);
  });
  balance.start();
  await vi.waitFor(() => expect(heard).toEqual(["open"]));
  writeSync(far, Uint8Array.of(3, 4, 2, 0xfe, 0x27, 0x0c));
  await vi.waitFor(() => expect(heard).toEqual(["open", "31.11 g steady"]));
  expect(raw[1]).toBe("\\x03\\x04\\x02\\xFE'\\x0C");
  rmSync(join(roots.sys, "class"), { recursive: true });
  closeSync(far);
  await vi.waitFor(() => expect(heard.slice(2)).toEqual(["lost", "refused"]));
  await balance.stop();
  rmSync(root, { recursive: true });
});
