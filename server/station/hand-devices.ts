import { z } from "zod";
import { Refusal } from "../../calibration/refusal.ts";
import type { Device } from "../../drivers/device.ts";
import { type FootSwitch, footSwitchAt } from "../../drivers/hid/foot-switch.ts";
import { parseLineSettings } from "../../drivers/line-settings.ts";
import { type Scanned, scannerAt } from "../../drivers/scanner.ts";
import type { Ledger } from "../ledger/ledger.ts";

/** What helps the hands of the operator; an empty address stands for none. */
export const handDevicesShape = z.strictObject({
  scanner: z.string().trim().max(300).default(""),
  scannerLine: z.string().max(40).default("9600-8n1"),
  /** raw device of a foot switch, such as /dev/hidraw2 */
  footSwitch: z.string().trim().max(300).default(""),
});

export type HandDeviceChoice = z.infer<typeof handDevicesShape>;

/** What the pages are told: the last code that was scanned, and how many presses and scans there were since the start. */
export interface HandsNow {
  code: string;
  scans: number;
  presses: number;
}

/** A barcode reader and a foot switch, owned by the server; every open bench page hears of them. */
export class HandDevices {
  choice: HandDeviceChoice = handDevicesShape.parse({});
  #now: HandsNow = { code: "", scans: 0, presses: 0 };
  readonly #ledger: Ledger;
  #scanner: Device<Scanned> | undefined;
  #switch: FootSwitch | undefined;
  readonly #listeners = new Set<() => void>();

  constructor(ledger: Ledger) {
    this.#ledger = ledger;
  }

  get now(): HandsNow {
    return this.#now;
  }

  /** Opens what was kept last. */
  async resume(): Promise<void> {
    const [entry] = await this.#ledger.entries({ kind: "hand-devices", newestFirst: true, limit: 1 });
    const kept = handDevicesShape.safeParse(entry?.kind === "hand-devices" ? entry.body : {});
    if (kept.success) this.#open(kept.data);
  }

  /** Keeps a choice and goes over to it. Throws Refusal, LedgerError; then the earlier one goes on. */
  async keep(asked: HandDeviceChoice): Promise<void> {
    const read = handDevicesShape.safeParse(asked);
    if (!read.success) throw new Refusal("port.address", { address: asked.scanner }, "scanner");
    const { scanner, scannerLine, footSwitch } = read.data;
    if (scanner.startsWith("/")) parseLineSettings(scannerLine);
    if (footSwitch !== "" && !footSwitch.startsWith("/"))
      throw new Refusal("port.address", { address: footSwitch }, "footSwitch");
    if (scanner !== "") scannerAt(scanner, scannerLine);
    await this.#ledger.append("hand-devices", "hand-devices", read.data);
    await this.close();
    this.#open(read.data);
  }

  /** Calls back after every code and every press. */
  onChange(listener: () => void): void {
    this.#listeners.add(listener);
  }

  async close(): Promise<void> {
    this.#switch?.stop();
    await this.#scanner?.stop();
    this.#switch = undefined;
    this.#scanner = undefined;
  }

  #open(choice: HandDeviceChoice): void {
    this.choice = choice;
    if (choice.scanner !== "") {
      this.#scanner = scannerAt(choice.scanner, choice.scannerLine);
      this.#scanner.onLine(({ reading }) => {
        if (reading) this.#tell({ ...this.#now, code: reading.code, scans: this.#now.scans + 1 });
      });
      this.#scanner.start();
    }
    if (choice.footSwitch !== "") {
      this.#switch = footSwitchAt(choice.footSwitch, () =>
        this.#tell({ ...this.#now, presses: this.#now.presses + 1 }),
      );
      this.#switch.start();
    }
  }

  #tell(now: HandsNow): void {
    this.#now = now;
    for (const listener of this.#listeners) listener();
  }
}
