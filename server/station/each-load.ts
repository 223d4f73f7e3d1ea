import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Role } from "../methods/index.ts";
import { mustBeLookedAt } from "./looked-at.ts";
import type { Scale, TakenReading } from "./scale.ts";
import { toldBy } from "./told-by.ts";

/** What taking each load by itself needs of its bench. */
export interface EachLoadBench {
  scale(): Scale | undefined;
  /** true while somebody's own capture waits */
  isWaiting(): boolean;
  keep(subject: string, role: Role, taken: TakenReading): Promise<void>;
  changed(): void;
}

interface Armed {
  /** the weighing it takes for */
  subject: string;
  role: Role;
  /** what to do now */
  says: Message;
  taken: number;
  end: () => void;
}

/** For hands in water: takes each settled load once, by itself, until it is ended. */
export class EachLoad {
  #bench: EachLoadBench;
  #armed: Armed | undefined;

  constructor(bench: EachLoadBench) {
    this.#bench = bench;
  }

  /** what it is armed for, what to do now, and how many were taken since */
  get now(): Pick<Armed, "role" | "says" | "taken"> | undefined {
    return this.#armed;
  }

  /** Arms it for one role. Throws Refusal without a balance on a cable. */
  begin(subject: string, role: Role): void {
    const scale = this.#bench.scale();
    if (!scale) throw new Refusal("weighing.request.no-balance", {}, "reading");
    mustBeLookedAt(scale);
    this.end();
    const armed: Armed = {
      subject,
      role,
      says: message("balance.hands-free.leave-empty"),
      taken: 0,
      end: () => {},
    };
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

  async #keep(armed: Armed, taken: TakenReading): Promise<void> {
    if (this.#bench.isWaiting()) {
      armed.says = message("weighing.hands-free.not-taken", { role: message(`bench.roles.${armed.role}`) });
      return;
    }
    try {
      await this.#bench.keep(armed.subject, armed.role, taken);
      armed.taken += 1;
    } catch (error) {
      armed.says = toldBy(error);
    }
    this.#bench.changed();
  }
}
