import { readFileSync, realpathSync } from "node:fs";
import { basename, dirname, join } from "node:path";

/** A device on USB, as the system's folders describe it. */
export interface UsbPlace {
  /** four hexadecimal digits each */
  vendor: string;
  product: string;
  serial: string | null;
  /** the socket it is plugged into, such as "1-2" */
  socket: string;
}

/**
 * What the USB device behind a port says it is: "USB 1a2b:0003 #A113", vendor, product and serial number. Null for a port
 * that is not on USB. Two adapters without a serial number say the same, and cannot be told apart.
 */
export function usbIdentity(path: string, { sys }: { sys: string } = { sys: "/sys" }): string | null {
  try {
    const usb = usbAbove(realpathSync(join(sys, "class/tty", basename(realpathSync(path)), "device")));
    return usb && `USB ${usb.vendor}:${usb.product}${usb.serial === null ? "" : ` #${usb.serial}`}`;
  } catch {
    return null;
  }
}

/** The USB device that a real folder of the system belongs to; null where it is not on USB. */
export function usbAbove(realFolder: string): UsbPlace | null {
  for (let folder = realFolder; folder !== dirname(folder); folder = dirname(folder)) {
    const vendor = fileLine(join(folder, "idVendor"));
    const product = fileLine(join(folder, "idProduct"));
    if (vendor !== null && product !== null)
      return { vendor, product, serial: fileLine(join(folder, "serial")), socket: basename(folder) };
  }
  return null;
}

/** What a file of the system holds, without the line end; null when it cannot be read. */
export function fileLine(path: string): string | null {
  try {
    return readFileSync(path, "utf8").trim();
  } catch {
    return null;
  }
}
