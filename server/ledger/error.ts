import type { Code, Message, Params } from "../../calibration/message.ts";

/** Why the ledger could not do what was asked. */
export type LedgerErrorKind =
  | "refused"
  | "disk-full"
  | "read-only"
  | "busy"
  | "in-use"
  | "damaged"
  | "newer"
  | "missing"
  | "unreachable";

/** A failure of the ledger as a message for the person at the bench. Nothing was stored when it is thrown. */
export class LedgerError extends Error implements Message {
  readonly code: Code;
  readonly params: Params;
  readonly kind: LedgerErrorKind;
  constructor(code: Code, params: Params, kind: LedgerErrorKind, cause?: unknown) {
    super(`${code} ${JSON.stringify(params)}`, cause === undefined ? {} : { cause });
    this.name = "LedgerError";
    this.code = code;
    this.params = params;
    this.kind = kind;
  }
}

/** Primary result codes of SQLite (sqlite.org/rescode.html). */
const sqliteErrors: Record<number, LedgerErrorKind> = {
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
const fileErrors: Record<string, LedgerErrorKind> = {
  EROFS: "read-only",
  EACCES: "read-only",
  EPERM: "read-only",
  ENOSPC: "disk-full",
  EDQUOT: "disk-full",
  EIO: "disk-full",
};

/** Turns what SQLite or PostgreSQL threw into a message; a LedgerError passes through. */
export function asLedgerError(cause: unknown, place: string): Error {
  if (cause instanceof LedgerError) return cause;
  if (!(cause instanceof Error)) return new Error(String(cause));
  const code = "errcode" in cause ? cause.errcode : undefined;
  const kind =
    typeof code === "number"
      ? sqliteErrors[code & 0xff]
      : (fileErrors[codeOf(cause)] ?? kindFromText(cause) ?? postgresKind(cause));
  if (!kind) return cause;
  return new LedgerError(`ledger.error.${kind}`, { place, cause: cause.message }, kind, cause);
}

function codeOf(cause: Error): string {
  return "code" in cause ? String(cause.code) : "";
}

/** Some errors of SQLite arrive as text only (messages: sqlite.org/rescode.html). */
function kindFromText({ message }: Error): LedgerErrorKind | undefined {
  if (/disk image is malformed|file is not a database/.test(message)) return "damaged";
  if (/database or disk is full|disk I\/O error/.test(message)) return "disk-full";
  if (/attempt to write a readonly database/.test(message)) return "read-only";
  if (/database (table )?is locked/.test(message)) return "busy";
  return undefined;
}

/** SQLSTATE classes (PostgreSQL documentation, appendix A) and the socket errors of Node. */
function postgresKind(cause: Error): LedgerErrorKind | undefined {
  const code = "code" in cause ? cause.code : undefined;
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
