/** Why the ledger could not do what was asked. */
export type TroubleKind =
  | "refused"
  | "disk-full"
  | "read-only"
  | "busy"
  | "in-use"
  | "damaged"
  | "newer"
  | "missing"
  | "unreachable";

/** A failure of the ledger in words for the person at the bench. Nothing was stored when it is thrown. */
export class LedgerTrouble extends Error {
  readonly kind: TroubleKind;
  constructor(kind: TroubleKind, says: string, cause?: unknown) {
    super(says, cause === undefined ? {} : { cause });
    this.name = "LedgerTrouble";
    this.kind = kind;
  }
}

/** Primary result codes of SQLite (sqlite.org/rescode.html). */
const sqliteTrouble: Record<number, TroubleKind> = {
  5: "busy",
  6: "busy",
  8: "read-only",
  10: "disk-full",
  11: "damaged",
  13: "disk-full",
  14: "missing",
  26: "damaged",
};

/** Errors of the file system by their name (POSIX.1-2017, errno.h). */
const fileTrouble: Record<string, TroubleKind> = {
  EROFS: "read-only",
  EACCES: "read-only",
  EPERM: "read-only",
  ENOSPC: "disk-full",
  EDQUOT: "disk-full",
  EIO: "disk-full",
};

const remedy: Record<TroubleKind, string> = {
  refused: "Nothing was stored.",
  "disk-full":
    "The disk is full or failing, and nothing was stored. Make room or copy the data folder to another disk, then save again.",
  "read-only":
    "The file or its disk cannot be written, and nothing was stored. Give this user the right to write there.",
  busy: "Another program kept the file locked for too long, and nothing was stored. Close it, then save again.",
  "in-use": "Close the other Underhook first, or give this one a data folder of its own.",
  damaged:
    "The file is damaged. Keep it as it is, run `underhook verify` on a copy, and restore the last backup with `underhook restore`.",
  newer: "Use that newer Underhook.",
  missing: "Check the path and the right to read and write there.",
  unreachable: "Check the network and the database server; the bench can go on with a ledger of its own.",
};

/** Turns what SQLite or PostgreSQL threw into words; a LedgerTrouble passes through. */
export function asTrouble(cause: unknown, place: string): Error {
  if (cause instanceof LedgerTrouble) return cause;
  if (!(cause instanceof Error)) return new Error(String(cause));
  const code = (cause as { errcode?: unknown }).errcode;
  const kind =
    typeof code === "number"
      ? sqliteTrouble[code & 0xff]
      : (fileTrouble[codeOf(cause)] ?? fromWords(cause) ?? postgresTrouble(cause));
  if (!kind) return cause;
  return new LedgerTrouble(kind, `The ledger ${place} says "${cause.message}". ${remedy[kind]}`, cause);
}

function codeOf(cause: Error): string {
  return String((cause as { code?: unknown }).code ?? "");
}

/** Some errors of SQLite arrive as text only (messages: sqlite.org/rescode.html). */
function fromWords({ message }: Error): TroubleKind | undefined {
  if (/disk image is malformed|file is not a database/.test(message)) return "damaged";
  if (/database or disk is full|disk I\/O error/.test(message)) return "disk-full";
  if (/attempt to write a readonly database/.test(message)) return "read-only";
  if (/database (table )?is locked/.test(message)) return "busy";
  return undefined;
}

/** SQLSTATE classes (PostgreSQL documentation, appendix A) and the socket errors of Node. */
function postgresTrouble(cause: Error): TroubleKind | undefined {
  const code = (cause as { code?: unknown }).code;
  if (typeof code !== "string")
    return /connection terminated/i.test(cause.message) ? "unreachable" : undefined;
  if (code === "53100") return "disk-full";
  if (code === "25006") return "read-only";
  if (
    code.startsWith("08") ||
    code.startsWith("57P") ||
    /^E(CONN|PIPE|HOST|NET|TIMEDOUT|NOTFOUND)/.test(code)
  )
    return "unreachable";
  if (code === "40001" || code === "40P01" || code === "55P03") return "busy";
  return undefined;
}
