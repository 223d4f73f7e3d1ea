import { execFileSync } from "node:child_process";
import { constants, mkdirSync, mkdtempSync, openSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { scaleDescriptor } from "./descriptors.ts";

/**
 * An invented USB scale as the kernel would show it. A pipe stands in for the raw device: it too gives one report per
 * read and cannot be sought. `far` is the scale's end of it.
 */
export function scaleOnAPipe() {
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
  const path = join(roots.dev, "hidraw0");
  execFileSync("mkfifo", [path]);
  return { root, path, roots, far: openSync(path, constants.O_RDWR) };
}
