import { type Message, messageOf } from "../../calibration/message.ts";
import { appendAllTo, appendTo } from "./append.ts";
import { appendSliceTo } from "./append-slice.ts";
import type { CustomerNames } from "./customer-names.ts";
import type { EntryOf } from "./entry.ts";
import { LedgerError, type LedgerErrorKind } from "./error.ts";
import type { Happened, Ledger, Listed } from "./ledger.ts";
import { appendReplicatedTo } from "./replicated.ts";
import type { SigningKey } from "./signing-key.ts";
import type { Store } from "./tables.ts";

/** Entries of a list that one transaction holds: some milliseconds of work, after which whatever else waits has its turn. */
const mostAtOnce = 100;

/** Troubles of the disk, which hold until somebody does something about them. */
const cannotWrite: ReadonlySet<LedgerErrorKind> = new Set(["disk-full", "read-only", "damaged"]);

interface Writing {
  now: () => Date;
  bench: string;
  key: SigningKey | undefined;
  readOnly: boolean;
  newId: () => string;
  monotonicMs: (() => number) | undefined;
  names: CustomerNames | null;
  /** runs work, and throws LedgerError for what the database throws */
  guarded<T>(work: () => Promise<T>): Promise<T>;
}

/** The ways to write into a ledger; each says afterwards why nothing could be stored, until something is. */
export function writingTo(
  store: Store,
  { now, bench, key, readOnly, newId, monotonicMs, names, guarded }: Writing,
): Pick<Ledger, "notStored" | "append" | "appendAll" | "appendReplicated" | "appendEach"> {
  const at = () => now().toISOString();
  let notStored: Message | null = null;
  const leaptBy = leaping(now, monotonicMs);
  const apartAt = async <T extends Happened>(
    moment: string,
    happened: readonly T[],
  ): Promise<readonly T[]> => (names ? names.keptApart(happened, moment) : happened);
  const written = <T>(work: () => Promise<T>): Promise<T> =>
    guarded(async () => {
      if (readOnly) throw new LedgerError("ledger.read-only", { place: store.place }, "read-only");
      const done = await work();
      notStored = null;
      return done;
    }).catch((error: unknown) => {
      if (error instanceof LedgerError && cannotWrite.has(error.kind)) notStored = messageOf(error);
      throw error;
    });

  return {
    get notStored() {
      return notStored;
    },
    append: (kind, subject, body, { key: id = newId() } = {}) =>
      written(async () => {
        const when = { bench, at: at(), leaptMs: leaptBy() };
        const [apart = { kind, body }] = await apartAt(when.at, [{ kind, body } as Happened]);
        const entry = await appendTo(store, { id, subject, ...apart, ...when }, key);
        return entry as EntryOf<typeof kind>;
      }),
    appendAll: (subject, happened, after) =>
      written(async () => {
        const when = { bench, at: at() };
        const leaptMs = leaptBy();
        const apart = await apartAt(when.at, happened);
        const drafts = apart.map(({ kind, body, key: id = newId() }, place) => ({
          ...{ id, kind, subject, body, ...when },
          ...(place === 0 ? { leaptMs } : {}),
        }));
        return appendAllTo(store, drafts, key, { subject, entries: after });
      }),
    appendReplicated: (entries) =>
      written(() => appendReplicatedTo(store, entries, { bench, at: at(), key })),
    async appendEach(happened, { onProgress, signal } = {}) {
      let [seen, count] = [0, 0];
      for (const slice of inSlices(happened)) {
        if (signal?.aborted) break;
        count += await written(async () => {
          const when = { bench, at: at() };
          const leaptMs = leaptBy();
          const drafts = (await apartAt(when.at, slice)).map(({ key: id, ...draft }, place) => ({
            ...{ ...draft, id, ...when },
            ...(place === 0 ? { leaptMs } : {}),
          }));
          return appendSliceTo(store, drafts, { bench, at: when.at, key });
        });
        seen += slice.length;
        onProgress?.(seen);
      }
      return count;
    },
  };
}

function* inSlices(happened: Iterable<Listed>): Generator<Listed[]> {
  let slice: Listed[] = [];
  for (const one of happened) {
    slice.push(one);
    if (slice.length < mostAtOnce) continue;
    yield slice;
    slice = [];
  }
  if (slice.length > 0) yield slice;
}

/** Tells by how much the clock went on more than the time that passed since it was last asked, ms; 0 the first time. */
function leaping(now: () => Date, monotonicMs: (() => number) | undefined): () => number {
  let before: number | undefined;
  return () => {
    if (!monotonicMs) return 0;
    const ahead = now().getTime() - monotonicMs();
    const leapt = before === undefined ? 0 : ahead - before;
    before = ahead;
    return leapt;
  };
}
