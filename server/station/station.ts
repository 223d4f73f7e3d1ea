import { Refusal } from "../../calibration/refusal.ts";
import { canonicalJson } from "../ledger/canonical-json.ts";
import type { Entry } from "../ledger/entry.ts";
import type { Happened } from "../ledger/ledger.ts";
import { Stale } from "../ledger/stale.ts";
import type { BenchParts } from "./bench-parts.ts";
import type { Command } from "./command.ts";
import { decisionOn } from "./decision.ts";
import { LiveReadings } from "./live-readings.ts";
import { staleLot, staleRefusal } from "./stale-refusal.ts";

/** What was done: the command, and everything about its subject, the new entries last. */
export interface Done {
  command: Command;
  entries: readonly Entry[];
  written: readonly Entry[];
}

/**
 * The one way anything is done: for the page, a key, a foot switch, a load that came to rest, a lot row. Commands are
 * done in turn, one after another. Each is decided on what the ledger holds of its subject at that moment; one whose page
 * saw less is refused with what changed, also when another program wrote in between.
 */
export class Station {
  /** what the balance showed while an immersion was waited for */
  readonly liveReadings = new LiveReadings();
  readonly #parts: BenchParts;
  readonly #listeners = new Set<(done: Done) => Promise<void> | void>();
  #queue: Promise<unknown> = Promise.resolve();

  constructor(parts: BenchParts) {
    this.#parts = parts;
  }

  /** Calls back after everything that was done, before the next command begins. What it throws refuses the command. */
  onDone(listener: (done: Done) => Promise<void> | void): void {
    this.#listeners.add(listener);
  }

  /** Does it, or throws Refusal, or LedgerError when it could not be stored; then nothing was written. */
  do(command: Command): Promise<readonly Entry[]> {
    const turn = this.#queue.then(() => this.#do(command));
    this.#queue = turn.catch(() => undefined);
    return turn;
  }

  /** Throws Refusal when a page saw less of a lot than there is by now. */
  async mustBeCurrent({ subject, seen }: { subject: string; seen: number }): Promise<void> {
    const entries = await this.#parts.ledger.entriesOf(subject);
    if (entries.length === seen) return;
    throw staleLot(subject, entries, seen);
  }

  /** What would stand about its subject after a command, without doing it. Throws Refusal as doing it would. */
  async wouldBe(command: Command): Promise<readonly Entry[]> {
    const { ledger } = this.#parts;
    const entries = await ledger.entriesOf(command.subject);
    if (command.seen !== "now" && command.seen !== entries.length)
      throw await staleRefusal(command, entries, command.seen, ledger);
    // who agrees to it is asked once it is written
    const { preferences: _, ...parts } = this.#parts;
    const happened = await decisionOn(command, entries, parts, this.liveReadings);
    return [...entries, ...happened.map((one) => unwritten(one, command.subject, ledger.bench))];
  }

  async #do(command: Command): Promise<readonly Entry[]> {
    const { ledger } = this.#parts;
    const { subject, seen } = command;
    const before = await ledger.entriesOf(subject);
    if (seen !== "now" && seen !== before.length) {
      if (await this.#isRepeated(command, before, seen))
        return this.#done({ command, entries: before, written: [] });
      throw await staleRefusal(command, before, seen, ledger);
    }
    const happened = await this.#decide(command, before);
    const written = happened.length === 0 ? [] : await this.#append(command, happened, before);
    return this.#done({ command, entries: [...before, ...written], written });
  }

  #decide(command: Command, entries: readonly Entry[]): Promise<Happened[]> {
    return decisionOn(command, entries, this.#parts, this.liveReadings);
  }

  async #append(command: Command, happened: Happened[], before: readonly Entry[]): Promise<Entry[]> {
    const { ledger } = this.#parts;
    try {
      return await ledger.appendAll(command.subject, happened, before.length);
    } catch (error) {
      if (!(error instanceof Stale)) throw error;
      const now = await ledger.entriesOf(command.subject);
      throw await staleRefusal(command, now, before.length, ledger);
    }
  }

  /** True when just this was written right after what the page saw: the same form sent twice is done once. */
  async #isRepeated(command: Command, entries: readonly Entry[], seen: number): Promise<boolean> {
    const { names } = this.#parts.ledger;
    const happened = await this.#decide(command, entries.slice(0, seen)).catch(nothingWhereRefused);
    return (
      happened.length > 0 &&
      happened.every(({ kind, body }, place) => {
        const stands = entries[seen + place];
        return stands?.kind === kind && asAsked(stands.body) === asAsked(names?.referred(kind, body) ?? body);
      })
    );
  }

  async #done(done: Done): Promise<readonly Entry[]> {
    for (const listener of this.#listeners) await listener(done);
    return done.written;
  }
}

/** An entry as it would be written now; it stands behind all others and is not in the chain. */
function unwritten({ kind, body }: Happened, subject: string, bench: string): Entry {
  const [seq, at, none] = [Number.MAX_SAFE_INTEGER, new Date().toISOString(), ""];
  return {
    seq,
    id: `unwritten-${kind}`,
    bench,
    at,
    kind,
    subject,
    body,
    prevHash: none,
    hash: none,
  } as Entry;
}

/** A command that would have been refused then did not happen then; an error of the program is none. */
function nothingWhereRefused(error: unknown): Happened[] {
  if (error instanceof Refusal) return [];
  throw error;
}

/** What was asked, without what the sensors happened to show: between two sendings of one form they move on. */
function asAsked(body: object): string {
  return canonicalJson({ ...body, sensed: undefined, silent: undefined });
}
