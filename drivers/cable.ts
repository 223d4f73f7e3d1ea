import type { LineMeaning, Reading } from "./reading.ts";

/** What an open cable tells the balance behind it. */
export interface CableEar<R = Reading> {
  /** bytes of a text line, in any pieces */
  bytes(chunk: Uint8Array): void;
  /** a whole report of a cable that does not speak in lines, with its meaning */
  report(bytes: Uint8Array, meaning: NonNullable<LineMeaning<R>>): void;
  /** the far end is gone; told once */
  lost(): void;
}

/** An open connection to a balance, of whatever kind. */
export interface Cable {
  send(bytes: Uint8Array): void;
  close(): Promise<void>;
}

/** Opens a cable. Rejects with the Refusal that says why it cannot be opened: a code "line.refused.…". */
export type OpenCable<R = Reading> = (ear: CableEar<R>) => Promise<Cable>;
