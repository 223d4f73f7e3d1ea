import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Verdict } from "../../drivers/auto-capture.ts";
import { type Role, rolesOf } from "../methods/index.ts";
import { type Item, standing } from "../weighing/item.ts";
import { failureMessage } from "./failure-message.ts";
import { loadVerdict } from "./load-verdict.ts";
import { mustBeLookedAt } from "./looked-at.ts";
import type { EachLoadStep, Scale, TakenReading } from "./scale.ts";

/** What taking each load by itself needs of its bench. */
export interface HandsFreeBench {
  scale(): Scale | undefined;
  /** the weighing that goes on */
  open(): Item | undefined;
  /** why nothing may be taken just now: a capture by hand waits, or it is open whether this is the right piece */
  waitsFor(): Message | undefined;
  keep(subject: string, role: Role, taken: TakenReading): Promise<void>;
  changed(): void;
}

/** What goes on by itself in a lot, beside the readings. */
export interface LotRun {
  /** writes the record of a piece whose readings are all there; what it is, undefined while one is missing */
  record(lot: string): Promise<Message | undefined>;
  /** starts the next ticket: says which, or why a person must. Throws Refusal. */
  next(lot: string): Promise<{ message: Message; isStarted: boolean }>;
}

/** Something to be sounded and spoken, counted so that each is heard once. */
interface Heard {
  kind: "taken" | "refused" | "lifted";
  message: Message;
  count: number;
}

export interface HandsFreeNow {
  /** what to do now */
  message: Message;
  /** how many readings were taken */
  taken: number;
  /** the lot it goes through */
  lot?: string;
  heard?: Heard;
}

/**
 * For hands in water: takes each load at rest as the next reading of the weighing, then in a lot writes its record and
 * goes on to the next ticket once the piece was lifted. Armed until it is ended, also between two pieces.
 */
export class HandsFree {
  readonly #bench: HandsFreeBench;
  #now: HandsFreeNow | undefined;
  #end: () => void = () => {};
  #run: LotRun | undefined;
  /** what follows a reading or a lift, one after another */
  #queue: Promise<void> = Promise.resolve();

  constructor(bench: HandsFreeBench) {
    this.#bench = bench;
  }

  get now(): HandsFreeNow | undefined {
    return this.#now;
  }

  /** What goes on by itself in a lot; given once, by what screens lots. */
  runsLots(run: LotRun): void {
    this.#run = run;
  }

  /** Arms it, in a lot where one is named. Throws Refusal without a balance on a cable. */
  begin(lot?: string): void {
    const scale = this.#bench.scale();
    if (!scale) throw new Refusal("weighing.request.no-balance", {}, "reading");
    mustBeLookedAt(scale);
    this.end();
    const now: HandsFreeNow = { message: this.#due(), taken: 0, ...(lot === undefined ? {} : { lot }) };
    this.#now = now;
    const emptyGrams = () => this.#emptyGrams();
    this.#end = scale.takeEach({ judge: (grams) => this.#verdict(grams), emptyGrams }, (step) => {
      if (this.#now === now) this.#follow(step);
    });
    if (lot !== undefined && !this.#bench.open()) this.#then(() => this.#nextTicket(lot));
    this.#bench.changed();
  }

  end(): void {
    this.#end();
    this.#end = () => {};
    if (this.#now === undefined) return;
    this.#now = undefined;
    this.#bench.changed();
  }

  /** The reading that a load is taken for: the first that is missing, else one more of the last. */
  #role(open: Item): Role {
    const needed = rolesOf(open.method);
    return needed.find((role) => standing(open, role).length === 0) ?? needed.at(-1)!;
  }

  #due(): Message {
    const open = this.#bench.open();
    if (!open) return message("balance.hands-free.no-ticket");
    return message("balance.hands-free.due", { ticket: open.ticket, role: roleMessage(this.#role(open)) });
  }

  /** A hanger that was weighed in is no load. */
  #emptyGrams(): number {
    const open = this.#bench.open();
    const zero = open && standing(open, "zero").at(-1);
    return zero ? Number(zero.grams) : 0;
  }

  #verdict(grams: number): Verdict {
    const open = this.#bench.open();
    const lot = this.#now?.lot;
    if (!open) return { waits: message("balance.hands-free.no-ticket") };
    if (lot !== undefined && open.lot !== lot)
      return { waits: message("lot.item-elsewhere", { ticket: open.ticket }) };
    const waits = this.#bench.waitsFor();
    return waits ? { waits } : loadVerdict(open, this.#role(open), grams);
  }

  #follow({ message: sentence, event, taken }: EachLoadStep): void {
    if (event === "taken" && taken) this.#then(() => this.#keep(taken));
    else if (event === "lifted") this.#then(() => this.#goOn());
    else if (event === "empty")
      this.#hear("refused", message("balance.hands-free.empty", { due: this.#due() }));
    else if (event === "refused") this.#hear("refused", sentence);
    else if (this.#now) this.#now.message = sentence;
  }

  async #keep(taken: TakenReading): Promise<void> {
    const open = this.#bench.open();
    if (!open || !this.#now) return;
    const role = this.#role(open);
    await this.#bench.keep(open.id, role, taken);
    this.#now.taken += 1;
    const { text, unit } = taken;
    this.#hear(
      "taken",
      message("balance.hands-free.taken", { role: roleMessage(role), reading: { decimal: text }, unit }),
    );
    const recorded = this.#now.lot !== undefined && (await this.#run?.record(this.#now.lot));
    if (recorded) this.#hear("taken", recorded);
  }

  async #goOn(): Promise<void> {
    const lot = this.#now?.lot;
    if (lot !== undefined && !this.#bench.open()) return this.#nextTicket(lot);
    this.#hear("lifted", this.#due());
  }

  async #nextTicket(lot: string): Promise<void> {
    const next = await this.#run?.next(lot);
    if (next) this.#hear(next.isStarted ? "lifted" : "refused", next.message);
  }

  #hear(kind: Heard["kind"], sentence: Message): void {
    if (!this.#now) return;
    this.#now.message = sentence;
    this.#now.heard = { kind, message: sentence, count: (this.#now.heard?.count ?? 0) + 1 };
    this.#bench.changed();
  }

  /** One thing after another; what is refused is told as everything else is. */
  #then(does: () => Promise<void>): void {
    this.#queue = this.#queue
      .then(does)
      .catch((error: unknown) => this.#hear("refused", failureMessage(error)));
  }
}

const roleMessage = (role: Role): Message => message(`bench.roles.${role}`);
