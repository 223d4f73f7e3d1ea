import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Role } from "../methods/index.ts";
import { failureMessage } from "./failure-message.ts";
import { mustBeLookedAt } from "./looked-at.ts";
import type { Scale, TakenReading, Taking } from "./scale.ts";

/** What a capture that waits needs of its bench. */
export interface CapturingBench {
  keep(subject: string, role: Role, taken: TakenReading): Promise<void>;
  changed(): void;
}

/** The one capture that may wait for the balance to rest, for everybody at the bench. */
export class WaitingCapture {
  #bench: CapturingBench;
  #waiting: { role: Role; taking: Taking; isTaken?: true } | undefined;
  #trouble: Message | undefined;

  constructor(bench: CapturingBench) {
    this.#bench = bench;
  }

  get role(): Role | undefined {
    return this.#waiting?.role;
  }
  /** why the last capture came to nothing, until the next step */
  get error(): Message | undefined {
    return this.#trouble;
  }

  /** Asks the balance for a settled reading. Only lines that arrive from now on count. */
  begin(subject: string, role: Role, scale: Scale | undefined): void {
    if (!scale) throw new Refusal("weighing.request.no-balance", {}, "reading");
    if (this.#waiting)
      throw new Refusal("weighing.request.waits-already", {
        role: message(`bench.roles.${this.#waiting.role}`),
      });
    mustBeLookedAt(scale);
    const taking = scale.take();
    this.#waiting = { role, taking };
    this.#trouble = undefined;
    this.#bench.changed();
    taking.settled.then(
      (taken) => this.#finish(taking, { subject, role, scale, taken }),
      (error: unknown) => this.#end(taking, failureMessage(error)),
    );
  }

  /** Takes the next line as it stands although it has not settled. */
  byHand(): void {
    if (!this.#waiting) throw new Refusal("weighing.request.none");
    this.#waiting.taking.byHand();
  }

  cancel(): void {
    const waiting = this.#waiting;
    this.#waiting = undefined;
    waiting?.taking.cancel();
    this.#bench.changed();
  }

  /** Nothing will come of the capture that waits; `says` tells why. */
  giveUp(sentence: Message): void {
    if (this.#waiting && !this.#waiting.isTaken) this.#end(this.#waiting.taking, sentence);
  }

  /** A reading was kept: where it is the one that was waited for, the page that shows it may ask for the next one. */
  kept(): void {
    if (this.#waiting?.isTaken) this.#waiting = undefined;
  }

  /** The next step was done, so the trouble of the last one is over. */
  forgetError(): void {
    this.#trouble = undefined;
  }

  async #finish(
    taking: Taking,
    { subject, role, scale, taken }: { subject: string; role: Role; scale: Scale; taken: TakenReading },
  ): Promise<void> {
    if (this.#waiting?.taking !== taking) return;
    this.#waiting.isTaken = true;
    try {
      // A balance that was switched off and on while the capture waited has settled on another zero.
      mustBeLookedAt(scale);
      await this.#bench.keep(subject, role, taken);
    } catch (error) {
      this.#trouble = failureMessage(error);
    }
    this.kept();
    this.#bench.changed();
  }

  #end(taking: Taking, sentence: Message): void {
    if (this.#waiting?.taking !== taking) return;
    this.#waiting = undefined;
    this.#trouble = sentence;
    this.#bench.changed();
  }
}
