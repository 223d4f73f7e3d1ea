import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { parseArgs } from "node:util";
import { listScales } from "../../drivers/hid/scales.ts";
import { listPorts } from "../../drivers/ports.ts";
import { type Locale, locales } from "../../views/messages/language.ts";
import { tell } from "../../views/messages/tell.ts";
import { dataFolder } from "../ledger/data-folder.ts";
import { findings } from "./doctor/findings.ts";
import { systemFiles, usbDevice } from "./doctor/system-files.ts";
import { told } from "./told.ts";

const serviceFolder = "/var/lib/underhook";

const usage = `underhook doctor [--data FOLDER] [--install-rules [--write] [--root FOLDER]] [--lang LANGUAGE]
  looks at the program, the data folder, the ledger, the clock and the ports, and says what to do.

  --data FOLDER     the data folder to look at (default: UNDERHOOK_DATA, or ./underhook-data)
  --install-rules   prints device rules for what is plugged in, and a unit that starts the bench with the machine
  --write           writes them after all; needs the rights of the administrator
  --root FOLDER     writes below this folder (default /)
  --lang LANGUAGE   language of what is found: ${locales.join(", ")} (default en)`;

/** `underhook doctor`: 0 when all is in order, 1 when something is to be done, 2 for a wrong call. */
export async function run(args: string[]): Promise<number> {
  return told("doctor", async () => {
    const { values } = parseArgs({
      args,
      options: {
        data: { type: "string" },
        "install-rules": { type: "boolean", default: false },
        write: { type: "boolean", default: false },
        root: { type: "string", default: "/" },
        lang: { type: "string", default: "en" },
        help: { type: "boolean", short: "h", default: false },
      },
    });
    if (values.help) {
      console.log(usage);
      return 0;
    }
    const locale = locales.find((one) => one === values.lang);
    if (locale === undefined) {
      console.error(`underhook doctor: there is no language "${values.lang}". Right: ${locales.join(", ")}.`);
      return 2;
    }
    if (values["install-rules"]) return installRules(values.write, values.root);
    return look(values.data ?? dataFolder(), locale);
  });
}

async function look(folder: string, locale: Locale): Promise<number> {
  const found = await findings(folder, new Date());
  for (const { good, message } of found) console.log(`${good ? "ok  " : "todo"}  ${tell(message, locale)}`);
  return found.every(({ good }) => good) ? 0 : 1;
}

/** Prints the files; writes them only when asked to. */
function installRules(write: boolean, root: string): number {
  const devices = [
    ...listPorts().map(({ identity }) => usbDevice("tty", identity)),
    ...listScales().map(({ identity }) => usbDevice("hidraw", identity)),
  ].filter((device) => device !== undefined);
  for (const { place, text } of systemFiles(devices, serviceFolder)) {
    const path = join(root, place);
    console.log(`# ${path}\n${text}`);
    if (!write) continue;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text, { mode: 0o644 });
  }
  if (!write) console.log("# Nothing was written. Add --write to write these files.");
  return 0;
}
