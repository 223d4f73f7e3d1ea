import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { listScales } from "../../drivers/hid/scales.ts";
import { listPorts } from "../../drivers/ports.ts";
import { listHidSensors } from "../../drivers/sensors/hid-sensors.ts";
import { dataFolder } from "../ledger/data-folder.ts";
import { command, type Voice } from "./command.ts";
import { findings } from "./doctor/findings.ts";
import { systemFiles, usbDevice } from "./doctor/system-files.ts";

const serviceFolder = "/var/lib/underhook";

const usage = {
  name: "doctor",
  options: {
    data: { type: "string" },
    "install-rules": { type: "boolean", default: false },
    write: { type: "boolean", default: false },
    root: { type: "string", default: "/" },
  },
  takesArguments: false,
} as const;

/** `underhook doctor`: 0 when all is in order, 1 when something is to be done, 2 for a wrong call. */
export const run = (args: string[]): Promise<number> =>
  command(usage, args, async ({ values, say }) => {
    if (values["install-rules"]) return installRules(values.write, values.root, say);
    const found = await findings(values.data ?? dataFolder(), new Date());
    for (const { good, message } of found) say.out(good ? "cli.doctor.ok" : "cli.doctor.todo", { message });
    return found.every(({ good }) => good) ? 0 : 1;
  });

/** Prints the files; writes them only when asked to. */
function installRules(write: boolean, root: string, say: Voice): number {
  const devices = [
    ...listPorts().map(({ identity }) => usbDevice("tty", identity)),
    ...listScales().map(({ identity }) => usbDevice("hidraw", identity)),
    ...listHidSensors().map(({ address }) => usbDevice("hidraw", address)),
  ].filter((device) => device !== undefined);
  for (const { place, text } of systemFiles(devices, serviceFolder)) {
    const path = join(root, place);
    console.log(`# ${path}\n${text}`);
    if (!write) continue;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text, { mode: 0o644 });
  }
  if (!write) say.out("cli.doctor.nothing-written");
  return 0;
}
