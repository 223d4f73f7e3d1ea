import { readFileSync } from "node:fs";
import { z } from "zod";
import { reasonOf } from "../calibration/reason.ts";
import { Refusal } from "../calibration/refusal.ts";

/** What a settings file may hold: the options of `underhook serve` by name, and the shared ledger. */
const shape = z
  .strictObject({
    port: z.int().min(0).max(65_535),
    data: z.string().min(1),
    balance: z.string().min(1),
    line: z.string().min(1),
    profile: z.string().min(1),
    typed: z.boolean(),
    bench: z.string().min(1),
    listen: z.string().min(1),
    certificate: z.string().min(1),
    key: z.string().min(1),
    public_address: z.string().min(1),
    database_url: z.string().min(1),
  })
  .partial();

export type SettingsFile = z.output<typeof shape>;

/** Reads a settings file, JSON. Throws Refusal naming the file and the first key that is wrong, with what would be right. */
export function settingsFile(file: string): SettingsFile {
  let read: unknown;
  try {
    read = JSON.parse(readFileSync(file, "utf8"));
  } catch (error) {
    throw new Refusal("cli.serve.settings-not-read", { file, cause: reasonOf(error) });
  }
  const { data, error } = shape.safeParse(read);
  if (data) return data;
  const [fault] = error.issues;
  const keys = Object.keys(shape.shape);
  if (fault?.code === "unrecognized_keys")
    throw new Refusal("cli.serve.settings-unknown", {
      file,
      key: fault.keys[0] ?? "",
      keys: { anyOf: keys },
    });
  const key = String(fault?.path[0] ?? "");
  if (key === "") throw new Refusal("cli.serve.settings-no-object", { file });
  const right = key === "port" ? "0–65535" : key === "typed" ? "true, false" : '"…"';
  throw new Refusal("cli.serve.settings-wrong", { file, key, right });
}
