import { headText, type TreeHead } from "./note.ts";
import { type RecordState, recordStates } from "./record-state.ts";

/**
 * What a bench signs of one subject: as of this head of its tree these rows, and no others, are about it, and this is how
 * it stands. A tree alone proves that an entry is in it; that none was left out of a file, only this says.
 */
export interface SubjectStatement {
  head: TreeHead;
  subject: string;
  state: RecordState;
  /** ISO 8601, by the clock of the bench */
  at: string;
  rows: readonly { seq: number; hash: string }[];
}

const firstLine = "underhook record statement, version 1";

/** The statement as text, one fact a line. */
export function statementText({ head, subject, state, at, rows }: SubjectStatement): string {
  const lines = rows.map(({ seq, hash }) => `${seq} ${hash}\n`).join("");
  return `${firstLine}\n${headText(head)}${JSON.stringify(subject)}\n${state}\n${at}\n${rows.length}\n${lines}`;
}

/** Reads what `statementText` wrote; null when it is something else. */
export function readStatement(text: string): SubjectStatement | null {
  const [first, origin = "", size = "", root = "", subject = "", state, at = "", count, ...rest] =
    text.split("\n");
  if (first !== firstLine || !/^\d{1,15}$/.test(size)) return null;
  const rows = rest.slice(0, -1).map((line) => {
    const [seq, hash = ""] = line.split(" ");
    return { seq: Number(seq), hash };
  });
  const known = recordStates.find((one) => one === state);
  if (known === undefined || Number(count) !== rows.length) return null;
  const read: SubjectStatement = {
    head: { origin, size: Number(size), root: Buffer.from(root, "base64") },
    ...{ subject: subject.slice(1, -1), state: known, at, rows },
  };
  try {
    read.subject = String(JSON.parse(subject));
  } catch {
    return null;
  }
  return statementText(read) === text ? read : null;
}
