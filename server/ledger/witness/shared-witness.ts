import { setImmediate as nextTurn } from "node:timers/promises";
import { jsonOf } from "../chain-fault.ts";
import type { Checkpoint } from "../checkpoint.ts";
import { contentText } from "../entry.ts";
import type { BodyOf } from "../kinds.ts";
import type { Ledger } from "../ledger.ts";
import { cosignedAt, logName, type Note, rawKeyOf, readNote } from "../note.ts";
import type { ChainRow, NamedHead, SharedLedger } from "../shared/shared-ledger.ts";
import { leafHash, Tree } from "../tree.ts";

/** The chain of another bench, as it was handed over to the shared ledger. */
interface Followed {
  tree: Tree;
  newest?: Note;
}

const batch = 200;

/**
 * Benches on one shared ledger as witnesses of each other. Each grows the trees of the others from what they handed over,
 * cosigns the newest checkpoint of each that fits, and takes home what the others cosigned of its own.
 */
export function sharedWitness(own: Ledger) {
  const followed = new Map<string, Followed>();

  return async (shared: SharedLedger, chains: readonly NamedHead[]): Promise<void> => {
    const ownName = await own.name();
    for (const { chain, seq } of chains) {
      const [first = ""] = chain.split("/");
      const name = logName(first);
      if (name === ownName) continue;
      const known = followed.get(chain) ?? (await lastCosigned(own, shared, { chain, name }));
      followed.set(chain, known);
      while (known.tree.size < seq) {
        const rows = await shared.rowsOf(chain, known.tree.size, batch);
        if (rows.length === 0) break;
        for (const row of rows) {
          follow(known, name, row);
          if (row.kind === "cosignature" && row.here) await takeHome(own, shared, { ownName, chain, row });
        }
        await nextTurn();
      }
      if (known.newest) await cosign(own, name, known.newest);
      delete known.newest;
    }
  };
}

/** From the last checkpoint that this bench cosigned its own signature says what it saw; the rows before need not be read again. */
async function lastCosigned(
  own: Ledger,
  shared: SharedLedger,
  { chain, name }: { chain: string; name: string },
): Promise<Followed> {
  const done = (await own.entriesOf(subjectOf(name))).findLast(({ kind }) => kind === "cosignature");
  const { size, line } = (done?.body ?? { size: 0, line: "" }) as BodyOf<"cosignature">;
  const [row] = size > 0 ? await shared.rowsOf(chain, size, 1) : [];
  const checkpoint = row?.kind === "checkpoint" ? (jsonOf(row.body) as Checkpoint) : undefined;
  const note = readNote(`${checkpoint?.note ?? ""}${line}`);
  const raw = own.key && rawKeyOf(own.key.publicKey);
  if (note && raw && checkpoint?.peaks && cosignedAt(note, { name: await own.name(), raw }) !== null) {
    const tree = new Tree(
      size,
      checkpoint.peaks.map((peak) => Buffer.from(peak, "hex")),
    );
    if (note.head.size === size && tree.root().equals(note.head.root)) return { tree };
  }
  return { tree: new Tree() };
}

const subjectOf = (name: string) => `witness-of:${name}`;

function follow(chain: Followed, name: string, row: ChainRow): void {
  if (row.seq !== chain.tree.size + 1) return;
  if (row.kind === "checkpoint" && row.origin === null) {
    const note = readNote((jsonOf(row.body) as Partial<Checkpoint> | undefined)?.note ?? "");
    const fits = note?.head.size === chain.tree.size && note.head.root.equals(chain.tree.root());
    if (note && fits && note.head.origin === name) chain.newest = note;
  }
  chain.tree.add(leafHash(contentText(row)));
}

async function cosign(own: Ledger, name: string, { text, head: { size } }: Note): Promise<void> {
  const done = await own.entriesOf(subjectOf(name));
  if (done.some(({ kind, body }) => kind === "cosignature" && (body as { size: number }).size >= size))
    return;
  const line = await own.cosign(text);
  if (line === null) return;
  await own.append("cosignature", subjectOf(name), { origin: name, size, witness: own.bench, line });
}

/** A cosignature counts when a key that its bench introduced made it over a checkpoint that stands here. */
async function takeHome(
  own: Ledger,
  shared: SharedLedger,
  { ownName, chain, row }: { ownName: string; chain: string; row: ChainRow },
): Promise<void> {
  const body = jsonOf(row.body) as BodyOf<"cosignature">;
  if (body.origin !== ownName || (await own.entry(`from-shared-${row.id}`))) return;
  const [entry] = await own.entries({ after: body.size, limit: 1 });
  const note = entry?.kind === "checkpoint" ? readNote(`${entry.body.note ?? ""}${body.line}`) : null;
  const name = logName(chain.split("/")[0] ?? "");
  const keys = await shared.rowsOf(chain, 0, batch, ["signing-key"]);
  const known = keys.some(({ body: introduced }) => {
    const raw = rawKeyOf((jsonOf(introduced) as BodyOf<"signing-key">).publicKey);
    return note !== null && raw !== null && cosignedAt(note, { name, raw }) !== null;
  });
  if (known)
    await own.append("cosignature", `witness:${name}`.slice(0, 200), body, { key: `from-shared-${row.id}` });
}
