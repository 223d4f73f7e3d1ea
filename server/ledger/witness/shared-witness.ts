import { setImmediate as nextTurn } from "node:timers/promises";
import { canonicalJson } from "../canonical-json.ts";
import { contentText, type Entry } from "../entry.ts";
import type { Ledger } from "../ledger.ts";
import { cosignedAt, logName, type Note, rawKeyOf, readNote } from "../note.ts";
import { leafHash, Tree } from "../tree.ts";

/** One bench's chain as it was handed over to the shared ledger, from its first entry on without a gap. */
interface HandedOver {
  name: string;
  tree: Tree;
  newest?: Note & { row: number };
}

const batch = 200;

/**
 * Benches on one shared ledger as witnesses of each other. Each grows the trees of the others from what they handed over,
 * cosigns the newest checkpoint of each that fits, and takes home what the others cosigned of its own.
 */
export function sharedWitness(own: Ledger) {
  const chains = new Map<string, HandedOver>();
  let looked = 0;
  const done = new Map<string, number>();

  return async (shared: Ledger): Promise<void> => {
    const ownName = await own.name();
    for (;;) {
      const entries = await shared.entries({ after: looked, limit: batch });
      for (const entry of entries) {
        if (entry.origin) follow(chains, entry);
        else if (entry.kind === "cosignature" && entry.body.origin === ownName)
          await takeHome(own, shared, entry.id, entry.body);
        else if (entry.kind === "cosignature" && entry.bench === shared.bench)
          done.set(entry.body.origin, Math.max(entry.body.size, done.get(entry.body.origin) ?? 0));
      }
      const last = entries.at(-1);
      if (!last) break;
      looked = last.seq;
      await nextTurn();
    }
    for (const { name, newest } of chains.values()) {
      if (!newest || name === ownName || newest.head.size <= (done.get(name) ?? 0)) continue;
      const line = await own.cosign(newest.text);
      if (line === null) return;
      done.set(name, newest.head.size);
      const body = { origin: name, size: newest.head.size, witness: shared.bench, line };
      await shared.append("cosignature", `witness-of:${name}`, body);
    }
  };
}

function follow(chains: Map<string, HandedOver>, entry: Entry): void {
  const { seq, hash } = entry.origin as NonNullable<Entry["origin"]>;
  if (seq === 1 && !chains.has(entry.bench))
    chains.set(entry.bench, { name: logName(hash), tree: new Tree() });
  const chain = chains.get(entry.bench);
  if (!chain || chain.tree.size !== seq - 1) return;
  if (entry.kind === "checkpoint") {
    const note = readNote(entry.body.note ?? "");
    const fits = note?.head.size === chain.tree.size && note.head.root.equals(chain.tree.root());
    if (note && fits && note.head.origin === chain.name) chain.newest = { ...note, row: seq };
  }
  const { origin: _, ...there } = entry;
  chain.tree.add(leafHash(contentText({ ...there, seq, body: canonicalJson(entry.body), origin: null })));
}

/** A cosignature counts when a key that the shared ledger introduced made it over a checkpoint that stands here. */
async function takeHome(
  own: Ledger,
  shared: Ledger,
  id: string,
  body: { origin: string; size: number; witness: string; line: string },
): Promise<void> {
  if (await own.entry(`from-shared-${id}`)) return;
  const [entry] = await own.entries({ after: body.size, limit: 1 });
  const note = entry?.kind === "checkpoint" ? readNote(`${entry.body.note ?? ""}${body.line}`) : null;
  if (!note) return;
  const keys = await shared.entries({ kind: "signing-key" });
  const name = note.signatures.at(-1)?.name ?? "";
  const known = keys.some((one) => {
    const raw = one.kind === "signing-key" ? rawKeyOf(one.body.publicKey) : null;
    return raw !== null && cosignedAt(note, { name, raw }) !== null;
  });
  if (known)
    await own.append("cosignature", `witness:${name}`.slice(0, 200), body, { key: `from-shared-${id}` });
}
