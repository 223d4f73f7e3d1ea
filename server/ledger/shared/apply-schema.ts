import { asLedgerError } from "../error.ts";
import { connect } from "./connection.ts";
import { sqlStateOf } from "./postgres-shared.ts";

/** A month gets no place of its own once rows of it lie among the rest: they stay there (SQLSTATE check_violation). */
const liesInTheRest = "23514";

/** Makes the tables of a shared ledger, or brings them up to date. Gives the months whose rows stay among the rest. Throws LedgerError. */
export async function applySchema(
  databaseUrl: string,
  statements: readonly string[],
): Promise<{ place: string; rest: string[] }> {
  const { pool, place, close } = connect({ databaseUrl, searchPath: "public", most: 1 });
  const rest = new Set<string>();
  try {
    for (const statement of statements)
      await pool.query(statement).catch((cause: unknown) => {
        const [, year, month] = /_(\d{4})_(\d\d) partition of/.exec(statement) ?? [];
        if (sqlStateOf(cause) !== liesInTheRest || year === undefined) throw cause;
        rest.add(`${year}-${month}`);
      });
    return { place, rest: [...rest] };
  } catch (cause) {
    throw asLedgerError(cause, place);
  } finally {
    await close();
  }
}
