import { Refusal } from "../../calibration/refusal.ts";
import { type Clock, isoTime } from "../../drivers/clock.ts";
import { learn } from "../../drivers/learning/learn.ts";
import type { Learned } from "../../drivers/learning/learned.ts";
import type { Profile } from "../../drivers/learning/profile.ts";
import type { Answers } from "../../drivers/learning/questions.ts";
import { type Chunk, type Recording, recordingFromText } from "../../drivers/learning/recording.ts";
import {
  beginSession,
  goOn,
  heard,
  isFinished,
  leaveOut,
  type Session,
} from "../../drivers/learning/session.ts";
import type { BalanceInUse } from "./balance-in-use.ts";

/** Pieces in which bytes arrive; so many hold some lines. */
const newestChunks = 40;

/**
 * Setting the balance in use up: step by step over its live bytes, or from a pasted text. What was learned waits here until
 * the owner confirms it. One at a time, for everybody at this bench.
 */
export class Learning {
  /** the step by step set-up while it runs */
  session: Session | undefined;
  learned: Learned | undefined;
  #chunks: Chunk[] = [];
  #recording: Recording | undefined;
  #answers: Answers = {};
  #balance: BalanceInUse;
  #clock: Clock;
  #told: { line(): void; step(): void };

  /** `told.line` is called when bytes came, `told.step` when what is asked for or was learned has changed. */
  constructor(balance: BalanceInUse, clock: Clock, changed: { line(): void; step(): void }) {
    this.#balance = balance;
    this.#clock = clock;
    this.#told = changed;
  }

  /** the bytes that came last, some lines of them */
  get newestBytes(): Uint8Array {
    return Buffer.concat(this.#chunks.slice(-newestChunks).map(({ bytes }) => bytes));
  }

  /** Begins from the start; an earlier try that was not kept is forgotten. */
  async begin(): Promise<void> {
    this.#forget();
    await this.#balance.learnFrom((bytes) => {
      if (!this.session) return;
      this.#chunks.push({ atMs: this.#clock.monotonicMs(), bytes: Uint8Array.from(bytes) });
      this.session = heard(this.session);
      this.#told.line();
    });
    this.session = beginSession(this.#clock.monotonicMs());
    this.#told.step();
  }

  /** The owner goes on to the next step. Throws Refusal while no line came, or the display is not typed where asked. */
  goOn(typed: { text: string; unit: string }): void {
    this.#move((session) => goOn(session, this.#clock.monotonicMs(), typed));
  }

  /** Leaves out the step at hand, when it may be left out. */
  leaveOut(): void {
    this.#move((session) => leaveOut(session, this.#clock.monotonicMs()));
  }

  /** Ends it without keeping anything; the balance is read as before. */
  async stop(): Promise<void> {
    const wasRunning = this.session !== undefined;
    this.#forget();
    if (wasRunning) await this.#balance.resume();
    this.#told.step();
  }

  /** Learns from pasted lines with the moments marked by hand. Throws Refusal for a mark that names no moment. */
  fromText(text: string): void {
    if (this.session) throw new Refusal("learn.running");
    const recording = recordingFromText(text);
    this.#forget();
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
    this.#told.step();
  }

  #move(to: (session: Session) => Session): void {
    if (!this.session) return;
    this.session = to(this.session);
    if (!isFinished(this.session)) {
      this.#told.step();
      return;
    }
    const { moments, displayed } = this.session;
    this.session = undefined;
    void this.#balance.resume();
    this.#learn({ chunks: this.#chunks, moments, displayed });
  }

  #learn(recording: Recording): void {
    this.#recording = recording;
    this.learned = learn(recording, { learnedAt: isoTime(this.#clock), answers: this.#answers });
    this.#told.step();
  }

  #forget(): void {
    this.session = undefined;
    this.learned = undefined;
    this.#chunks = [];
    this.#recording = undefined;
    this.#answers = {};
  }
}
