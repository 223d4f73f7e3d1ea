import type { Evaluation } from "../compute/evaluation.ts";
import type { BodyOf, Kind } from "../ledger/kinds.ts";
import type { AppendOptions } from "../ledger/ledger.ts";
import { builtIn } from "../metals/library.ts";
import { type BeforeWetting, beforeWetting } from "../weighing/before-wetting.ts";
import { after, type Piece } from "../weighing/piece.ts";
import { evaluationOfPiece } from "../weighing/piece-evaluation.ts";
import { Refusal } from "../weighing/refusal.ts";
import type { BenchParts } from "./bench-parts.ts";

/** The piece on the bench as its ledger tells it, and the evaluation as far as it goes. */
export class PieceOnBench {
  #parts: BenchParts;
  #kept: () => Promise<void>;
  #piece: Piece | undefined;
  #evaluation: Evaluation | undefined;
  #beforeWetting: BeforeWetting | undefined;
  #queue: Promise<unknown> = Promise.resolve();

  /** `kept` is called after every entry about the piece. */
  constructor(parts: BenchParts, kept: () => Promise<void>) {
    this.#parts = parts;
    this.#kept = kept;
  }

  get piece(): Piece | undefined {
    return this.#piece;
  }
  get evaluation(): Evaluation | undefined {
    return this.#evaluation;
  }

  /** what the weighing will show, as long as nothing is wet */
  get beforeWetting(): BeforeWetting | undefined {
    return this.#beforeWetting;
  }

  /** The piece that is being weighed. Throws Refusal when there is none. */
  get open(): Piece {
    if (!this.#piece || this.#piece.closed)
      throw new Refusal("No piece is on the bench. Open one with its ticket first.", "ticket");
    return this.#piece;
  }

  /** Finds the piece that was on the bench when the ledger was last written. */
  async resume(): Promise<void> {
    const [opened] = await this.#parts.ledger.entries({ kind: "piece-opened", newestFirst: true, limit: 1 });
    if (opened) await this.#fold(opened.subject);
  }

  /** One thing after another: `work` begins when all that was asked before is done. */
  inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#queue.then(work);
    this.#queue = turn.catch(() => undefined);
    return turn;
  }

  /** Writes an entry about a piece; the same key again stores nothing twice. Only within a turn. */
  async write<K extends Kind>(kind: K, id: string, body: BodyOf<K>, key?: string): Promise<void> {
    const options: AppendOptions = key === undefined ? {} : { key };
    await this.#parts.ledger.append(kind, id, body, options);
    await this.#fold(id);
    await this.#kept();
  }

  /** Writes an entry about the piece that is being weighed, in its turn. */
  writeAbout<K extends Kind>(kind: K, body: (piece: Piece) => BodyOf<K>, key?: string): Promise<void> {
    return this.inTurn(async () => this.write(kind, this.open.id, body(this.open), key));
  }

  /** Computes what can be computed of the piece as it stands. */
  async evaluateAnew(): Promise<void> {
    const piece = this.#piece;
    const open = piece && !piece.closed ? piece : undefined;
    this.#evaluation = open && (await evaluationOfPiece(open, this.#parts));
    this.#beforeWetting = open && (await beforeWetting(open, { library: () => builtIn, ...this.#parts }));
  }

  /** Read anew from the ledger, so that an entry that stood already is not counted twice. */
  async #fold(id: string): Promise<void> {
    let piece: Piece | undefined;
    for (const told of await this.#parts.ledger.entriesOf(id)) piece = after(piece, told);
    this.#piece = piece;
  }
}
