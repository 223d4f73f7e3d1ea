import { askedThread, startThread } from "../asked-thread.ts";

type Parameters = readonly unknown[];

/** What the thread is asked about a database of this name. */
export type Asked = { database: number } & (
  | { do: "open"; place: string; options: { readOnly?: boolean; timeout: number } }
  | { do: "run"; sql: string; parameters: Parameters }
  | { do: "close" }
);

export interface Ran {
  rows: Record<string, unknown>[];
  numAffectedRows?: bigint;
  insertId?: bigint;
}

export type Answer = { number: number } & (Ran | { failed: { message: string; errcode?: number } });

/** An open SQLite file, worked on in another thread. */
export interface Database {
  readonly isOpen: boolean;
  /** Runs one statement; rejects with what SQLite says, its result code as `errcode` (sqlite.org/rescode.html). */
  run(sql: string, parameters?: Parameters): Promise<Ran>;
  /** Closes it; a second time does nothing. */
  close(): Promise<void>;
}

/** One thread serves all ledgers of this process. */
const thread = askedThread<Asked, Answer>("The thread of the ledger", () =>
  startThread("sqlite-worker", import.meta.url),
);
let opened = 0;

async function ask(question: Asked): Promise<Ran> {
  const answer = await thread.ask(question);
  if (!("failed" in answer)) return answer;
  const { message, errcode } = answer.failed;
  throw Object.assign(new Error(message), errcode === undefined ? {} : { errcode });
}

/** Opens a file (a path, or a file: URL with parameters of SQLite), made when it does not exist yet. */
export async function openDatabase(
  place: string,
  options: { readOnly?: boolean; timeout: number },
): Promise<Database> {
  const database = ++opened;
  await ask({ database, do: "open", place, options });
  let isOpen = true;
  return {
    get isOpen() {
      return isOpen;
    },
    run: (sql, parameters = []) => ask({ database, do: "run", sql, parameters }),
    async close() {
      if (!isOpen) return;
      isOpen = false;
      await ask({ database, do: "close" });
    },
  };
}
