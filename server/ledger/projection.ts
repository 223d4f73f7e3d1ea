import { sql } from "kysely";
import { statementAfter } from "../weighing/recorded-statement.ts";
import { dryMass } from "./dry-mass.ts";
import type { Entry, EntryOf } from "./entry.ts";
import { excludedIn } from "./excluded.ts";
import { aboutSubjects } from "./rows.ts";
import { searchable } from "./search-words.ts";
import type { RecordRow, Trx } from "./tables.ts";

/** Kinds that come after the measurement, or are it. */
export const changing: readonly Entry["kind"][] = [
  "result",
  "statement",
  "imported-weighing",
  "amendment",
  "voiding",
  "photo",
];

/** Kinds that a line of the list follows from. */
export const toldKinds: readonly Entry["kind"][] = [
  "piece-opened",
  "capture",
  "weighing-details",
  ...changing,
];

/**
 * Keeps the list of finished measurements in step with the chain; runs inside the transaction that appends.
 * `entriesOf` gives what stands about the subject so far, the new entry included.
 */
export async function project(
  trx: Trx,
  entry: Entry,
  entriesOf: (subject: string) => Promise<Entry[]>,
): Promise<void> {
  if (!changing.includes(entry.kind)) return;
  const row = recordRow(await entriesOf(entry.subject));
  if (!row) return;
  const stood = await trx
    .selectFrom("records")
    .select("seq")
    .where("subject", "=", row.subject)
    .executeTakeFirst();
  if (stood) {
    await trx.deleteFrom("records").where("seq", "=", stood.seq).execute();
    await trx.deleteFrom("record_words").where("rowid", "=", stood.seq).execute();
  }
  await list(trx, [row]);
}

/** The same for many rows that were written at once. */
export async function projectSubjects(
  trx: Trx,
  written: readonly Pick<Entry, "kind" | "subject">[],
): Promise<void> {
  const changed = written.filter(({ kind }) => changing.includes(kind)).map(({ subject }) => subject);
  const subjects = [...new Set(changed)];
  if (subjects.length === 0) return;
  const about = await aboutSubjects(trx, subjects, toldKinds);
  const rows = subjects.flatMap((subject) => recordRow(about.get(subject) ?? []) ?? []);
  const stood = await trx.deleteFrom("records").where("subject", "in", subjects).returning("seq").execute();
  if (stood.length > 0)
    await trx
      .deleteFrom("record_words")
      .where(
        "rowid",
        "in",
        stood.map(({ seq }) => seq),
      )
      .execute();
  await list(trx, rows);
}

async function list(trx: Trx, rows: RecordRow[]): Promise<void> {
  if (rows.length === 0) return;
  await trx.insertInto("records").values(rows).execute();
  await trx
    .insertInto("record_words")
    .values(rows.map(({ seq, search }) => ({ rowid: seq, search })))
    .execute();
}

/** The list row that follows from everything written about one subject; null while it has no result. */
export function recordRow(entries: Entry[]): RecordRow | null {
  const opened = entries.findLast((entry) => entry.kind === "piece-opened");
  const first = entries.find((entry) => entry.kind === "result" || entry.kind === "imported-weighing");
  if (!first) return null;
  const amendments = entries.filter((entry) => entry.kind === "amendment");
  const latest = entries.findLast(isStatement);
  const states = latest ?? first;
  // An amendment corrects what is stated, not when the piece was on the balance.
  const measuredBy = entries.findLast((entry) => entry.kind === "result") ?? first;
  const excluded = excludedIn(entries);
  const piece = Object.assign({}, opened?.body, ...amendments.map((entry) => entry.body.piece ?? {}));
  const described = states.kind === "imported-weighing" ? imported(states) : measured(states, entries);
  const row = {
    seq: first.seq,
    subject: first.subject,
    entry_id: states.id,
    entry_hash: states.hash,
    at: measuredBy.at,
    bench: measuredBy.bench,
    ticket: piece.ticket ?? "",
    description: piece.description ?? "",
    claim: piece.claim ?? null,
    lot: piece.lot ?? null,
    operator: piece.operator ?? null,
    customer: piece.customer ?? null,
    ...described,
    voided: isVoided(entries) ? 1 : 0,
    amendments: amendments.length,
    photos: entries.filter(({ kind, id }) => kind === "photo" && !excluded.has(id)).length,
  };
  return {
    ...row,
    search: searchable(
      row.ticket,
      row.description,
      row.claim,
      row.lot,
      row.operator,
      row.customer,
      row.subject,
    ),
  };
}

/** A record that was declared void stays so: no amendment brings it back. */
export function isVoided(entries: Entry[]): boolean {
  const stated = new Set(entries.filter(isStatement).map(({ id }) => id));
  return entries.some((entry) => entry.kind === "voiding" && stated.has(entry.body.entry));
}

function isStatement(entry: Entry): boolean {
  return (
    entry.kind === "result" ||
    entry.kind === "imported-weighing" ||
    (entry.kind === "amendment" && entry.body.result !== undefined)
  );
}

function measured(entry: Entry, entries: Entry[]) {
  const result = entry.kind === "result" ? entry.body : (entry as EntryOf<"amendment">).body.result;
  const stated = result && statementAfter(entry.id, result, entries);
  const judged = result?.statement !== undefined || Boolean(result?.response?.finding);
  const shown = dryMass(entries, stated?.mass_g ?? 0);
  return {
    state: stated && judged ? stated.conformity.state : null,
    mass_g: stated?.mass_g ?? shown.dry_g,
    ...shown,
    density_g_cm3: stated?.density_g_cm3 ?? null,
    expanded_g_cm3: stated?.expanded_g_cm3 ?? null,
  };
}

function imported({ body, at: _at }: EntryOf<"imported-weighing">) {
  return {
    ticket: body.ticket,
    description: body.description,
    claim: body.claim ?? null,
    at: body.measuredAt,
    state: null,
    mass_g: Number(body.mass_g),
    dry: `${body.mass_g} g`,
    dry_g: Number(body.mass_g),
    density_g_cm3: Number(body.density_g_cm3),
    expanded_g_cm3: body.u_g_cm3 === undefined ? null : 2 * Number(body.u_g_cm3),
  };
}

/** Measurements made anew at once, so that neither many questions nor much memory is needed. */
const rebuiltAtOnce = 500;

/** Makes the whole list again from the entries. */
export async function rebuildRecords(trx: Trx): Promise<void> {
  await trx.deleteFrom("records").execute();
  await sql`insert into record_words (record_words) values ('delete-all')`.execute(trx);
  for (let after = 0; ; ) {
    const rows = await trx
      .selectFrom("entries")
      .select(["seq", "subject"])
      .where("kind", "in", ["result", "imported-weighing"])
      .where("seq", ">", after)
      .orderBy("seq")
      .limit(rebuiltAtOnce)
      .execute();
    const last = rows.at(-1);
    if (!last) return;
    const subjects = rows.map(({ subject }) => subject);
    const about = await aboutSubjects(trx, subjects, toldKinds);
    const made = rows.flatMap(({ seq, subject }) => {
      const row = recordRow(about.get(subject) ?? []);
      // A subject with two results stands in the list once, where its first one does.
      return row?.seq === seq ? [row] : [];
    });
    await list(trx, made);
    after = last.seq;
  }
}
