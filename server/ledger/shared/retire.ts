import { sql } from "kysely";
import { Refusal } from "../../../calibration/refusal.ts";
import { treeAt } from "../checkpoint-tree.ts";
import { asLedgerError } from "../error.ts";
import type { Kind } from "../kinds.ts";
import { keptUntil, retentionFrom } from "../retention.ts";
import type { Tables } from "../tables.ts";
import { connect } from "./connection.ts";
import { openChain, whereChain } from "./postgres-reading.ts";
import { mustHaveSchema, type SharedTables } from "./postgres-shared.ts";
import type { RetiredRun } from "./retired.ts";
import { monthAfter } from "./schema.ts";

/** Kinds that stay when their month is retired: who signs, what was signed, and how long records are kept. */
const stayingKinds = [
  "ledger-opened",
  "signing-key",
  "checkpoint",
  "cosignature",
  "witnessed",
  "retention",
] satisfies Kind[];

interface Retiring {
  databaseUrl: string;
  now: () => Date;
  /** "2016-03" */
  month: string;
}

/**
 * Drops the tables of a month by the rights of the owner, once every record in it was kept for as long as its bench
 * promised. Every chain in it is verified first; its checkpoints, keys and promises stay, and so does what proves that
 * the rows before and after are the same chain. Gives how many rows are gone. Throws Refusal and LedgerError.
 */
export async function retireMonth({
  databaseUrl,
  now,
  month,
}: Retiring): Promise<{ place: string; rows: number }> {
  const reading = { databaseUrl, now, bench: "database" };
  const connection = connect<SharedTables>({ databaseUrl, searchPath: "underhook", most: 1 });
  const { db, place } = connection;
  const table = `chain_rows_${month.replace("-", "_")}`;
  try {
    await mustHaveSchema(connection);
    const { rows: known } = await sql<{
      there: boolean;
    }>`select to_regclass(${table}) is not null as there`.execute(db);
    if (!known[0]?.there) throw new Refusal("cli.database.no-month", { month, place }, "retire");
    const { rows: chains } = await sql<{ chain: number; bench: string }>`
      select chain, bench from chains where exists (select 1 from ${sql.table(table)} as one where one.chain = chains.chain)
      order by chain`.execute(db);
    const runs: (RetiredRun & { chain: number })[] = [];
    for (const { chain, bench } of chains) {
      await mustBeOver(reading, { chain, bench, month });
      for (const run of await runsIn(databaseUrl, { chain, table })) runs.push({ chain, ...run });
    }
    const at = now().toISOString();
    const rows = await db.transaction().execute(async (trx) => {
      await sql`alter table chain_rows detach partition ${sql.table(table)}`.execute(trx);
      if (runs.length > 0)
        await trx
          .insertInto("retired")
          .values(runs.map((run) => ({ ...run, month, at })))
          .execute();
      // to the rest, where what has no month of its own lies
      const kept =
        await sql`insert into chain_rows select * from ${sql.table(table)} where kind in (${sql.join(stayingKinds)}) and here`.execute(
          trx,
        );
      const { rows: all } = await sql<{ n: number }>`select count(*) as n from ${sql.table(table)}`.execute(
        trx,
      );
      await sql`drop table ${sql.table(table)}`.execute(trx);
      await sql`drop table if exists ${sql.table(table.replace("chain_rows", "listed"))}`.execute(trx);
      return Number(all[0]?.n ?? 0) - Number(kept.numAffectedRows ?? 0);
    });
    return { place, rows };
  } catch (cause) {
    throw asLedgerError(cause, place);
  } finally {
    await connection.close();
  }
}

type Reading = Parameters<typeof openChain>[0];

/** Throws Refusal where the chain is not good, or its bench promised to keep records of the month for longer. */
async function mustBeOver(
  reading: Reading,
  { chain, bench, month }: { chain: number; bench: string; month: string },
) {
  const ledger = await openChain(reading, chain);
  try {
    const found = await ledger.verify();
    if (!found.good) throw new Refusal("cli.database.not-good", { bench, message: found.message }, "retire");
    const until = keptUntil(
      `${monthAfter(month)}-01T00:00:00.000Z`,
      retentionFrom(await ledger.entries({ kind: "retention" })),
    );
    if (until === null || Date.parse(until) > reading.now().getTime())
      throw new Refusal("cli.database.kept", { bench, month, until: until ?? "none" }, "retire");
  } finally {
    await ledger.close();
  }
}

/** The rows of a month that follow each other in a chain, and the tree at the end of each such run. */
async function runsIn(
  databaseUrl: string,
  { chain, table }: { chain: number; table: string },
): Promise<RetiredRun[]> {
  const { db, close } = connect<Tables>({ databaseUrl, readOnly: true, most: 1, ...whereChain(chain) });
  try {
    const { rows } = await sql<Omit<RetiredRun, "peaks">>`
      select min(seq) - 1 as after, max(seq) as upto, min(before_hash) as before_hash, max(hash) as hash from (
        select seq, seq - row_number() over (order by seq) as run,
          case when lag(seq) over (order by seq) = seq - 1 then null else prev_hash end as before_hash,
          case when lead(seq) over (order by seq) = seq + 1 then null else hash end as hash
        from ${sql.table(`underhook.${table}`)} where chain = ${chain}) as each
      group by run order by 1`.execute(db);
    const runs: RetiredRun[] = [];
    for (const run of rows) {
      const { peaks } = await treeAt(db, run.upto);
      runs.push({ ...run, peaks: peaks.map((peak) => peak.toString("hex")).join(" ") });
    }
    return runs;
  } finally {
    await close();
  }
}
