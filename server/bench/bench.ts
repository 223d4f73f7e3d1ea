import { randomUUID } from "node:crypto";
import type { MassUnit } from "../../calibration/units.ts";
import { builtIn, type Library } from "../alloys/library.ts";
import type { Evaluation } from "../compute/evaluation.ts";
import type { Entry } from "../ledger/entry.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import { whatToLookAt } from "./balance-change.ts";
import type { BenchParts, Preferences } from "./bench-parts.ts";
import { firstSettings } from "./bench-settings.ts";
import type { Conditions } from "./conditions.ts";
import { EachLoad } from "./each-load.ts";
import { mustTake, type Role } from "./method.ts";
import { after, type Piece, type Ticket } from "./piece.ts";
import { evaluationOfPiece, wholeEvaluation } from "./piece-evaluation.ts";
import { Refusal } from "./refusal.ts";
import type { ProfileOf } from "./request.ts";
import type { Scale, TakenReading } from "./scale.ts";
import { captureOf, type Reading } from "./taken-reading.ts";
import { WaitingCapture } from "./waiting-capture.ts";

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
  #piece: Piece | undefined;
  #evaluation: Evaluation | undefined;
  #listeners = new Set<() => void>();
  #queue: Promise<unknown> = Promise.resolve();
  #nextPiece = randomUUID();
  readonly #waiting: WaitingCapture;
  /** takes each settled load by itself, when somebody has asked for it */
  readonly #eachLoad: EachLoad;

  constructor(parts: BenchParts) {
    this.#parts = parts;
    const keep = (role: Role, taken: TakenReading) => this.#capture(role, taken);
    const changed = () => this.#changed();
    this.#waiting = new WaitingCapture({ keep, changed });
    this.#eachLoad = new EachLoad({
      scale: () => this.#scale,
      isWaiting: () => this.#waiting.role !== undefined,
      keep,
      changed,
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
    const open = this.#piece !== undefined && !this.#piece.closed;
    this.#waiting.giveUp("The balance was exchanged while a capture waited. Nothing was taken.");
    this.#eachLoad.end();
    this.#listenTo(scale);
    const says = scale && open && whatToLookAt(scale.name, this.#piece, how);
    if (says) scale.raiseDoubt(says);
    this.#changed();
  }

  #listenTo(scale: Scale | undefined): void {
    this.#endHearing();
    this.#scale = scale;
    this.#endHearing =
      scale?.onLine(() => {
        for (const listener of this.#lineListeners) listener();
      }) ?? (() => {});
  }

  /** Finds the piece that was on the bench when the ledger was last written, at the step it was in. */
  async resume(): Promise<void> {
    const [opened] = await this.#parts.ledger.entries({ kind: "piece-opened", newestFirst: true, limit: 1 });
    if (opened)
      for (const entry of await this.#parts.ledger.entriesOf(opened.subject))
        this.#piece = after(this.#piece, entry);
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
    return this.#piece;
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
  get library(): Library {
    return this.#parts.library?.() ?? builtIn;
  }
  get preferences(): Preferences {
    return this.#parts.preferences?.() ?? firstSettings;
  }
  get found(): readonly string[] {
    return this.#parts.ledger.found;
  }
  get waitingFor(): Role | undefined {
    return this.#waiting.role;
  }
  get evaluation(): Evaluation | undefined {
    return this.#evaluation;
  }
  /** why the last capture came to nothing, until the next step */
  get trouble(): string | undefined {
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

  openPiece(
    { ticket, description, method, claim, lot, customer, customerSupplied }: Ticket,
    id: string,
  ): Promise<void> {
    return this.#inTurn(async () => {
      if (this.#piece && !this.#piece.closed && this.#piece.id !== id)
        throw new Refusal(
          `Piece "${this.#piece.ticket}" is still on the bench. Write its record or set it aside, then open "${ticket}".`,
          "ticket",
        );
      const ofLot = lot === undefined ? {} : { lot };
      const rule = {
        ...this.preferences.decisionRule,
        confidence_percent: this.#parts.conditions().confidencePercent,
      };
      const told = {
        ...(customer === undefined ? {} : { customer }),
        ...(customerSupplied === undefined ? {} : { customerSupplied }),
      };
      const body = { ticket, description, method, claim: claim ?? null, ...ofLot, ...told, rule };
      await this.#wrote(await this.#parts.ledger.append("piece-opened", id, body, { key: id }));
      if (id === this.#nextPiece) this.#nextPiece = randomUUID();
    });
  }

  /** Asks the balance for a settled reading of this role. Only lines that arrive from now on count. */
  requestCapture(role: Role): void {
    mustTake(this.#openPiece.method, role);
    this.#waiting.begin(role, this.scale);
  }

  /** For hands in water: takes each settled load of this role by itself from now on. */
  takeEachLoad(role: Role): void {
    mustTake(this.#openPiece.method, role);
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
  settleDoubt(kind: string): Promise<void> {
    return this.#inTurn(async () => {
      const doubt = this.scale?.doubts().find((one) => one.kind === kind);
      if (!doubt) return;
      const piece = this.#piece;
      if (piece && !piece.closed)
        await this.#parts.ledger.append("note", piece.id, {
          text: `Looked at and found well: ${doubt.says}`,
        });
      this.scale?.settleDoubt(kind);
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
    return this.#inTurn(async () => {
      const body = { what: "temperature" as const, celsius, source: "typed" as const, lines: [] };
      const { id } = this.#openPiece;
      await this.#wrote(
        await this.#parts.ledger.append("capture", id, body, key === undefined ? {} : { key }),
      );
    });
  }

  /** Sets a reading aside with its reason; it stays visible. */
  setAsideCapture(captureId: string, reason: string): Promise<void> {
    return this.#inTurn(async () => {
      const piece = this.#openPiece;
      const capture = piece.captures.find(({ id }) => id === captureId);
      if (!capture)
        throw new Refusal("That reading does not belong to the piece on the bench. Reload the page.");
      if (capture.setAside)
        throw new Refusal(`That reading was already set aside: ${capture.setAside.reason}.`);
      if (reason.trim() === "")
        throw new Refusal("Setting a reading aside needs a reason, such as: bubble on the edge.", "reason");
      const body = { entry: captureId, reason: reason.trim() };
      await this.#wrote(await this.#parts.ledger.append("voiding", piece.id, body));
    });
  }

  /** Keeps what another test of the piece found; before, between or after its readings. */
  addTest(body: BodyOf<"evidence">, key?: string): Promise<void> {
    return this.#inTurn(async () => {
      const { id } = this.#openPiece;
      await this.#wrote(
        await this.#parts.ledger.append("evidence", id, body, key === undefined ? {} : { key }),
      );
    });
  }

  /** Sets another test aside with its reason; it stays visible. */
  setAsideTest(entry: string, reason: string): Promise<void> {
    return this.#inTurn(async () => {
      const piece = this.#openPiece;
      if (!piece.tests.some((test) => test.entry.id === entry))
        throw new Refusal("That test does not belong to the piece on the bench. Reload the page.");
      if (reason.trim() === "")
        throw new Refusal(
          "Setting a test aside needs a reason, such as: magnet touched a steel clasp.",
          `reason-${entry}`,
        );
      const body = { entry, reason: reason.trim() };
      await this.#wrote(
        await this.#parts.ledger.append("voiding", piece.id, body, { key: `voiding-${entry}` }),
      );
    });
  }

  setAsidePiece(reason: string): Promise<void> {
    return this.#inTurn(async () => {
      if (reason.trim() === "")
        throw new Refusal("Setting a piece aside needs a reason, such as: hollow, water came out.", "reason");
      const { id } = this.#openPiece;
      this.cancelCapture();
      await this.#wrote(await this.#parts.ledger.append("piece-left", id, { reason: reason.trim() }));
    });
  }

  /** Writes the record of the piece and closes it. Returns the id of the piece, under which its record stands. */
  record(): Promise<string> {
    return this.#inTurn(async () => {
      const piece = this.#openPiece;
      const { request, response } = await wholeEvaluation(piece, this.#parts);
      const versions = { ...this.#parts.versions, library: this.library.version };
      const body = { request, response, versions };
      const key = `result-${piece.id}`;
      await this.#wrote(await this.#parts.ledger.append("result", piece.id, body, { key }));
      return piece.id;
    });
  }

  /** Computes what can be computed of the piece as it stands. */
  async refresh(): Promise<void> {
    const piece = this.#piece;
    if (piece?.closed && this.#eachLoad.now) this.#eachLoad.end();
    this.#evaluation = piece && !piece.closed ? await evaluationOfPiece(piece, this.#parts) : undefined;
    this.#changed();
  }

  get #openPiece(): Piece {
    if (!this.#piece || this.#piece.closed)
      throw new Refusal("No piece is on the bench. Open one with its ticket first.", "ticket");
    return this.#piece;
  }

  #capture(role: Role, reading: Reading, key?: string): Promise<void> {
    return this.#inTurn(async () => {
      const piece = this.#openPiece;
      mustTake(piece.method, role);
      const body = captureOf(role, reading, this.#parts.simulated);
      await this.#wrote(
        await this.#parts.ledger.append("capture", piece.id, body, key === undefined ? {} : { key }),
      );
    });
  }

  /** The piece as its ledger tells it: read anew, so that an entry that stood already is not counted twice. */
  async #wrote(entry: Entry): Promise<void> {
    let piece: Piece | undefined;
    for (const told of await this.#parts.ledger.entriesOf(entry.subject)) piece = after(piece, told);
    this.#piece = piece;
    this.#waiting.forgetTrouble();
    await this.refresh();
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#queue.then(work);
    this.#queue = turn.catch(() => undefined);
    return turn;
  }

  #changed(): void {
    for (const listener of this.#listeners) listener();
  }
}
