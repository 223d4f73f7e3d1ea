import { randomUUID } from "node:crypto";
import { message } from "../../calibration/message.ts";
import type { MassUnit } from "../../calibration/units.ts";
import type { Told } from "../../views/told.tsx";
import type { BenchClosed } from "../checks/bench-closed.ts";
import type { Evaluation } from "../compute/evaluation.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import { builtIn, type Library } from "../metals/library.ts";
import type { Role } from "../methods/index.ts";
import {
  type AnnouncedMass,
  announcedMass,
  mustBeRightPiece,
  type OtherMass,
  otherMass,
  rightPiece,
} from "../weighing/announced-mass.ts";
import type { BeforeWetting } from "../weighing/before-wetting.ts";
import { changedOver } from "../weighing/changed-over.ts";
import { checkedWhile } from "../weighing/checked-while.ts";
import type { Conditions } from "../weighing/conditions.ts";
import type { Details } from "../weighing/details.ts";
import { limitPassed } from "../weighing/limit-passed.ts";
import { openAgain } from "../weighing/opened-again.ts";
import { openingBody } from "../weighing/opening.ts";
import type { Piece, Ticket } from "../weighing/piece.ts";
import { wholeEvaluation } from "../weighing/piece-evaluation.ts";
import { Refusal } from "../weighing/refusal.ts";
import type { ProfileOf } from "../weighing/request.ts";
import { mustTake } from "../weighing/role-names.ts";
import { heldAgainst, lastSecondReading, type TypedAgain } from "../weighing/second-person.ts";
import { asidePhoto, asideReading, asideTest, keyOfPhoto } from "../weighing/setting-aside.ts";
import { captureOf, type Reading } from "../weighing/taken-reading.ts";
import { whatToLookAt } from "./balance-change.ts";
import type { BenchParts, Preferences } from "./bench-parts.ts";
import { firstSettings } from "./bench-settings.ts";
import { EachLoad } from "./each-load.ts";
import { LiveLooks } from "./live-looks.ts";
import { PieceOnBench } from "./piece-on-bench.ts";
import type { Scale } from "./scale.ts";
import { WaitingCapture } from "./waiting-capture.ts";

/** Readings that may be taken while it is open whether this is the right piece. */
const beforeWetting: ReadonlySet<Role> = new Set(["dry", "zero", "flask-full"]);

/**
 * The one bench: the piece on it, the capture that waits, the evaluation as far as it goes. The server owns all of
 * it and pages only watch, so that a reload, a second tab or a second operator always sees the same weighing.
 * What is asked happens in order, one thing after another; a Refusal says why something was not done.
 */
export class Bench {
  #scale: Scale | undefined;
  #endHearing: () => void = () => {};
  #lineListeners = new Set<() => void>();
  #parts: BenchParts;
  #listeners = new Set<() => void>();
  #nextPiece = randomUUID();
  #secondPersonAbove: string | undefined;
  #announced: AnnouncedMass | undefined;
  readonly #onBench: PieceOnBench;
  readonly #waiting: WaitingCapture;
  readonly #looks = new LiveLooks();
  /** takes each settled load by itself, when somebody has asked for it */
  readonly #eachLoad: EachLoad;

