import type { Sentence } from "../../../views/sentence.tsx";
import type { ListName } from "../../ledger/imports/lists.ts";
import type { ImportPreview } from "../../ledger/imports/preview.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { CurrentLibrary } from "../../station/current-library.ts";
import { refusalOf } from "../refused.ts";
import { takeOver } from "./import-lists.ts";

/** A list that is being taken over: how far it is, and how it ended. */
export interface ImportRun {
  readonly list: ListName;
  /** rows of the list, and how many of them were looked at so far */
  readonly of: number;
  readonly seen: number;
  /** how it ended: rows that were written, or why no more were; undefined while it goes on */
  readonly outcome: { count: number; stopped: boolean } | { message: Sentence } | undefined;
  /** resolves when it ended, either way */
  readonly ended: Promise<void>;
  /** Ends it between two rows; what is written stays, and the same list again writes nothing twice. */
  stop(): void;
}

/** Takes a list over while the bench goes on with everything else. */
export function importRun(
  preview: ImportPreview,
  from: string,
  parts: { ledger: Ledger; library: CurrentLibrary },
): ImportRun {
  const stopping = new AbortController();
  const of = preview.rows.length;
  let seen = 0;
  let outcome: ImportRun["outcome"];
  const onProgress = (rows: number) => {
    seen = rows;
  };
  const ended = takeOver(preview, from, { ...parts, onProgress, signal: stopping.signal })
    .then((count) => {
      outcome = { count, stopped: stopping.signal.aborted && seen < of };
    })
    .catch((error: unknown) => {
      outcome = { message: refusalOf(error).message };
    });
  return {
    list: preview.list,
    of,
    get seen() {
      return seen;
    },
    get outcome() {
      return outcome;
    },
    ended,
    stop: () => stopping.abort(),
  };
}
