import { parentPort } from "node:worker_threads";
import { DatabaseSync } from "@photostructure/sqlite";
import type { Answer, Asked, Ran } from "./sqlite-thread.ts";

type Statement = ReturnType<InstanceType<typeof DatabaseSync>["prepare"]>;

/** An open file with its statements, which are kept, as the ledger asks the same few again and again. */
interface Open {
  file: InstanceType<typeof DatabaseSync>;
  kept: Map<string, { statement: Statement; reads: boolean }>;
}

const mostKept = 100;
const databases = new Map<number, Open>();

function answer(asked: Asked): Ran {
  if (asked.do === "open") {
    const place = asked.place.startsWith("file:") ? new URL(asked.place) : asked.place;
    databases.set(asked.database, { file: new DatabaseSync(place, asked.options), kept: new Map() });
    return { rows: [] };
  }
  const open = databases.get(asked.database);
  if (!open) throw new Error("This database is not open.");
  if (asked.do === "run") return ran(open, asked.sql, asked.parameters as never[]);
  databases.delete(asked.database);
  open.file.close();
  return { rows: [] };
}

function ran(open: Open, sql: string, parameters: never[]): Ran {
  const { statement, reads } = open.kept.get(sql) ?? prepared(open, sql);
  if (reads) return { rows: statement.all(...parameters) as Record<string, unknown>[] };
  const { changes, lastInsertRowid } = statement.run(...parameters);
  return { rows: [], numAffectedRows: BigInt(changes), insertId: BigInt(lastInsertRowid) };
}

function prepared({ file, kept }: Open, sql: string) {
  const statement = file.prepare(sql);
  const fresh = { statement, reads: statement.columns().length > 0 };
  if (kept.size < mostKept && !/^\s*(create|alter|drop|pragma)/i.test(sql)) kept.set(sql, fresh);
  return fresh;
}

function failed(cause: unknown): Extract<Answer, { failed: unknown }>["failed"] {
  if (!(cause instanceof Error)) return { message: String(cause) };
  const { message } = cause;
  return "errcode" in cause && typeof cause.errcode === "number"
    ? { message, errcode: cause.errcode }
    : { message };
}

parentPort?.on("message", ({ number, ...asked }: Asked & { number: number }) => {
  let said: Answer;
  try {
    said = { number, ...answer(asked as Asked) };
  } catch (cause) {
    said = { number, failed: failed(cause) };
  }
  parentPort?.postMessage(said);
});
