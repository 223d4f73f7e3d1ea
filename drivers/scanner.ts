import { balanceName } from "./balance-name.ts";
import type { Device } from "./device.ts";
import { createNetworkDevice, parseNetworkAddress } from "./network-balance.ts";
import { createSerialDevice } from "./serial-balance.ts";

/** A code as it was scanned: trimmed text without control characters. */
export interface Scanned {
  code: string;
}

const longestCode = 80;

/** A barcode reader on a serial or network line; each line is one code. Throws Refusal for a wrong address. */
export function scannerAt(address: string, line = "9600-8n1"): Device<Scanned> {
  const parts = {
    name: balanceName.sensor(address),
    patienceMs: Number.POSITIVE_INFINITY,
    read: () => (text: string) => {
      const code = text.replace(/[\x00-\x1f\x7f]/g, "").trim();
      return code === "" || code.length > longestCode ? null : { reading: { code } };
    },
  };
  return address.startsWith("/")
    ? createSerialDevice<Scanned>({ path: address, line, ...parts })
    : createNetworkDevice<Scanned>({ ...parseNetworkAddress(address), ...parts });
}
