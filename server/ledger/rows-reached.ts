import { readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";

const shape = z.record(z.string(), z.number().int().min(0));

/**
 * How far rows were gone through for each of several names, kept in a file beside the ledger. Lost, they are gone through
 * again: whoever gets them sees by the ids what it knows already.
 */
export class RowsReached {
  readonly #file: string;
  #rows: Record<string, number>;

  constructor(folder: string, name: string) {
    this.#file = join(folder, name);
    this.#rows = read(this.#file);
  }

  row(name: string): number | undefined {
    return this.#rows[name];
  }

  set(name: string, seq: number): void {
    this.#rows = { ...this.#rows, [name]: seq };
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
