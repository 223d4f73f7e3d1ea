import { once } from "node:events";
import { createWriteStream, existsSync } from "node:fs";
import { parseArgs } from "node:util";
import { entriesJson, entrySchema, recordsCsv } from "../ledger/export.ts";
import { proofOf } from "../ledger/proof-file.ts";
import { recordText } from "../ledger/record-file.ts";
import { ledgerForReading } from "./ledger-for-reading.ts";
import { told } from "./told.ts";

const usage = `underhook export (--csv | --json | --record SUBJECT | --proof ROW | --schema) [--out FILE] [--ledger FILE]
  --csv             every finished measurement, one a line, units in the headings
  --json            every entry, one JSON object a line
  --record SUBJECT  one record or lot in a file that any Underhook can check: underhook verify FILE
  --proof ROW       that one entry stands in the ledger: a C2SP tlog-proof with the entry's text as its extra data
  --schema          the JSON Schema of a line of --json
  --out FILE        default: standard output; a file that exists is not overwritten
  --ledger FILE     default: the shared ledger of DATABASE_URL, or ledger.sqlite in the data folder
  Works while a bench is running.`;

/** `underhook export`: 0 when everything was written, 1 when the ledger is damaged, 2 otherwise. */
export async function run(args: string[]): Promise<number> {
  return told("export", async () => {
    const { values } = parseArgs({
      args,
      options: {
        csv: { type: "boolean" },
        json: { type: "boolean" },
        schema: { type: "boolean" },
        record: { type: "string" },
        proof: { type: "string" },
        out: { type: "string" },
        ledger: { type: "string" },
        help: { type: "boolean", short: "h" },
      },
    });
    const asked = [values.csv, values.json, values.schema, values.record, values.proof].filter(
      (value) => value !== undefined,
    );
    if (values.help || asked.length !== 1) {
      console.log(usage);
      return values.help ? 0 : 2;
    }
    if (values.schema) {
      await write([`${JSON.stringify(entrySchema(), null, 2)}\n`], values.out);
      return 0;
    }
    const ledger = await ledgerForReading("export", values.ledger);
    try {
      if (values.csv) await write(recordsCsv(ledger), values.out);
      else if (values.json) await write(entriesJson(ledger), values.out);
      else if (values.proof) await write([await proofOf(ledger, values.proof)], values.out);
      else await write([recordText(await ledger.recordFile(values.record ?? ""))], values.out);
      return 0;
    } finally {
      await ledger.close();
    }
  });
}

async function write(parts: AsyncIterable<string> | string[], file: string | undefined): Promise<void> {
  if (file !== undefined && existsSync(file))
    throw new Error(
      `There is a file ${file} already, and an export never overwrites one. Give another name.`,
    );
  const out = file === undefined ? process.stdout : createWriteStream(file, { flags: "wx", mode: 0o600 });
  if (file !== undefined) await once(out, "open");
  for await (const part of parts) if (!out.write(part)) await once(out, "drain");
  if (file !== undefined) await new Promise<void>((resolve) => out.end(resolve));
}
