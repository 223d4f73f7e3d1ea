import { parseArgs } from "node:util";
import type { Balance } from "../../drivers/balance.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import { createSerialBalance } from "../../drivers/serial-balance.ts";
import { createSimulatedBalance } from "../../drivers/simulated-balance.ts";

const usage = `underhook listen PORT [--line 9600-8n1] [--profile FILE] [--raw]

Prints what a balance says as JSON Lines until interrupted. PORT is a serial port, best by its stable name under
/dev/serial/by-id, or "simulated" for a balance that needs no cable.

  --line SETTINGS  speed, data bits, parity, stop bits (default 9600-8n1)
  --raw            print the lines as received, escaped, without reading them (keys at and raw, or at, raw and event)`;

/** `underhook listen`: 0 when interrupted, 2 when the arguments are wrong. */
export async function run(args: string[]): Promise<number> {
  let balance: Balance;
  let raw: boolean;
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        line: { type: "string" },
        profile: { type: "string" },
        raw: { type: "boolean", default: false },
        help: { type: "boolean", default: false },
      },
    });
    const [port, ...rest] = positionals;
    if (values.help) {
      console.log(usage);
      return 0;
    }
    if (port === undefined || rest.length > 0)
      throw new RangeError(`underhook listen wants one PORT and got ${positionals.length}.\n\n${usage}`);
    if (values.profile !== undefined)
      throw new RangeError("--profile is not built yet. Leave it out: the generic shapes read the lines.");
    balance =
      port === "simulated"
        ? demonstration()
        : createSerialBalance({ path: port, ...(values.line === undefined ? {} : { line: values.line }) });
    raw = values.raw;
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    return 2;
  }
  balance.onLine((record) => {
    const unread = raw && record.raw !== "";
    console.log(unread ? JSON.stringify({ at: record.at, raw: record.raw }) : jsonLine(record));
  });
  balance.start();
  await new Promise<void>((interrupted) => {
    process.once("SIGINT", () => interrupted());
    process.once("SIGTERM", () => interrupted());
  });
  await balance.stop();
  return 0;
}

/** One record as the line that is printed: at, raw, and either reading or event. */
export function jsonLine({ at, raw, reading, event }: LineRecord): string {
  if (event) return JSON.stringify({ at, raw, event: { kind: event.kind, says: event.says } });
  const { text, unit, grams, steady } = reading;
  return JSON.stringify({ at, raw, reading: { text, unit, grams, steady } });
}

/** A simulated balance that is given an invented piece, so that there is something to see. */
function demonstration(): Balance {
  const balance = createSimulatedBalance({ seed: Date.now() });
  balance.put({ name: "invented silver piece", massGrams: 31.1035, densityGPerCm3: 10.49 });
  return balance;
}