  constructor(parts: BenchParts) {
    this.#parts = parts;
    const keep = (role: Role, taken: Reading) => this.#capture(role, taken);
    const changed = () => this.#changed();
    this.#waiting = new WaitingCapture({ keep, changed });
    this.#eachLoad = new EachLoad({
      scale: () => this.#scale,
      isWaiting: () => this.#waiting.role !== undefined,
      keep,
      changed,
    });
    this.#onBench = new PieceOnBench(parts, () => {
      this.#waiting.forgetTrouble();
      return this.refresh();
    });
    this.#listenTo(parts.scale);
  }

  /**
   * Goes over to another balance, or to none. The piece stays as it is; a capture that waits is called off, and while
   * a piece is on the bench a person is asked to look: at the zero of a balance opened anew, or at what both show when
   * the readings so far came from another one.
   */
  exchangeScale(scale: Scale | undefined, how: "opened" | "heard-all-along" = "opened"): void {
    if (scale === this.#scale) return;
    const open = this.piece !== undefined && !this.piece.closed;
    this.#waiting.giveUp(message("balance.capture.exchanged"));
    this.#eachLoad.end();
    this.#listenTo(scale);
    const check = scale && open && whatToLookAt(scale.name, this.piece, how);
    if (check) scale.raiseCheck(check);
    this.#changed();
  }

  #listenTo(scale: Scale | undefined): void {
    this.#endHearing();
    this.#scale = scale;
    this.#endHearing =
      scale?.onLine(() => {
        this.#looks.add(scale.live(), this.#waiting.role);
        for (const listener of this.#lineListeners) listener();
      }) ?? (() => {});
  }

  /** Finds the piece that was on the bench when the ledger was last written, at the step it was in. */
  async resume(): Promise<void> {
    await this.#onBench.resume();
    await this.refresh();
  }

  get scale(): Scale | undefined {
    return this.#scale;
  }
  /** balances that are heard already, to change over to */
  get otherBalances(): readonly { address: string; name: string }[] {
    return this.#parts.others?.() ?? [];
  }
  /** what each settled load is taken for by itself, what to do now, and how many were taken */
  get eachLoad(): EachLoad["now"] {
    return this.#eachLoad.now;
  }
  get piece(): Piece | undefined {
    return this.#onBench.piece;
  }
  /** id of the piece that is opened next: the same form sent twice opens one piece */
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
  get library(): Library {
    return this.#parts.library?.() ?? builtIn;
  }
  get preferences(): Preferences {
    return this.#parts.preferences?.() ?? firstSettings;
  }
  get found(): readonly string[] {
    return this.#parts.ledger.found;
  }
  /** why the ledger could not store the last entry, until it can again */
  get notStored(): string | null {
    return this.#parts.ledger.notStored;
  }
  get waitingFor(): Role | undefined {
    return this.#waiting.role;
  }
  /** what the balance showed while the newest capture in the liquid waited */
  get liveLooks(): LiveLooks["all"] {
    return this.#looks.all;
  }
  get evaluation(): Evaluation | undefined {
    return this.#onBench.evaluation;
  }
  /** what a piece weighed dry will show once it is wet */
  get beforeWetting(): BeforeWetting | undefined {
    return this.#onBench.beforeWetting;
  }
  /** why the last capture came to nothing, until the next step */
  get trouble(): Told | undefined {
    return this.#waiting.trouble;
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

  openPiece(ticket: Ticket, id: string): Promise<void> {
    return this.#onBench.inTurn(async () => {
      if (this.piece && !this.piece.closed && this.piece.id !== id)
        throw new Refusal(
          `Piece "${this.piece.ticket}" is still on the bench. Write its record or set it aside, then open "${ticket.ticket}".`,
          "ticket",
        );
      await this.#onBench.write(
        "piece-opened",
        id,
        openingBody(ticket, this.preferences, this.conditions),
        id,
      );
      if (id === this.#nextPiece) this.#nextPiece = randomUUID();
    });
  }

  /** Asks the balance for a settled reading of this role. Only lines that arrive from now on count. */
  requestCapture(role: Role): void {
    mustTake(this.#onBench.open.method, role);
    if (!beforeWetting.has(role)) this.#mustBeRightPiece();
    this.#waiting.begin(role, this.scale);
    this.#looks.begin(role);
  }

  /** For hands in water: takes each settled load of this role by itself from now on. */
  takeEachLoad(role: Role): void {
    mustTake(this.#onBench.open.method, role);
    if (!beforeWetting.has(role)) this.#mustBeRightPiece();
    this.#eachLoad.begin(role);
  }

  endEachLoad(): void {
    this.#eachLoad.end();
  }

  /** Takes the next line as it stands although it has not settled; the record says so. */
  takeByHand(): void {
    this.#waiting.byHand();
  }

  /** A person looked at the balance after its cable was lost and answers; the answer is kept with the piece. */
  answerCheck(kind: string): Promise<void> {
    return this.#onBench.inTurn(async () => {
      const check = this.scale?.checks().find((one) => one.kind === kind);
      if (!check) return;
      const { code, params } = check.message;
      const looked = message("balance.check.looked-at", { check: message(code, params) });
      if (this.piece && !this.piece.closed)
        await this.#parts.ledger.append("note", this.piece.id, { message: looked });
      this.scale?.answerCheck(kind);
      this.#changed();
    });
  }

  cancelCapture(): void {
    this.#waiting.cancel();
  }

  typeReading(role: Role, reading: { text: string; unit: MassUnit }, key?: string): Promise<void> {
    return this.#capture(role, { ...reading, takenBy: "typed", balance: "typed", lines: [] }, key);
  }

  stateWater(celsius: string, key?: string): Promise<void> {
    const body = { what: "temperature" as const, celsius, source: "typed" as const, lines: [] };
    return this.#onBench.writeAbout("capture", () => body, key);
  }

  /** States anew what is particular to this weighing; what was stated before stays in the ledger. */
  stateDetails(details: (piece: Piece) => Details, key?: string): Promise<void> {
    return this.#onBench.writeAbout("weighing-details", details, key);
  }

  /**
   * Keeps a sentence with the piece, from which nothing is computed: what was typed and sent back with a question, such
   * as a temperature in °F, or what somebody found who looked into one.
   */
  keepNote(text: string, key?: string): Promise<void> {
    return this.#onBench.inTurn(async () => {
      if (this.piece && !this.piece.closed)
        await this.#parts.ledger.append("note", this.piece.id, { text }, key === undefined ? {} : { key });
    });
  }

  /** Sets a reading aside with its reason; it stays visible. */
  setAsideCapture(captureId: string, reason: string): Promise<void> {
    return this.#onBench.writeAbout("voiding", (piece) => asideReading(piece, captureId, reason));
  }

  /** Gives dry and wet readings each other's box; the first entries stay, set aside with this as their reason. */
  changeOver(): Promise<void> {
    return this.#onBench.inTurn(async () => {
      const { id } = this.#onBench.open;
      for (const { capture, role } of changedOver(this.#onBench.open)) {
        const body = captureOf(role, { ...capture, lines: [...capture.lines] }, this.#parts.simulated);
        await this.#onBench.write("capture", id, body, `changed-over-${capture.id}`);
        const reason = "entered in the other box, changed over";
        await this.#onBench.write(
          "voiding",
          id,
          { entry: capture.id, reason },
          `changed-over-${capture.id}-aside`,
        );
      }
    });
  }

  /** Keeps what another test of the piece found; before, between or after its readings. */
  addTest(body: BodyOf<"evidence">, key?: string): Promise<void> {
    return this.#onBench.writeAbout("evidence", () => body, key);
  }

  /** Keeps that a photo belongs to the piece on the bench, if it is still that one; the same photo again is kept once. */
  addPhoto(piece: string, photo: BodyOf<"photo">): Promise<void> {
    return this.#onBench.inTurn(async () => {
      const { open } = this.#onBench;
      if (open.id !== piece)
        throw new Refusal("Another piece is on the bench by now. Reload the page and send the photo again.");
      await this.#onBench.write("photo", piece, photo, keyOfPhoto(open, photo.hash));
    });
  }

  /** Sets a photo aside with its reason; it stays on the disk, and its entry in the ledger. */
  setAsidePhoto(entry: string, reason: string): Promise<void> {
    return this.#onBench.writeAbout("voiding", (piece) => asidePhoto(piece, entry, reason));
  }

  /** Sets another test aside with its reason; it stays visible. */
  setAsideTest(entry: string, reason: string): Promise<void> {
    const key = `voiding-${entry}`;
    return this.#onBench.writeAbout("voiding", (piece) => asideTest(piece, entry, reason), key);
  }

  setAsidePiece(reason: string): Promise<void> {
    return this.#onBench.inTurn(async () => {
      if (reason.trim() === "")
        throw new Refusal("Setting a piece aside needs a reason, such as: hollow, water came out.", "reason");
      const { id } = this.#onBench.open;
      this.cancelCapture();
      await this.#onBench.write("piece-left", id, { reason: reason.trim() });
    });
  }

  /** set while the dry mass is not the announced one and nobody has said whether it is the right piece */
  get otherMass(): OtherMass | undefined {
    return this.piece && !this.piece.closed ? otherMass(this.piece, this.#announced) : undefined;
  }

  /** Keeps why a piece that does not weigh what was announced is the right one all the same. */
  sayRightPiece(reason: string, by: string): Promise<void> {
    return this.#onBench.writeAbout("right-piece", () => rightPiece(this.otherMass, reason, by));
  }

  /** Sets the piece on the pan aside as another one than the ticket's, and puts the ticket on the bench anew. */
  openAgain(): Promise<void> {
    return this.#onBench.inTurn(async () => {
      this.cancelCapture();
      await openAgain(this.#onBench, this.#parts, this.otherMass);
    });
  }

  /** Throws Refusal while it is open whether this is the piece of its ticket: nothing but dry readings until then. */
  #mustBeRightPiece(): void {
    mustBeRightPiece(this.piece?.ticket ?? "", this.otherMass);
  }

  /** the limit above which the typed readings of the piece need a second person who has not confirmed them yet */
  get secondPersonDue(): string | undefined {
    const last = this.piece && lastSecondReading(this.piece);
    return last?.body.agrees ? undefined : this.#secondPersonAbove;
  }

  /** Keeps what a second person read of the typed readings, agreeing or not. Returns whether it agrees. */
  readAgain(by: string, typedBy: string, again: readonly TypedAgain[], key?: string): Promise<boolean> {
    return this.#onBench.inTurn(async () => {
      const { open } = this.#onBench;
      const above = await limitPassed(open, this.#parts);
      if (above === undefined) throw new Refusal("No second person is needed for this piece.");
      const body = heldAgainst(open, { by, typedBy, again, above });
      await this.#onBench.write("second-reading", open.id, body, key);
      return body.agrees;
    });
  }

  /** Writes the record of the piece and closes it. Returns the id of the piece, under which its record stands. */
  record(): Promise<string> {
    return this.#onBench.inTurn(async () => {
      const { open } = this.#onBench;
      this.#mustBeRightPiece();
      this.#secondPersonAbove = await limitPassed(open, this.#parts);
      if (this.secondPersonDue !== undefined)
        throw new Refusal(
          `Typed readings of a piece above ${this.secondPersonDue} are confirmed by a second person before the record is written.`,
        );
      const { request, response } = await wholeEvaluation(open, this.#parts);
      const versions = { ...this.#parts.versions, library: this.library.version };
      const checked = await checkedWhile(open, this.#parts);
      const body = { request, response, versions, ...(checked && { checked }) };
      await this.#onBench.write("result", open.id, body, `result-${open.id}`);
      return open.id;
    });
  }

  /** Computes what can be computed of the piece as it stands. */
  async refresh(): Promise<void> {
    if (this.piece?.closed && this.#eachLoad.now) this.#eachLoad.end();
    if (this.piece?.closed) this.#looks.forget();
    await this.#onBench.evaluateAnew();
    const open = this.piece && !this.piece.closed ? this.piece : undefined;
    this.#secondPersonAbove = open && (await limitPassed(open, this.#parts));
    this.#announced = open && (await announcedMass(open, this.#parts.ledger));
    this.#changed();
  }

  #capture(role: Role, reading: Reading, key?: string): Promise<void> {
    return this.#onBench.writeAbout(
      "capture",
      (piece) => {
        mustTake(piece.method, role);
        // A reading of a balance is there already, and is never thrown away.
        if (reading.takenBy === "typed" && !beforeWetting.has(role)) this.#mustBeRightPiece();
        return captureOf(role, reading, this.#parts.simulated);
      },
      key,
    );
  }

  #changed(): void {
    for (const listener of this.#listeners) listener();
  }
}
