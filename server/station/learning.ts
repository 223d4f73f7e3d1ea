import { Refusal } from "../../calibration/refusal.ts";
import { type Clock, isoTime } from "../../drivers/clock.ts";
import {
  type Answers,
  advance,
  beginSession,
  type Chunk,
  type Learned,
  learn,
  type Profile,
  type Recording,
  recordingFromText,
  type Session,
  type SessionInput,
} from "../../drivers/learning/index.ts";
import type { BalanceInUse } from "./balance-in-use.ts";

/** How often the guided half minute is moved on when no byte comes, ms. */
const tickMs = 200;

/**
 * Learning the lines of the balance in use: the guided half minute over its live bytes, or a pasted text. What was
 * learned waits here until the owner confirms it. One at a time, for everybody at this bench.
 */
export class Learning {
  /** the guided half minute while it runs */
  session: Session | undefined;
  learned: Learned | undefined;
  /** whether what was learned comes from pasted text */
  pasted = false;
  #chunks: Chunk[] = [];
  #recording: Recording | undefined;
  #answers: Answers = {};
  #callOff: () => void = () => {};
  #balance: BalanceInUse;
  #clock: Clock;
  #changed: () => void;

  constructor(balance: BalanceInUse, clock: Clock, changed: () => void) {
    this.#balance = balance;
    this.#clock = clock;
    this.#changed = changed;
  }

  get nowMs(): number {
    return this.#clock.monotonicMs();
  }
  get chunksHeard(): number {
    return this.#chunks.length;
  }

  /** Begins from the start; an earlier try that was not kept is forgotten. */
  async begin(): Promise<void> {
    this.#forget();
    await this.#balance.learnFrom((bytes) => {
      const atMs = this.nowMs;
      if (this.session) this.#chunks.push({ atMs, bytes: Uint8Array.from(bytes) });
      this.#move({ kind: "bytes", atMs });
    });
    this.session = beginSession(this.nowMs);
    this.#tick();
    this.#changed();
  }

  /** Leaves out the step at hand, when it may be left out. */
  skip(): void {
    this.#move({ kind: "skip", atMs: this.nowMs });
    this.#changed();
  }

  /** Ends it without keeping anything; the balance is read as before. */
  async stop(): Promise<void> {
    const wasRunning = this.session !== undefined;
    this.#forget();
    if (wasRunning) await this.#balance.resume();
    this.#changed();
  }

  /** Learns from pasted lines with the moments marked by hand. Throws Refusal for a mark that names no moment. */
  fromText(text: string): void {
    if (this.session) throw new Refusal("learn.running");
    const recording = recordingFromText(text);
    this.#forget();
    this.pasted = true;
    this.#learn(recording);
  }

  /** The owner's answers to what no bytes can tell. */
  answer(answers: Answers): void {
    if (!this.#recording) throw new Refusal("learn.nothing-asked");
    this.#answers = { ...this.#answers, ...answers };
    this.#learn(this.#recording);
  }

  /** What was learned, under the owner's name for it. Throws Refusal while there is nothing to keep. */
  named(name: string): Profile {
    const profile = this.learned?.profile;
    if (!profile) throw new Refusal("learn.nothing-to-keep");
    return { ...profile, name };
  }

  /** Forgets what was learned, once it is kept. */
  done(): void {
    this.#forget();
    this.#changed();
  }

  close(): void {
    this.#callOff();
  }

  #tick(): void {
    this.#callOff = this.#clock.after(tickMs, () => {
      this.#move({ kind: "tick", atMs: this.nowMs });
      this.#changed();
      if (this.session) this.#tick();
    });
  }

  #move(input: SessionInput): void {
    if (!this.session) return;
    this.session = advance(this.session, input);
    if (!this.session.finished) return;
    const { moments } = this.session;
    this.session = undefined;
    this.#callOff();
    void this.#balance.resume();
    this.#learn({ chunks: this.#chunks, moments });
  }

  #learn(recording: Recording): void {
    this.#recording = recording;
    this.learned = learn(recording, { learnedAt: isoTime(this.#clock), answers: this.#answers });
    this.#changed();
  }

  #forget(): void {
    this.#callOff();
    this.session = undefined;
    this.learned = undefined;
    this.pasted = false;
    this.#chunks = [];
    this.#recording = undefined;
    this.#answers = {};
  }
}
