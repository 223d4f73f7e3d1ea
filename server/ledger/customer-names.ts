import { randomBytes } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { z } from "zod";
import type { Entry } from "./entry.ts";
import { LedgerError } from "./error.ts";
import { sha256, writeBeside } from "./file-beside.ts";
import type { Kind } from "./kinds.ts";
import { searchable } from "./search-words.ts";

/** A name that is kept apart: its reference stands in the ledger, "name:" and SHA-256 over salt and name. */
const keptName = z.strictObject({
  reference: z.string().regex(/^name:[0-9a-f]{64}$/),
  salt: z.string(),
  name: z.string(),
  at: z.iso.datetime(),
});
export type KeptName = z.infer<typeof keptName>;

const file = z.strictObject({ names: z.array(keptName) });

const fileName = "customer-names.json";
const fileBeside = (ledgerFile: string) => join(dirname(ledgerFile), fileName);

/**
 * Copies the names along with a ledger. Into a backup they come as they are now; where names stand already and `over` is
 * false, as beside a ledger that is restored, those stay: they know what was erased since.
 */
export async function copyNames(from: string, to: string, { over }: { over: boolean }): Promise<void> {
  const [source, target] = [fileBeside(from), fileBeside(to)];
  if (source === target || !existsSync(source) || (!over && existsSync(target))) return;
  await writeBeside(dirname(target), fileName, readFileSync(source));
}

/** True for what stands in the ledger in place of a name. */
export const isNameReference = (text: string): boolean => /^name:[0-9a-f]{64}$/.test(text);

/**
 * The names of customers, in a file beside the ledger that only its owner reads. The ledger holds their references alone,
 * so that a name can be erased and every entry stays as it was written. What a ledger held before names were kept apart
 * stays in it as it is.
 */
export class CustomerNames {
  readonly #file: string;
  #names: readonly KeptName[] = [];
  #references: ReadonlyMap<string, string> = new Map();
  #shown: ReadonlyMap<string, string> = new Map();
  #queue: Promise<unknown> = Promise.resolve();

  /** Throws LedgerError when the file holds something else. */
  constructor(ledgerFile: string) {
    this.#file = fileBeside(ledgerFile);
    this.#hold(existsSync(this.#file) ? read(this.#file) : []);
  }

  get all(): readonly KeptName[] {
    return this.#names;
  }

  /** A text of the ledger as it is shown: a name for its reference, any other text as it is; null for a name that is gone. */
  shown(text: string): string | null {
    if (!isNameReference(text)) return text;
    return this.#shown.get(text) ?? null;
  }

  /** The references of names in which each word begins a word. */
  matching(words: readonly string[]): string[] {
    return this.#names.flatMap(({ reference, name }) => {
      const text = ` ${searchable(name)}`;
      return words.every((word) => text.includes(` ${word}`)) ? [reference] : [];
    });
  }

  /** What is to be written, with references in place of names; those not known yet are on the disk before this resolves. */
  async keptApart<T extends { kind: Kind; body: object }>(happened: readonly T[], at: string): Promise<T[]> {
    const names = happened.flatMap(({ kind, body }) => namesIn(kind, body));
    const unknown = names.filter((name) => !isNameReference(name) && !this.#references.has(name));
    if (unknown.length > 0) await this.#inTurn(() => this.#keep(unknown, at));
    return happened.map((one) => ({ ...one, body: this.referred(one.kind, one.body) }));
  }

  /** The same of one body where every name is known; one that is not stands as it is. */
  referred<B extends object>(kind: Kind, body: B): B {
    return mapNames(kind, body, (name) => this.#references.get(name) ?? name);
  }

  /** Entries as people read them: with names, and `gone` for a name that is not kept here any more. */
  named(entries: readonly Entry[], gone: string): Entry[] {
    return entries.map((entry) => ({
      ...entry,
      body: mapNames(entry.kind, entry.body, (text) => this.shown(text) ?? gone),
    })) as Entry[];
  }

  /** Erases a name for good. What throws the file system throws. */
  erase(reference: string): Promise<void> {
    return this.#inTurn(() => this.#write(this.#names.filter((one) => one.reference !== reference)));
  }

  async #keep(names: readonly string[], at: string): Promise<void> {
    const unknown = [...new Set(names)].filter((name) => !this.#references.has(name));
    const kept = unknown.map((name): KeptName => {
      const salt = randomBytes(16).toString("hex");
      return { reference: `name:${sha256(salt + name)}`, salt, name, at };
    });
    await this.#write([...this.#names, ...kept]);
  }

  async #write(names: readonly KeptName[]): Promise<void> {
    const text = `${JSON.stringify({ names }, null, 1)}\n`;
    await writeBeside(dirname(this.#file), fileName, text);
    this.#hold(names);
  }

  #hold(names: readonly KeptName[]): void {
    this.#names = names;
    this.#references = new Map(names.map(({ name, reference }) => [name, reference]));
    this.#shown = new Map(names.map(({ name, reference }) => [reference, name]));
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#queue.then(work);
    this.#queue = turn.catch(() => undefined);
    return turn;
  }
}

function read(path: string): KeptName[] {
  try {
    return file.parse(JSON.parse(readFileSync(path, "utf8"))).names;
  } catch (cause) {
    throw new LedgerError("ledger.names.unreadable", { file: path }, "damaged", cause);
  }
}

/** Where a body names somebody who brought something. */
const places: Partial<Record<Kind, readonly (readonly string[])[]>> = {
  "piece-opened": [["customer"]],
  "ticket-announced": [["customer"]],
  "imported-weighing": [["customer"]],
  "lot-opened": [["from"]],
  amendment: [["piece", "customer"]],
};

function namesIn(kind: Kind, body: object): string[] {
  return (places[kind] ?? []).flatMap((path) => {
    const found = path.reduce<unknown>((value, key) => Object(value)[key], body);
    return typeof found === "string" ? [found] : [];
  });
}

function mapNames<B extends object>(kind: Kind, body: B, map: (text: string) => string): B {
  const mapped = (value: object, [key = "", ...deeper]: readonly string[]): object => {
    const found: unknown = Reflect.get(value, key);
    if (deeper.length > 0)
      return typeof found === "object" && found !== null ? { ...value, [key]: mapped(found, deeper) } : value;
    return typeof found === "string" ? { ...value, [key]: map(found) } : value;
  };
  return (places[kind] ?? []).reduce<object>((value, path) => mapped(value, path), body) as B;
}
