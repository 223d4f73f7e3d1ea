import { hash, randomBytes } from "node:crypto";
import type { ServerResponse } from "node:http";
import type { Person } from "./person.ts";
import type { Role } from "./role.ts";

const hourMs = 3_600_000;
/** From the first request on a session lasts one working day. */
const longestMs = 12 * hourMs;
/** Without a request of the person it ends earlier; a customer display only listens. */
const idleMs: Record<Role, number> = {
  operator: hourMs,
  supervisor: hourMs,
  auditor: hourMs,
  "customer-display": longestMs,
};

/** Somebody signed in on one device. */
export interface Session {
  personId: string;
  begun: number;
  /** the last request of the person */
  seen: number;
  idleMs: number;
  /** answers under way; those that stream end with the session */
  open: Set<ServerResponse>;
}

/** Who is signed in. Ids are 256 random bits, known here by their hash alone, and gone when the program ends. */
export class Sessions {
  readonly #now: () => number;
  readonly #byHash = new Map<string, Session>();

  constructor(now: () => number) {
    this.#now = now;
  }

  /** Begins one and gives its id, which is never taken from a request. */
  begin({ id, role }: Person): string {
    const session = randomBytes(32).toString("base64url");
    const now = this.#now();
    this.#byHash.set(hashOf(session), {
      personId: id,
      begun: now,
      seen: now,
      idleMs: idleMs[role],
      open: new Set(),
    });
    return session;
  }

  /** The session of an id that has not ended. `counts`: the person asked for something, so it lasts on. */
  find(id: string, counts: boolean): Session | undefined {
    this.sweep();
    const session = this.#byHash.get(hashOf(id));
    if (session && counts) session.seen = this.#now();
    return session;
  }

  end(id: string): void {
    this.#end(hashOf(id));
  }

  endOf(personId: string): void {
    for (const [key, session] of this.#byHash) if (session.personId === personId) this.#end(key);
  }

  /** Ends those whose time is over. */
  sweep(): void {
    const now = this.#now();
    for (const [key, { begun, seen, idleMs }] of this.#byHash)
      if (now >= begun + longestMs || now >= seen + idleMs) this.#end(key);
  }

  /** What has begun to answer is cut; what has not was asked while the session stood, and is answered. */
  #end(key: string): void {
    const session = this.#byHash.get(key);
    this.#byHash.delete(key);
    for (const response of session?.open ?? []) if (response.headersSent) response.destroy();
  }
}

const hashOf = (id: string): string => hash("sha256", id, "hex");
