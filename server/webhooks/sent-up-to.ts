import { readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";

const shape = z.record(z.string(), z.number().int().min(0));

/**
 * How far each address was told, kept beside the ledger; lost, an address is told again from where it was chosen, and sees
 * by the ids what it knows already.
 */
export class SentUpTo {
  readonly #file: string;
  #rows: Record<string, number>;

  constructor(folder: string) {
    this.#file = join(folder, "webhooks-sent.json");
    this.#rows = read(this.#file);
  }

  row(url: string): number | undefined {
    return this.#rows[url];
  }

  set(url: string, seq: number): void {
    this.#rows = { ...this.#rows, [url]: seq };
    writeFileSync(`${this.#file}.part`, JSON.stringify(this.#rows), { mode: 0o600 });
    renameSync(`${this.#file}.part`, this.#file);
  }
}

function read(file: string): Record<string, number> {
  try {
    return shape.parse(JSON.parse(readFileSync(file, "utf8")));
  } catch {
    return {};
  }
}
