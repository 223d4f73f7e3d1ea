import { type Message, message } from "../../../calibration/message.ts";
import { LedgerError } from "../error.ts";
import type { BodyOf, Kind } from "../kinds.ts";
import type { Ledger } from "../ledger.ts";
import { type NoteKey, readVerifierKey } from "../note.ts";
import { type Asked, askToCosign } from "./ask.ts";
import { folderWitness } from "./folder-witness.ts";

/** How it stands with one witness, for the page. */
export interface WitnessState {
  witness: string;
  /** the last row it cosigned, and when it was asked; null before the first time */
  upTo: number | null;
  at: string | null;
  /** why it did not cosign the newest checkpoint; null when it did */
  why: Message | null;
}

export interface WitnessOptions {
  now: () => Date;
  /** resolves after so many ms, or at once when the signal is aborted */
  sleep: (ms: number, signal: AbortSignal) => Promise<void>;
  everyMs?: number;
}

/** Entries that a ledger writes because of checkpoints; they alone are no reason for another one. */
const because: Kind[] = ["checkpoint", "cosignature", "witnessed"];

/** So long an entry may wait for its signature while there are witnesses, ms. */
const signedWithinMs = 10 * 60_000;

const patienceMs = 5000;

/** Has every checkpoint cosigned by the witnesses that were chosen, again and again, whether they can be reached or not. */
export function keepWitnessed(own: Ledger, { now, sleep, everyMs = 20_000 }: WitnessOptions) {
  const ended = new AbortController();
  const states = new Map<string, WitnessState>();

  const once = async () => {
    const chosen = await witnessesOf(own);
    const names = [...chosen.folders, ...chosen.benches.map(({ url }) => url)];
    for (const name of states.keys()) if (!names.includes(name)) states.delete(name);
    if (names.length === 0) return;
    await signWhatWaits(own, now());
    const newest = await newestNote(own);
    if (newest === null) return;
    for (const name of names) await askOne(own, name, chosen, newest).catch((cause) => failed(name, cause));
  };

  const askOne = async (ledger: Ledger, name: string, chosen: BodyOf<"witnesses">, newest: Newest) => {
    const before = states.get(name) ?? (await lastOf(ledger, name));
    states.set(name, before);
    if (before.upTo === newest.size && before.why === null) return;
    const asked = await askedBy(ledger, name, chosen, now, ended.signal);
    const answer = await askToCosign(ledger, newest.note, asked);
    if ("message" in answer) return void states.set(name, { ...before, why: answer.message });
    const body = { origin: await ledger.name(), size: newest.size, witness: name, line: answer.line };
    const { at } = await ledger.append("cosignature", `witness:${asked.key.name}`.slice(0, 200), body);
    states.set(name, { witness: name, upTo: newest.size, at, why: null });
  };

  const failed = (name: string, cause: unknown) => {
    const before = states.get(name) ?? { witness: name, upTo: null, at: null, why: null };
    const why =
      cause instanceof LedgerError
        ? { code: cause.code, params: cause.params }
        : message("ledger.witness.not-reached", { witness: name, cause: String(cause) });
    states.set(name, { ...before, why });
  };

  const running = (async () => {
    while (!ended.signal.aborted) {
      await once().catch(() => undefined);
      await sleep(everyMs, ended.signal);
    }
  })();

  return {
    states: (): WitnessState[] => [...states.values()],
    async stop() {
      ended.abort();
      await running;
    },
  };
}

/** The witnesses as they were last chosen. */
export async function witnessesOf(ledger: Ledger): Promise<BodyOf<"witnesses">> {
  const [newest] = await ledger.entries({ kind: "witnesses", newestFirst: true, limit: 1 });
  return newest?.kind === "witnesses" ? newest.body : { folders: [], benches: [], of: [] };
}

interface Newest {
  note: string;
  size: number;
}

async function newestNote(ledger: Ledger): Promise<Newest | null> {
  const found = await ledger.entries({ kind: "checkpoint", newestFirst: true, limit: 20 });
  for (const entry of found)
    if (entry.kind === "checkpoint" && !entry.origin && entry.body.note !== undefined)
      return { note: entry.body.note, size: entry.body.seq };
  return null;
}

async function signWhatWaits(ledger: Ledger, now: Date): Promise<void> {
  const [newest] = await ledger.entries({ newestFirst: true, limit: 1 });
  if (!newest || because.includes(newest.kind)) return;
  const [last] = await ledger.entries({ kind: "checkpoint", newestFirst: true, limit: 1 });
  if (!last || now.getTime() - Date.parse(last.at) >= signedWithinMs) await ledger.checkpoint();
}

async function lastOf(ledger: Ledger, witness: string): Promise<WitnessState> {
  const found = await ledger.entries({ kind: "cosignature", newestFirst: true, limit: 200 });
  for (const entry of found)
    if (entry.kind === "cosignature" && entry.body.witness === witness)
      return { witness, upTo: entry.body.size, at: entry.at, why: null };
  return { witness, upTo: null, at: null, why: null };
}

async function askedBy(
  ledger: Ledger,
  name: string,
  { benches }: BodyOf<"witnesses">,
  now: () => Date,
  signal: AbortSignal,
): Promise<Asked> {
  const own: NoteKey = { name: await ledger.name(), raw: rawOf(ledger) };
  const bench = benches.find(({ url }) => url === name);
  if (!bench) {
    const folder = folderWitness(name, now);
    return { name, key: folder.key(), send: (request) => folder.ask([own], request) };
  }
  const key = readVerifierKey(bench.key);
  if (key === null) throw new LedgerError("ledger.witness.no-key", { typed: bench.key }, "refused");
  return { name, key, send: (request) => post(bench.url, request, signal) };
}

function rawOf({ key, place }: Ledger): Buffer {
  if (key === null) throw new LedgerError("ledger.record.unsigned", { subject: place, place }, "refused");
  return Buffer.from(key.publicKey, "base64").subarray(-32);
}

async function post(url: string, body: string, signal: AbortSignal) {
  const answer = await fetch(`${url.replace(/\/+$/, "")}/witness/add-checkpoint`, {
    method: "POST",
    headers: { "content-type": "text/plain; charset=utf-8" },
    body,
    signal: AbortSignal.any([signal, AbortSignal.timeout(patienceMs)]),
  });
  return { status: answer.status as 200, body: (await answer.text()).slice(0, 20_000) };
}
