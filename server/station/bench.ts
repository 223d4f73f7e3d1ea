import { randomUUID } from "node:crypto";
import { type Message, message } from "../../calibration/message.ts";
import type { BenchClosed } from "../checks/bench-closed.ts";
import type { Evaluation } from "../compute/evaluation.ts";
import type { Entry } from "../ledger/entry.ts";
import { builtIn, type Library } from "../metals/library.ts";
import type { Role } from "../methods/index.ts";
import { type AnnouncedMass, type OtherMass, otherMass } from "../weighing/announced-mass.ts";
import { type BeforeWetting, beforeWetting } from "../weighing/before-wetting.ts";
import type { Check } from "../weighing/checks/check.ts";
import type { Conditions } from "../weighing/conditions.ts";
import { weighingOf } from "../weighing/evolve.ts";
import type { Item } from "../weighing/item.ts";
import { procedureChecks } from "../weighing/procedure-checks.ts";
import type { ProfileOf } from "../weighing/request.ts";
import { lastSecondReading } from "../weighing/second-person.ts";
import type { SensorsNow } from "../weighing/sensor-value.ts";
import type { Reading } from "../weighing/taken-reading.ts";
import { isUnwatched, withWatched } from "../weighing/watched.ts";
import type { AdjustmentOpen } from "./adjustment-repository.ts";
import { announcedMass } from "./announced-mass.ts";
import { whatToLookAt } from "./balance-change.ts";
import type { BenchParts, Preferences } from "./bench-parts.ts";
import { firstSettings } from "./bench-settings.ts";
import { HandsFree } from "./hands-free.ts";
import { limitPassed } from "./limit-passed.ts";
import { lastWeighing } from "./open-weighing.ts";
import { type Live, type Scale, unwatching } from "./scale.ts";
import { type Done, Station } from "./station.ts";
import { WaitingCapture } from "./waiting-capture.ts";
import { evaluationOfItem } from "./weighing-evaluation.ts";

/**
 * The bench as it stands: the weighing on it, the reading that is waited for, the evaluation as far as it goes. Pages only
 * watch it, so that a reload, a second tab or a second operator always sees the same weighing; whatever is to be done
 * goes through its station.
 */
export class Bench {
  /** the one way anything is done here */
  readonly station: Station;
  readonly #parts: BenchParts;
  readonly #waiting: WaitingCapture;
  /** takes each load that came to rest by itself, when somebody has asked for it */
  readonly handsFree: HandsFree;
  readonly #listeners = new Set<() => void>();
  readonly #lineListeners = new Set<() => void>();
  #scale: Scale | undefined;
  #endHearing: () => void = () => {};
  #entries: readonly Entry[] = [];
  #piece: Item | undefined;
  #evaluation: Evaluation | undefined;
  #beforeWetting: BeforeWetting | undefined;
  #nextPiece = randomUUID();
  #secondPersonAbove: string | undefined;
  #announced: AnnouncedMass | undefined;

