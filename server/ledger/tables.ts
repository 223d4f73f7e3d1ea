import type { Kysely, Transaction } from "kysely";
import type { Message } from "../../calibration/message.ts";
import type { State } from "../conformity/state.ts";
import type { EntryText } from "./entry.ts";
import type { RetiredRun } from "./shared/retired.ts";

/** A row of the chain. Only ever inserted; triggers refuse anything else. */
export interface EntryRow extends EntryText {
  prev_hash: string;
  hash: string;
}

/** One finished measurement as lists show it. Follows from the entries and can be made again from them at any time. */
export interface RecordRow {
  /** seq of the result entry; the order of the list */
  seq: number;
  subject: string;
  /** id and hash of the entry that states the measurement now: the result, or its latest amendment */
  entry_id: string;
  entry_hash: string;
  at: string;
  bench: string;
  ticket: string;
  description: string;
  claim: string | null;
  lot: string | null;
  operator: string | null;
  /** who brought the piece, in the house's own words */
  customer: string | null;
  state: State | null;
  mass_g: number;
  /** what the balance showed for the piece dry, as it was read ("20.00 dwt"); empty when that is not known */
  dry: string;
  /** the same in g; the mass where it is not known */
  dry_g: number;
  /** null where the readings are those of no density */
  density_g_cm3: number | null;
  expanded_g_cm3: number | null;
  voided: number;
  amendments: number;
  /** photos of the piece that were not set aside */
  photos: number;
  /** what the search looks through: lower case, no accents, words parted by one space */
  search: string;
}

export interface Tables {
  entries: EntryRow;
  records: RecordRow;
  schema_versions: { version: number; at: string };
  /** full-text index of SQLite; PostgreSQL indexes records.search itself */
  retired: RetiredRun;
  record_words: { rowid: number; search: string };
}

export type Db = Kysely<Tables>;
export type Trx = Transaction<Tables>;

/** What differs between the two databases, in one place. */
export interface Store {
  db: Db;
  /** for messages: the file, or the database without its password */
  place: string;
  /** PostgreSQL is read only */
  dialect: "sqlite" | "postgres";
  /** true where several benches sign one chain, each with its own key, as they once did in a shared ledger */
  manySign?: boolean;
  /** rows that were kept for as long as they had to be and are gone, oldest first; left out where there never are */
  retired?: () => Promise<RetiredRun[]>;
  /** what was found and repaired on opening */
  found: Message[];
  close(): Promise<void>;
}
