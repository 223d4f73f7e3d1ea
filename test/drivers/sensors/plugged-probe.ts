import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { PortRoots } from "../../../drivers/ports.ts";

/** An invented USB probe as the kernel shows it: real files below a /sys of its own. */
export class PluggedProbe {
  readonly root = mkdtempSync(join(tmpdir(), "probe-"));
  readonly roots: PortRoots = { dev: join(this.root, "dev"), sys: join(this.root, "sys") };
  readonly #usb = join(this.roots.sys, "devices/usb1/1-2");
  #folder = "";

  /** Plugs it in; the system counts its devices anew each time. */
  plugIn(
    number: number,
    files: Record<string, string>,
    { name = "temperature", serial = "A113" } = {},
  ): string {
    const device = `iio:device${number}`;
    const hub = "1-2:1.0/0003:1A2B:0003.0001/HID-SENSOR-200033.1.auto";
    this.#folder = join(this.#usb, hub, device);
    mkdirSync(this.#folder, { recursive: true });
    mkdirSync(join(this.roots.sys, "bus/iio/devices"), { recursive: true });
    writeFileSync(join(this.#usb, "idVendor"), "1a2b\n");
    writeFileSync(join(this.#usb, "idProduct"), "0003\n");
    if (serial !== "") writeFileSync(join(this.#usb, "serial"), `${serial}\n`);
    this.write({ name, ...files });
    const link = join(this.roots.sys, "bus/iio/devices", device);
    symlinkSync(this.#folder, link);
    return link;
  }

  write(files: Record<string, string>): void {
    for (const [file, text] of Object.entries(files)) writeFileSync(join(this.#folder, file), `${text}\n`);
  }

  unplug(): void {
    rmSync(join(this.roots.sys, "bus"), { recursive: true });
    rmSync(this.#usb, { recursive: true });
  }

  remove(): void {
    rmSync(this.root, { recursive: true, force: true });
  }
}