  constructor(parts: BenchParts) {
    this.#parts = parts;
    this.station = new Station(parts);
    this.station.onDone((done) => this.#follow(done));
    const keep = async (subject: string, role: Role, reading: Reading) => {
      await this.station.do({ do: "take-reading", subject, seen: "now", role, reading });
    };
    const changed = () => this.#changed();
    this.#waiting = new WaitingCapture({ keep, changed });
    this.handsFree = new HandsFree({
      scale: () => this.#scale,
      open: () => this.open,
      waitsFor: () => this.#handsWaitFor(),
      keep,
      changed,
    });
    this.#listenTo(parts.scale);
  }

  /**
   * Goes over to another balance, or to none. The piece stays as it is; a reading that is waited for is called off, and
   * while a piece is on the bench a person is asked to look: at the zero of a balance opened anew, or at what both show
   * when the readings so far came from another one.
   */
  exchangeScale(scale: Scale | undefined, how: "opened" | "heard-all-along" = "opened"): void {
    if (scale === this.#scale) return;
    this.#waiting.giveUp(message("balance.capture.exchanged"));
    this.handsFree.end();
    this.#listenTo(scale);
    const check = scale && this.open && whatToLookAt(scale.name, this.item, how);
    if (check) scale.raiseCheck(check);
    this.#changed();
  }

  /** Finds the weighing that was started last when the ledger was last written, at the step it was in. */
  async resume(): Promise<void> {
    const last = await lastWeighing(this.#parts.ledger);
    if (last) this.#entries = await this.#parts.ledger.entriesOf(last.id);
    this.#piece = last;
    await this.refresh();
  }

  get scale(): Scale | undefined {
    return this.#scale;
  }
  /** what the balance in use shows; how long it watches a load only where a reading of it waits for that */
  get live(): Live | undefined {
    const live = this.#scale?.live();
    if (live?.state !== "reading") return live;
    const last = this.open?.captures.at(-1);
    return last && last.role !== "dry" && isUnwatched(last) ? live : unwatching(live);
  }
  /** balances that are heard already, to change over to */
  get otherBalances(): readonly { address: string; name: string }[] {
    return this.#parts.others?.() ?? [];
  }
  /** the weighing that was started last */
  get item(): Item | undefined {
    return this.#piece;
  }
  /** the weighing that goes on */
  get open(): Item | undefined {
    return this.#piece?.closed ? undefined : this.#piece;
  }
  /** what a form of this moment is about: the weighing that goes on, or the one that is started next */
  get about(): { subject: string; seen: number } {
    const { open } = this;
    return open ? { subject: open.id, seen: this.#entries.length } : { subject: this.#nextPiece, seen: 0 };
  }
  /** id of the piece that is started next: the same form sent twice starts one weighing */
  get nextPiece(): string {
    return this.#nextPiece;
  }
  get conditions(): Conditions {
    return this.#parts.conditions();
  }
  get profileOf(): ProfileOf | undefined {
    return this.#parts.profileOf;
  }
  /** why the checks of the balance in use close the bench; undefined while it is open */
  get closed(): BenchClosed | undefined {
    return this.#parts.closed?.(this.scale?.name ?? "typed");
  }
  /** the adjustment of the balance in use that asks for the reference piece */
  get adjusted(): AdjustmentOpen | undefined {
    return this.scale && this.#parts.adjusted?.(this.scale.name);
  }
  get library(): Library {
    return this.#parts.library?.() ?? builtIn;
  }
  /** what the sensors beside the balance show now */
  get sensors(): SensorsNow | undefined {
    return this.#parts.sensors?.();
  }
  get preferences(): Preferences {
    return this.#parts.preferences?.() ?? firstSettings;
  }
  get found(): readonly Message[] {
    return this.#parts.ledger.found;
  }
  /** why the ledger could not store the last entry, until it can again */
  get notStored(): Message | null {
    return this.#parts.ledger.notStored;
  }
  get waitingFor(): Role | undefined {
    return this.#waiting.role;
  }
  get evaluation(): Evaluation | undefined {
    return this.#evaluation;
  }
  /** what a piece weighed dry will show once it is wet */
  get beforeWetting(): BeforeWetting | undefined {
    return this.#beforeWetting;
  }
  /** why the last reading that was waited for came to nothing, until the next step */
  get error(): Message | undefined {
    return this.#waiting.error;
  }
  /** set while the dry mass is not the announced one and nobody has said whether it is the right piece */
  get otherMass(): OtherMass | undefined {
    return this.open && otherMass(this.open, this.#announced);
  }
  /** the limit above which the typed readings of the piece need a second person who has not confirmed them yet */
  get secondPersonDue(): string | undefined {
    const last = this.item && lastSecondReading(this.item);
    return last?.body.agrees ? undefined : this.#secondPersonAbove;
  }
  /** what looks wrong about the weighing so far, and about the immersion that goes on */
  get checks(): Check[] {
    if (!this.open) return [];
    const { conditions, profileOf, evaluation, library } = this;
    const live = this.station.liveReadings.all;
    return procedureChecks(this.open, { conditions, profileOf, evaluation, library, live });
  }

  /** Calls back after every change; returns the function that ends it. */
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Calls back for every line and event of whichever balance is in use. */
  onLine(listener: () => void): void {
    this.#lineListeners.add(listener);
  }

  /** Ends what waits for the balance, when the program ends. */
  cancelCapture(): void {
    this.#waiting.cancel();
  }

  /** Computes what can be computed of the weighing as it stands. */
  async refresh(): Promise<void> {
    const { open } = this;
    if (!open) this.station.liveReadings.forget();
    this.#evaluation = open && (await evaluationOfItem(open, this.#parts));
    this.#beforeWetting = open && (await beforeWetting(open, { library: () => builtIn, ...this.#parts }));
    this.#secondPersonAbove = open && (await limitPassed(open, this.#parts));
    this.#announced = open && (await announcedMass(open, this.#parts.ledger));
    this.#changed();
  }

  #listenTo(scale: Scale | undefined): void {
    this.#endHearing();
    this.#scale = scale;
    const endWatch = scale?.onMoved((grams) => {
      this.station.liveReadings.movedOn(scale.live(), grams);
      this.#changed();
    });
    const endExcluding = scale?.onCreepExcluded(() => this.#creepExcluded());
    const endLines = scale?.onLine(() => {
      this.station.liveReadings.add(scale.live(), this.#waiting.role);
      for (const listener of this.#lineListeners) listener();
    });
    this.#endHearing = () => {
      endWatch?.();
      endExcluding?.();
      endLines?.();
    };
  }

  /** The load of the last reading lies still for so long by now that no creep is left open. */
  #creepExcluded(): void {
    const last = this.open?.captures.at(-1);
    if (!this.open || !last || !isUnwatched(last)) return;
    this.station.liveReadings.creepExcluded(last.id);
    this.#piece = withWatched(this.open, [last.id]);
    void this.refresh();
  }

  /** What was done at the station: the balance is asked, and the weighing is drawn as it is now. */
  async #follow({ command, entries, written }: Done): Promise<void> {
    if (command.subject === this.#nextPiece && written.length > 0) this.#nextPiece = randomUUID();
    const started = command.do === "start-weighing";
    if (started || command.subject === this.#piece?.id) {
      this.#entries = entries;
      const piece = weighingOf(entries);
      this.#piece = piece && withWatched(piece, this.station.liveReadings.watched);
    }
    this.#ask(command);
    if (written.length === 0 && !started) return;
    this.#waiting.forgetError();
    await this.refresh();
  }

  #ask(command: Done["command"]): void {
    switch (command.do) {
      case "request-reading":
        this.#waiting.begin(command.subject, command.role, this.#scale);
        this.station.liveReadings.begin(command.role);
        return;
      case "take-reading":
        this.#waiting.kept();
        return;
      case "accept-unstable":
        this.#waiting.byHand();
        return;
      case "cancel-request":
      case "call-off":
      case "call-off-other-item":
        this.#waiting.cancel();
        return;
      case "auto-capture":
        this.handsFree.begin(command.lot);
        return;
      case "end-auto-capture":
        this.handsFree.end();
        return;
      case "balance-looked-at":
        this.#scale?.answerCheck(command.kind);
        this.#changed();
    }
  }

  /** Why no load may be taken by itself just now. */
  #handsWaitFor(): Message | undefined {
    if (this.waitingFor !== undefined) return message("balance.hands-free.asked-by-hand");
    const { open, otherMass } = this;
    return otherMass && open && message("balance.hands-free.other-mass", { ticket: open.ticket });
  }

  #changed(): void {
    for (const listener of this.#listeners) listener();
  }
}
