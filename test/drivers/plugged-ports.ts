import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { PortRoots } from "../../drivers/ports.ts";

/** A small tree of /dev and /sys as the system keeps it for USB serial adapters. */
export class PluggedPorts {
  readonly root = mkdtempSync(join(tmpdir(), "ports-"));
  readonly roots: PortRoots = { dev: join(this.root, "dev"), sys: join(this.root, "sys") };

  constructor() {
    for (const folder of ["dev/serial/by-id", "dev/serial/by-path", "sys/class/tty"])
      mkdirSync(join(this.root, folder), { recursive: true });
  }

  /** An adapter in a socket; without a name when another one calls itself the same. */
  plugIn(name: string, socket: string, idName: string | null, serial: string | null): void {
    const { root } = this;
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

  remove(): void {
    rmSync(this.root, { recursive: true });
  }
}
