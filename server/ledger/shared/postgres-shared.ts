import { sql } from "kysely";
import type pg from "pg";
import { asLedgerError, LedgerError } from "../error.ts";
import type { RecordRow } from "../tables.ts";
import { type Connection, connect, mustBeDurable } from "./connection.ts";
import { placeOf } from "./place.ts";
import type { RetiredRun } from "./retired.ts";
import { sharedSchema, tablesOf } from "./schema.ts";
import { type Batch, ChainMoved, type ChainRow, type SharedLedger } from "./shared-ledger.ts";

/** What the tables of a shared ledger hold, as far as a bench asks. */
export interface SharedTables {
  schema_versions: { version: number; at: string };
  chains: { chain: number; name: string; bench: string; site: string };
  heads: {
    chain: number;
    after: number;
    upto: number;
    before_hash: string | null;
    hash: string;
    moment: number;
    at: string;
  };
  chain_rows: ChainRow & { chain: number };
  listed: Omit<RecordRow, "seq"> & { place: number; told: number; chain: number };
  retired: RetiredRun & { chain: number; month: string; at: string };
  replaced: { subject: string; told: number; chain: number };
}

export interface SharedOptions {
  databaseUrl: string;
  now: () => Date;
  /** once it is aborted, whatever still waits for the server is let go within a second */
  ended?: AbortSignal | undefined;
  /** connections held at most */
  most?: number;
}

/** The name of what is called when something was appended. */
const newsChannel = "underhook";

/**
 * Opens the ledger that the benches of a house share, in PostgreSQL. Each bench appends to a chain of its own, by one
 * statement a batch, and nobody waits for another. Throws LedgerError: unreachable, not durable, of another version.
 */
export async function openShared(options: SharedOptions): Promise<SharedLedger> {
  const connection = connect<SharedTables>({ ...options, searchPath: tablesOf.all });
  const guarded = guarding(connection);
  try {
    await guarded(() => mustBeDurable(connection));
    await guarded(() => mustHaveSchema(connection));
  } catch (cause) {
    await connection.close();
    throw cause;
  }
  const { db, pool, place } = connection;
  const chains = new Map<string, number>();
  let heard: pg.PoolClient | undefined;

  async function numberOf({ chain: name, bench, site }: Batch): Promise<number> {
    const known = chains.get(name);
    if (known !== undefined) return known;
    await db
      .insertInto("chains")
      .values({ name, bench, site } as SharedTables["chains"])
      .onConflict((on) => on.column("name").doNothing())
      .execute();
    const found = await db
      .selectFrom("chains")
      .select("chain")
      .where("name", "=", name)
      .executeTakeFirstOrThrow();
    chains.set(name, found.chain);
    return found.chain;
  }

  /** The last head of each chain. */
  const ends = () =>
    db
      .selectFrom("chains")
      .innerJoinLateral(
        (one) =>
          one
            .selectFrom("heads")
            .select(["upto", "hash", "moment"])
            .whereRef("heads.chain", "=", "chains.chain")
            .orderBy("after", "desc")
            .limit(1)
            .as("last"),
        (on) => on.onTrue(),
      )
      .select(["chains.name as chain", "last.upto as seq", "last.hash", "last.moment"]);

  return {
    place,
    heads: (first) => guarded(() => ends().where("chains.name", "like", `${first}%`).execute()),
    take: (batch) =>
      guarded(async () => {
        await append(pool, batch, { chain: await numberOf(batch), at: options.now().toISOString() });
        // apart from the commit, which nobody then waits for; a call that is not heard is made up for by asking
        if (batch.rows.some(({ here }) => here))
          pool.query("select pg_notify($1, $2)", [newsChannel, batch.site]).catch(() => {});
      }),
    chains: (site) => guarded(() => ends().where("chains.site", "=", site).execute()),
    rowsOf: (name, after, most, kinds) =>
      guarded(() =>
        db
          .selectFrom("chain_rows as own")
          .innerJoin("chains", "chains.chain", "own.chain")
          .leftJoin("chain_rows as there", (on) =>
            on.on("own.here", "=", false).onRef("there.id", "=", "own.id").on("there.here", "=", true),
          )
          .select([
            "own.here",
            "own.moment",
            "own.seq",
            "own.id",
            "own.bench",
            "own.at",
            "own.kind",
            "own.subject",
            "own.origin",
          ])
          .select(["own.prev_hash", "own.hash", sql<string>`coalesce(there.body, own.body)`.as("body")])
          .where("chains.name", "=", name)
          .where("own.seq", ">", after)
          .$if(kinds !== undefined, (rows) => rows.where("own.kind", "in", [...(kinds ?? [])]))
          .orderBy("own.seq")
          .limit(most)
          .execute(),
      ),
    onNews(site, called) {
      pool
        .connect()
        .then((client) => {
          heard = client;
          client.on("notification", ({ payload }) => {
            if (payload === site) called();
          });
          return client.query(`listen ${newsChannel}`);
        })
        .catch(() => {});
    },
    async close() {
      heard?.release(true);
      await connection.close();
    },
  };
}

