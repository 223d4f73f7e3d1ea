import { hash, randomBytes } from "node:crypto";

/** Digits and letters that are not mistaken for each other: Crockford's base 32. */
const signs = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const length = 8;

/** Minutes that the code of the first person is good. */
export const firstMinutes = 10;
/** Minutes that the code of somebody added, or of a forgotten passphrase, is good. */
export const addedMinutes = 60;

/** Whom a code is for: the first supervisor, or somebody by the id. */
export type Holder = { first: true } | { person: string };

/** A code as it is shown, K7QM-2XRD, and the moment it is over, ms. */
export interface ShownCode {
  code: string;
  until: number;
}

/** Codes that let somebody choose a passphrase: 40 random bits, short-lived, good once, forgotten when the program ends. */
export class SignUpCodes {
  readonly #now: () => number;
  readonly #codes = new Map<string, { holder: Holder; until: number }>();
  #first: ShownCode | undefined;

  constructor(now: () => number) {
    this.#now = now;
  }

  /** The code of the first supervisor while it is good. */
  get first(): ShownCode | undefined {
    return this.#first && this.#first.until > this.#now() ? this.#first : undefined;
  }

  /** Makes a code; one made before for the same holder is good no longer. */
  make(holder: Holder): ShownCode {
    this.withdraw(holder);
    const code = [...randomBytes(length)].map((byte) => signs[byte % signs.length]).join("");
    const until = this.#now() + ("first" in holder ? firstMinutes : addedMinutes) * 60_000;
    this.#codes.set(keyOf(code), { holder, until });
    const shown = { code: `${code.slice(0, 4)}-${code.slice(4)}`, until };
    if ("first" in holder) this.#first = shown;
    return shown;
  }

  withdraw(holder: Holder): void {
    if ("first" in holder) this.#first = undefined;
    const same = JSON.stringify(holder);
    for (const [key, one] of this.#codes) if (JSON.stringify(one.holder) === same) this.#codes.delete(key);
  }

  /** Whom the typed code is for; undefined when there is no such code, or no longer. */
  holderOf(typed: string): Holder | undefined {
    const found = this.#codes.get(keyOf(typed));
    return found && found.until > this.#now() ? found.holder : undefined;
  }
}

/** Spaces, dashes and case do not count; O reads as 0, I and L as 1. */
function keyOf(typed: string): string {
  const plain = typed.toUpperCase().replaceAll(/[\s-]/g, "").replaceAll("O", "0").replaceAll(/[IL]/g, "1");
  return hash("sha256", plain, "hex");
}
