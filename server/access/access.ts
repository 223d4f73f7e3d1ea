import { randomUUID } from "node:crypto";
import { Refusal } from "../../calibration/refusal.ts";
import { FailedTries } from "./failed-tries.ts";
import { checkPassphrase, hashedPassphrase, isPassphrase } from "./passphrase.ts";
import type { People } from "./people.ts";
import { namedPerson, type Person, sameInitials } from "./person.ts";
import type { Role } from "./role.ts";
import { Sessions } from "./sessions.ts";
import { SignUpCodes } from "./sign-up-codes.ts";

/** How a try to sign in ended; `person` is known only where the initials are somebody's. */
export type SignIn =
  | { done: Person }
  | { refused: "wrong"; person: Person | undefined }
  | { refused: "wait"; seconds: number; person: Person | undefined };

/** Who may sign in, and who is signed in. */
export class Access {
  readonly people: People;
  readonly sessions: Sessions;
  readonly codes: SignUpCodes;
  readonly #tries: FailedTries;
  /** checked in place of a hash that is not there, so that unknown initials take the same way and time */
  readonly #nobody = hashedPassphrase(randomUUID());

  constructor(people: People, now: () => number) {
    this.people = people;
    this.sessions = new Sessions(now);
    this.codes = new SignUpCodes(now);
    this.#tries = new FailedTries(now);
    if (!people.hasSupervisor) this.codes.make({ first: true });
  }

  /** Checks initials and passphrase as they came from an address. */
  async signIn(initials: string, passphrase: string, from: string): Promise<SignIn> {
    const person = this.people.byInitials(initials);
    const keys = [`initials ${sameInitials(initials)}`, `address ${from}`];
    const seconds = this.#tries.wait(keys);
    if (seconds > 0) return { refused: "wait", seconds, person };
    this.#tries.begun(keys);
    const right = await isPassphrase(passphrase, person?.passphrase ?? (await this.#nobody));
    // whoever was removed meanwhile stays out
    const still = person && this.people.byId(person.id);
    if (!right || !still || still.passphrase !== person.passphrase || still.passphrase === null)
      return { refused: "wrong", person };
    this.#tries.passed(keys);
    return { done: still };
  }

  /**
   * Chooses a passphrase with a code. The first person gives name and initials, an added one the initials the code was
   * made for. Throws Refusal at the entry that is wrong; a code is spent only when everything is right.
   */
  async signUp(
    typed: { code: string; name: string; initials: string; passphrase: string },
    from: string,
  ): Promise<
    { person: Person; added: boolean } | { refused: "wait"; seconds: number } | { refused: "code" }
  > {
    const keys = [`code from ${from}`];
    const seconds = this.#tries.wait(keys);
    if (seconds > 0) return { refused: "wait", seconds };
    checkPassphrase(typed.passphrase, [typed.initials, typed.name]);
    const holder = this.codes.holderOf(typed.code);
    if (holder === undefined) {
      this.#tries.begun(keys);
      return { refused: "code" };
    }
    if ("first" in holder) {
      namedPerson(typed);
      this.people.free(typed.initials);
    } else if (this.people.byInitials(typed.initials)?.id !== holder.person) {
      this.#tries.begun(keys);
      return { refused: "code" };
    }
    this.codes.withdraw(holder);
    const passphrase = await hashedPassphrase(typed.passphrase);
    this.#tries.passed(keys);
    if ("first" in holder)
      return { person: this.people.add({ ...typed, role: "supervisor", passphrase }), added: true };
    this.sessions.endOf(holder.person);
    this.people.change(holder.person, { passphrase });
    const person = this.people.byId(holder.person);
    return person ? { person, added: false } : { refused: "code" };
  }

  /** Throws Refusal when nobody would be left who may add people. */
  changeRole(id: string, role: Role): void {
    if (role !== "supervisor") this.#notTheLast(id);
    this.people.change(id, { role });
    this.sessions.endOf(id);
  }

  /** Throws Refusal when nobody would be left who may add people. */
  remove(id: string): void {
    if (this.people.all.length > 1) this.#notTheLast(id);
    this.codes.withdraw({ person: id });
    this.people.remove(id);
    this.sessions.endOf(id);
  }

  #notTheLast(id: string): void {
    const left = this.people.all.some(
      (one) => one.id !== id && one.role === "supervisor" && one.passphrase !== null,
    );
    if (!left && this.people.byId(id)?.role === "supervisor")
      throw new Refusal("access.person.last-supervisor", {}, "people");
  }
}
