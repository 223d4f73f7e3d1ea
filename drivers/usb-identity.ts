import { readFileSync, realpathSync } from "node:fs";
import { basename, dirname, join } from "node:path";

/**
 * What the USB device behind a port says it is: "USB 1a2b:0003 #A113", vendor, product and serial number. Null for a port
 * that is not on USB. Two adapters without a serial number say the same, and cannot be told apart.
 */
export function usbIdentity(path: string, { sys }: { sys: string } = { sys: "/sys" }): string | null {
  let folder: string;
  try {
    folder = realpathSync(join(sys, "class/tty", basename(realpathSync(path)), "device"));
  } catch {
    return null;
  }
  while (folder.length > 1 && folder !== dirname(folder)) {
    const vendor = line(join(folder, "idVendor"));
    const product = line(join(folder, "idProduct"));
    if (vendor !== null && product !== null) {
      const serial = line(join(folder, "serial"));
      return `USB ${vendor}:${product}${serial === null ? "" : ` #${serial}`}`;
    }
    folder = dirname(folder);
  }
  return null;
}

function line(path: string): string | null {
  try {
    return readFileSync(path, "utf8").trim();
  } catch {
    return null;
  }
}