/** Runs work, and throws LedgerError for what the database throws; ChainMoved where another batch came first. */
function guarding({ place }: Pick<Connection<SharedTables>, "place">) {
  return async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (cause) {
      throw cause instanceof ChainMoved ? cause : asLedgerError(cause, place);
    }
  };
}

/** Throws LedgerError where the tables are those of another program version, or there are none. */
export async function mustHaveSchema({
  db,
  place,
}: Pick<Connection<Pick<SharedTables, "schema_versions">>, "db" | "place">): Promise<void> {
  const found = await db
    .selectFrom("schema_versions")
    .select(({ fn }) => fn.max("version").as("version"))
    .executeTakeFirst()
    .catch((cause: unknown) => {
      if (sqlStateOf(cause) === undefinedTable) return undefined;
      throw cause;
    });
  const schema = found?.version ?? 0;
  if (schema > sharedSchema)
    throw new LedgerError("ledger.schema.newer", { place, schema, known: sharedSchema }, "newer");
  if (schema < sharedSchema) throw new LedgerError("ledger.shared.no-tables", { place }, "missing");
}

/** SQLSTATE codes (PostgreSQL documentation, appendix A). */
const undefinedTable = "42P01";
const moved = ["23505", "23503"];

export function sqlStateOf(cause: unknown): string {
  return cause instanceof Error && "code" in cause ? String(cause.code) : "";
}

/**
 * One statement for all of it: a network's delay is paid once however many rows there are, and nothing is held in between.
 * The rows wait for the head, so that what another batch has written is refused by it.
 */
async function append(
  pool: pg.Pool,
  batch: Batch,
  { chain, at }: { chain: number; at: string },
): Promise<void> {
  const [first, last] = [batch.rows[0], batch.rows.at(-1)];
  if (!first || !last) return;
  const after = first.seq - 1;
  const before_hash = after === 0 ? null : first.prev_hash;
  const head = { chain, after, upto: last.seq, before_hash, hash: last.hash, moment: last.moment, at };
  const rows = batch.rows.map((row) => ({ ...row, chain }));
  const listed = batch.records.map((row) => ({ ...row, chain, place: placeOf(row) }));
  const replaced = listed.filter(({ replaces }) => replaces);
  try {
    await pool.query(
      `with head as (insert into heads select * from json_populate_recordset(null::heads, $1) returning after),
        list as (insert into listed select * from json_populate_recordset(null::listed, $2) on conflict do nothing),
        gone as (insert into replaced select * from json_populate_recordset(null::replaced, $3) on conflict do nothing)
      insert into chain_rows select one.* from head, json_populate_recordset(null::chain_rows, $4) as one`,
      [[head], listed, replaced, rows].map((each) => JSON.stringify(each)),
    );
  } catch (cause) {
    const constraint = cause instanceof Error && "constraint" in cause ? String(cause.constraint) : "";
    if (moved.includes(sqlStateOf(cause)) && constraint.startsWith("heads_")) throw new ChainMoved();
    throw cause;
  }
}
