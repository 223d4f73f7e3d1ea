import { randomUUID } from "node:crypto";
import {
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  readFileSync,
  renameSync,
  statSync,
  writeSync,
} from "node:fs";
import { z } from "zod";
import { Refusal } from "../../calibration/refusal.ts";
import { namedPerson, type Person, person, sameInitials } from "./person.ts";
import type { Role } from "./role.ts";

const kept = z.strictObject({ people: z.array(person) });

/** The people of a bench, in a file of their own that only its owner can read; the ledger never holds a passphrase, not even hashed. */
export class People {
  readonly #file: string;
  #people: readonly Person[];

  /** Throws Refusal when others can read the file, or it holds something else. */
  constructor(file: string) {
    this.#file = file;
    this.#people = existsSync(file) ? read(file) : [];
  }

  get all(): readonly Person[] {
    return this.#people;
  }

  byId(id: string): Person | undefined {
    return this.#people.find((one) => one.id === id);
  }

  byInitials(initials: string): Person | undefined {
    return this.#people.find((one) => sameInitials(one.initials) === sameInitials(initials));
  }

  /** Somebody can sign in who may add others. */
  get hasSupervisor(): boolean {
    return this.#people.some(({ role, passphrase }) => role === "supervisor" && passphrase !== null);
  }

  /** Throws Refusal for a name that is none and for initials that somebody has. */
  add(typed: { name: string; initials: string; role: Role; passphrase?: string }): Person {
    const named = namedPerson(typed);
    this.free(named.initials);
    const added: Person = {
      id: randomUUID(),
      ...named,
      role: typed.role,
      passphrase: typed.passphrase ?? null,
    };
    this.#keep([...this.#people, added]);
    return added;
  }

  /** Throws Refusal when somebody has these initials. */
  free(initials: string): void {
    if (this.byInitials(initials)) throw new Refusal("access.person.taken", { initials }, "initials");
  }

  change(id: string, to: Partial<Pick<Person, "role" | "passphrase">>): void {
    this.#keep(this.#people.map((one) => (one.id === id ? { ...one, ...to } : one)));
  }

  remove(id: string): void {
    this.#keep(this.#people.filter((one) => one.id !== id));
  }

  /** Written beside the file and put in its place, so that a power cut leaves the one or the other. */
  #keep(people: readonly Person[]): void {
    const next = `${this.#file}.${randomUUID()}`;
    const open = openSync(next, "wx", 0o600);
    writeSync(open, `${JSON.stringify({ people }, null, 1)}\n`);
    fsyncSync(open);
    closeSync(open);
    renameSync(next, this.#file);
    this.#people = people;
  }
}

function read(file: string): readonly Person[] {
  const mode = statSync(file).mode & 0o777;
  if (mode & 0o077) throw new Refusal("access.file-readable", { file, mode: mode.toString(8) });
  try {
    return kept.parse(JSON.parse(readFileSync(file, "utf8"))).people;
  } catch {
    throw new Refusal("access.people-damaged", { file });
  }
}
