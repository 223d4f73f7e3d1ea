import { canonicalJson } from "../canonical-json.ts";
import type { Entry } from "../entry.ts";
import type { Ledger } from "../ledger.ts";
import { changing, recordRow, toldKinds } from "../projection.ts";
import type { OwnChain } from "./own-chain.ts";
import type { Batch, ChainRow, ListedRow } from "./shared-ledger.ts";

/** Entries handed over at a time. */
const atOnce = 500;

/** What a bench's own ledger has after a row; null when that is all. */
export async function batchAfter(own: Ledger, site: string, ended: OwnChain): Promise<Batch | null> {
  const { chain, seq, sharedUpTo } = ended;
  const entries = await own.entries({ after: seq, limit: atOnce });
  if (entries.length === 0) return null;
  let { moment } = ended;
  const rows = entries.map((entry) => {
    moment = Math.max(Date.parse(entry.at) * 1000, moment + 1);
    return { ...rowOf(entry, !entry.origin && entry.seq > sharedUpTo), moment };
  });
  return { chain, bench: own.bench, site, rows, records: await recordsOf(own, entries, sharedUpTo) };
}

/** The row as it stands in the ledger: a body has one canonical text. */
function rowOf(
  { seq, id, bench, at, kind, subject, body, origin, ...links }: Entry,
  here: boolean,
): Omit<ChainRow, "moment"> {
  return {
    ...{ seq, id, bench, at, kind, subject, body: here ? canonicalJson(body) : "" },
    origin: origin ? canonicalJson(origin) : null,
    ...{ prev_hash: links.prevHash, hash: links.hash, here },
  };
}

/** The list as it stands by these entries: what other chains hold they list themselves, unless both tell of a piece. */
async function recordsOf(own: Ledger, entries: readonly Entry[], sharedUpTo: number): Promise<ListedRow[]> {
  const isOwn = ({ seq, origin }: Entry) => !origin && seq > sharedUpTo;
  const changed = new Set(
    entries.filter(({ kind }) => changing.includes(kind)).map(({ subject }) => subject),
  );
  const rows: ListedRow[] = [];
  const first = entries[0]?.seq ?? 0;
  for (const subject of changed) {
    const about = (await own.entriesOf(subject)).filter(({ kind }) => toldKinds.includes(kind));
    const record = about.some(isOwn) ? recordRow(about) : null;
    if (!record) continue;
    const { seq: _, ...said } = record;
    const before = about.filter((entry) => entry.seq < first || !isOwn(entry));
    const replaces = before.some(({ kind }) => changing.includes(kind));
    rows.push({ ...said, told: about.length, replaces });
  }
  return rows;
}
