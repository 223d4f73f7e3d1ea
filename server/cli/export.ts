import { once } from "node:events";
import { createWriteStream, existsSync } from "node:fs";
import { Refusal } from "../../calibration/refusal.ts";
import { entriesJson, entrySchema } from "../ledger/export.ts";
import { proofOf } from "../ledger/proof-file.ts";
import { recordText } from "../ledger/record-file.ts";
import { recordsCsv } from "../reports/records-csv.ts";
import { recordsParquet } from "../reports/records-parquet.ts";
import { timeZoneOf } from "../station/bench-settings.ts";
import { settingsRepository } from "../station/settings-repository.ts";
import { command } from "./command.ts";
import { givenLedger, ledgerForReading, ledgerOptions } from "./ledger-for-reading.ts";

const forms = ["csv", "parquet", "json", "record", "proof", "schema"] as const;

const usage = {
  name: "export",
  options: {
    csv: { type: "boolean" },
    parquet: { type: "boolean" },
    json: { type: "boolean" },
    schema: { type: "boolean" },
    record: { type: "string" },
    proof: { type: "string" },
    out: { type: "string" },
    ...ledgerOptions,
  },
  takesArguments: false,
} as const;

/** `underhook export`: 0 when everything was written, 1 when the ledger is damaged, 2 otherwise. */
export const run = (args: string[]): Promise<number> =>
  command(usage, args, async ({ values }) => {
    const { length: count } = forms.filter((form) => values[form] !== undefined);
    if (count !== 1)
      throw new Refusal("cli.export.one-of", { options: { anyOf: forms.map((form) => `--${form}`) }, count });
    if (values.schema) {
      await write([`${JSON.stringify(entrySchema(), null, 2)}\n`], values.out);
      return 0;
    }
    const ledger = await ledgerForReading("export", givenLedger(values));
    try {
      const zone = async () => timeZoneOf((await settingsRepository(ledger)).now);
      if (values.csv) await write(recordsCsv(ledger, { zone: await zone() }), values.out);
      else if (values.parquet) await write(recordsParquet(ledger, { zone: await zone() }), values.out);
      else if (values.json) await write(entriesJson(ledger), values.out);
      else if (values.proof) await write([await proofOf(ledger, values.proof)], values.out);
      else await write([recordText(await ledger.recordFile(values.record ?? ""))], values.out);
      return 0;
    } finally {
      await ledger.close();
    }
  });

async function write(
  parts: AsyncIterable<string | Uint8Array> | string[],
  file: string | undefined,
): Promise<void> {
  if (file !== undefined && existsSync(file)) throw new Refusal("cli.export.exists", { file });
  const out = file === undefined ? process.stdout : createWriteStream(file, { flags: "wx", mode: 0o600 });
  if (file !== undefined) await once(out, "open");
  for await (const part of parts) if (!out.write(part)) await once(out, "drain");
  if (file !== undefined) await new Promise<void>((resolve) => out.end(resolve));
}
