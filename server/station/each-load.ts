import { message } from "../../calibration/message.ts";
import type { Told } from "../../views/told.tsx";
import type { Role } from "../methods/index.ts";
import { Refusal } from "../weighing/refusal.ts";
import { roleNames } from "../weighing/role-names.ts";
import { mustBeLookedAt } from "./looked-at.ts";
import type { Scale, TakenReading } from "./scale.ts";
import { toldBy } from "./told-by.ts";

/** What taking each load by itself needs of its bench. */
export interface EachLoadBench {
  scale(): Scale | undefined;
  /** true while somebody's own capture waits */
  isWaiting(): boolean;
  keep(role: Role, taken: TakenReading): Promise<void>;
  changed(): void;
}

/** For hands in water: takes each settled load once, by itself, until it is ended. */
export class EachLoad {
  #bench: EachLoadBench;
  #armed: { role: Role; says: Told; taken: number; end: () => void } | undefined;

  constructor(bench: EachLoadBench) {
    this.#bench = bench;
  }

  /** what it is armed for, what to do now, and how many were taken since */
  get now(): { role: Role; says: Told; taken: number } | undefined {
    return this.#armed;
  }

  /** Arms it for one role. Throws Refusal without a balance on a cable. */
  begin(role: Role): void {
    const scale = this.#bench.scale();
    if (!scale)
      throw new Refusal("No balance on a cable here, so nothing can be taken by itself. Type the reading.");
    mustBeLookedAt(scale);
    this.end();
    const says: Told = message("balance.hands-free.leave-empty");
    const armed = { role, says, taken: 0, end: () => {} };
    this.#armed = armed;
    armed.end = scale.takeEach((step) => {
      armed.says = step.message;
      if (step.taken) void this.#keep(armed, step.taken);
    });
    this.#bench.changed();
  }

  end(): void {
    this.#armed?.end();
    this.#armed = undefined;
    this.#bench.changed();
  }

  async #keep(armed: { role: Role; says: Told; taken: number }, taken: TakenReading): Promise<void> {
    if (this.#bench.isWaiting()) {
      armed.says = `Not taken: somebody's own capture is waiting. Lift the piece out and hang it again for the ${roleNames[armed.role]} reading.`;
      return;
    }
    try {
      await this.#bench.keep(armed.role, taken);
      armed.taken += 1;
    } catch (error) {
      armed.says = toldBy(error);
    }
    this.#bench.changed();
  }
}
