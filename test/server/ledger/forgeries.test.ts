import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "@photostructure/sqlite";
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { canonicalJson } from "../../../server/ledger/canonical-json.ts";
import { readOutside, successorText, writtenCheckpoint } from "../../../server/ledger/checkpoint.ts";
import { chainHash, contentHash } from "../../../server/ledger/entry.ts";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { signingKey } from "../../../server/ledger/signing-key.ts";
import type { EntryRow } from "../../../server/ledger/tables.ts";
import { longRun, seed } from "../../setup/long-run.ts";
import { clock, testFolder, weigh } from "./bench-ledger.ts";
import {
  introduction,
  invented,
  isCheckpoint,
  rehashed,
  type Signer,
  saying,
  signedCheckpoint,
  strangersKey,
} from "./forging.ts";
import { tamper } from "./tampering.ts";

let folder: string;
let file: string;
/** the rows as the bench wrote them, and where its checkpoints stand */
let rows: EntryRow[];
let checkpoints: number[];
let bench: Signer;
let line: string;
let note: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "underhook-forged-"));
  file = join(folder, "ledger.sqlite");
  const ledger = await openLedger({ file, now: clock(), bench: "window bench" });
  for (let i = 0; i < 90; i += 1) await weigh(ledger, `piece:${i}`, { ticket: `H-${i}` });
  const made = await ledger.checkpoint();
  line = made ? writtenCheckpoint(made) : "";
  note = made?.note ?? "";
  await ledger.close();
  bench = signingKey(join(folder, "signing-key.pem"));
  const db = new DatabaseSync(file, { readOnly: true });
  rows = db
    .prepare("select * from entries order by seq")
    .all()
    .map((row: EntryRow) => ({ ...row }));
  db.close();
  checkpoints = rows.filter(isCheckpoint).map(({ seq }) => seq);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What somebody did to the rows, and what the check must say: the first bad row, and why. */
interface Forgery {
  rows: EntryRow[];
  row: number;
  why: string;
  /** kept elsewhere by the one who checks */
  kept?: string;
}

const row = (seq: number) => rows[seq - 1] as EntryRow;
const nextCheckpoint = (seq: number) => checkpoints.find((one) => one > seq) ?? 0;
const lastCheckpoint = () => checkpoints.at(-1) as number;
const with_ = (seq: number, change: (row: EntryRow) => EntryRow) =>
  rows.map((one) => (one.seq === seq ? change(one) : one));
/** what a result says, one digit changed */
const lighter = (one: EntryRow) => ({
  ...one,
  body: one.body.replace(/\d/, (digit) => `${(Number(digit) + 1) % 10}`),
});
const unsigned = (seq: number) => rehashed(with_(seq, lighter), seq);
const from = (seq: number, key: Signer) => (one: EntryRow, upTo: number, hash: string) =>
  upTo + 1 >= seq ? signedCheckpoint(one, upTo, hash, key) : one;

/** The stranger's key comes in before row r + 1, with this voucher, and signs from there on. */
function takenOver(seq: number, vouchedBy?: (key: Signer) => object): Forgery {
  const key = strangersKey();
  const all = [...rows.slice(0, seq), introduction(row(2), key, vouchedBy?.(key)), ...rows.slice(seq)];
  return {
    rows: rehashed(all, seq + 1, from(seq + 1, key)),
    row: nextCheckpoint(seq) + 1,
    why: "ledger.fault.untrusted-key",
  };
}

/** The last checkpoint with something else in it, its row hashed again. */
const lastSaying = (change: (body: Record<string, unknown>) => object): EntryRow[] =>
  rehashed(
    with_(lastCheckpoint(), (one) => saying(one, change)),
    lastCheckpoint(),
  );

/** Forgeries at an ordinary row, one that is neither key nor checkpoint and has signed rows before and after it. */
const forgeries: Record<string, (seq: number) => Forgery> = {
  "a digit of an entry is changed": (seq) => ({
    ...{ rows: with_(seq, lighter), row: seq, why: "ledger.fault.changed" },
  }),
  "an entry is dated otherwise": (seq) => ({
    rows: with_(seq, (one) => ({ ...one, at: "2031-01-01T00:00:00.000Z" })),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "an entry is given to another piece": (seq) => ({
    rows: with_(seq, (one) => ({ ...one, subject: "piece:other" })),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "an entry is given to another bench": (seq) => ({
    rows: with_(seq, (one) => ({ ...one, bench: "back room" })),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "an entry becomes one of another kind": (seq) => ({
    rows: with_(seq, (one) => ({ ...one, kind: "piece-left" })),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "an entry gets another id": (seq) => ({
    rows: with_(seq, (one) => ({ ...one, id: "other" })),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "the hash of an entry is exchanged": (seq) => ({
    rows: with_(seq, (one) => ({ ...one, hash: "ab".repeat(32) })),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "the link to the entry before is exchanged": (seq) => ({
    rows: with_(seq, (one) => ({ ...one, prev_hash: "ab".repeat(32) })),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "one entry alone is hashed again": (seq) => ({
    rows: with_(seq, (one) => {
      const next = lighter(one);
      return { ...next, hash: chainHash(contentHash(next), next.prev_hash) };
    }),
    ...{ row: seq + 1, why: "ledger.fault.does-not-follow" },
  }),
  "an entry is removed": (seq) => ({
    rows: rows.filter((one) => one.seq !== seq),
    ...{ row: seq, why: "ledger.fault.missing" },
  }),
  "an entry is removed and the rest numbered anew": (seq) => ({
    rows: rows.filter((one) => one.seq !== seq).map((one, index) => ({ ...one, seq: index + 1 })),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "two entries change places": (seq) => ({
    rows: rows.map((one) =>
      one.seq === seq ? { ...row(seq + 1), seq } : one.seq === seq + 1 ? { ...row(seq), seq: seq + 1 } : one,
    ),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "an entry is put between and the rest numbered anew": (seq) => ({
    rows: [...rows.slice(0, seq - 1), ...invented(row(seq), 1), ...rows.slice(seq - 1)].map((one, index) => ({
      ...{ ...one, seq: index + 1 },
      ...(index + 1 === seq ? { prev_hash: "cd".repeat(32), hash: "ef".repeat(32) } : {}),
    })),
    ...{ row: seq, why: "ledger.fault.changed" },
  }),
  "the body is cut so that it runs over into the next field": (seq) => ({
    rows: rehashed(
      with_(seq, (one) => ({ ...one, body: `${one.body},"id":"x"` })),
      seq,
    ),
    ...{ row: seq, why: "ledger.fault.unreadable" },
  }),
  "everything after a change is hashed again": (seq) => ({
    ...{ rows: unsigned(seq), row: nextCheckpoint(seq), why: "ledger.fault.checkpoint-hash" },
  }),
  "the checkpoints are made to fit too, but for their signature": (seq) => ({
    rows: rehashed(with_(seq, lighter), seq, (one, upTo, hash) =>
      saying(one, (body) => ({ ...body, seq: upTo, hash })),
    ),
    ...{ row: nextCheckpoint(seq), why: "ledger.fault.signature" },
  }),
  "an entry is removed and everything hashed again": (seq) => ({
    rows: rehashed(
      rows.filter((one) => one.seq !== seq),
      seq,
    ),
    ...{ row: nextCheckpoint(seq) - 1, why: "ledger.fault.checkpoint-hash" },
  }),
  "all checkpoints after a change are dropped": (seq) => {
    const before = checkpoints.findLast((one) => one < seq) as number;
    return {
      rows: rehashed(
        with_(seq, lighter).filter((one) => !isCheckpoint(one) || one.seq < seq),
        seq,
      ),
      ...{ row: before - 1 + 103, why: "ledger.fault.checkpoints-removed" },
    };
  },
  "all checkpoints are dropped": () => ({
    rows: rehashed(rows.filter((one) => !isCheckpoint(one))),
    ...{ row: 1, why: "ledger.fault.key-never-signed" },
  }),
  "the first entry says that no checkpoint is needed, and none is left": () => ({
    rows: rehashed(
      rows
        .filter((one) => !isCheckpoint(one))
        .map((one) =>
          one.kind === "ledger-opened" ? saying(one, (body) => ({ ...body, checkpointEvery: 0 })) : one,
        ),
    ),
    ...{ row: 1, why: "ledger.fault.key-never-signed" },
  }),
  "another key stands in place of the bench's and signs everything": (seq) => {
    const key = strangersKey();
    const all = with_(seq, lighter).map((one) => (one.kind === "signing-key" ? introduction(one, key) : one));
    return { rows: rehashed(all, 1, from(1, key)), row: 1, why: "ledger.fault.key-never-signed" };
  },
  "another key is introduced beside the bench's and signs everything": (seq) => {
    const key = strangersKey();
    const all = with_(seq, lighter).flatMap((one) =>
      one.kind === "signing-key" ? [one, introduction(one, key)] : [one],
    );
    return { rows: rehashed(all, 1, from(1, key)), row: 1, why: "ledger.fault.key-never-signed" };
  },
  "another key takes over by itself": (seq) => takenOver(seq),
  "another key vouches for itself": (seq) =>
    takenOver(seq, (key) => ({ keyId: key.keyId, signature: key.sign(successorText(key.keyId)) })),
  "another key bears a voucher that the bench never signed": (seq) =>
    takenOver(seq, (key) => ({ keyId: bench.keyId, signature: key.sign(successorText(key.keyId)) })),
  "another key bears the voucher of a third": (seq) =>
    takenOver(seq, (key) => {
      const third = strangersKey();
      return { keyId: third.keyId, signature: third.sign(successorText(key.keyId)) };
    }),
  "another key bears a voucher for yet another": (seq) =>
    takenOver(seq, () => ({
      ...{ keyId: bench.keyId, signature: bench.sign(successorText(strangersKey().keyId)) },
    })),
  "the bench's key id is given to another key": () => ({
    rows: rehashed(
      rows.map((one) =>
        one.kind === "signing-key"
          ? saying(one, (body) => ({ ...body, publicKey: strangersKey().publicKey }))
          : one,
      ),
    ),
    ...{ row: 2, why: "ledger.fault.key-id" },
  }),
  "a key that was never introduced signs": (seq) => ({
    rows: rehashed(with_(seq, lighter), seq, from(seq, strangersKey())),
    ...{ row: nextCheckpoint(seq), why: "ledger.fault.unknown-key" },
  }),
  "the old key goes on after its successor": (seq) => {
    const key = strangersKey();
    const voucher = { keyId: bench.keyId, signature: bench.sign(successorText(key.keyId)) };
    const all = [...rows.slice(0, seq), introduction(row(2), key, voucher), ...rows.slice(seq)];
    return {
      rows: rehashed(all, seq + 1, from(seq + 1, bench)),
      ...{ row: nextCheckpoint(seq) + 1, why: "ledger.fault.retired-key" },
    };
  },
  "a checkpoint says that it is of an earlier row": () => ({
    rows: lastSaying((body) => ({ ...body, seq: (body.seq as number) - 1 })),
    ...{ row: lastCheckpoint(), why: "ledger.fault.checkpoint-hash" },
  }),
  "a signature is changed by one letter": () => ({
    rows: lastSaying((body) => ({
      ...body,
      signature: `${body.signature}`.replace(/^./, (letter) => (letter === "A" ? "B" : "A")),
    })),
    ...{ row: lastCheckpoint(), why: "ledger.fault.signature" },
  }),
  "a checkpoint carries the note of an earlier one": () => ({
    rows: lastSaying((body) => ({ ...body, note: JSON.parse(row(checkpoints[1] as number).body).note })),
    ...{ row: lastCheckpoint(), why: "ledger.fault.note" },
  }),
  "a note names another root": () => ({
    rows: lastSaying((body) => ({
      ...body,
      note: `${body.note}`.replace(/\n[A-Za-z0-9+/]{43}=\n/, `\n${Buffer.alloc(32, 7).toString("base64")}\n`),
    })),
    ...{ row: lastCheckpoint(), why: "ledger.fault.note" },
  }),
  "a note names another ledger": () => ({
    rows: lastSaying((body) => ({
      ...body,
      note: `${body.note}`.replaceAll(/underhook\/./g, "underhook/x"),
    })),
    ...{ row: lastCheckpoint(), why: "ledger.fault.note" },
  }),
  "a note's signature is changed by one letter": () => ({
    rows: lastSaying((body) => ({
      ...body,
      note: `${body.note}`.replace(
        /(.)(.{20})\n$/,
        (_, letter, rest) => `${letter === "A" ? "B" : "A"}${rest}\n`,
      ),
    })),
    ...{ row: lastCheckpoint(), why: "ledger.fault.note" },
  }),
  "the subtrees beside a note are others": () => ({
    rows: lastSaying((body) => ({
      ...body,
      peaks: (body.peaks as string[]).map((peak) => peak.replace(/^../, "00")),
    })),
    ...{ row: lastCheckpoint(), why: "ledger.fault.note" },
  }),
  "a checkpoint says nothing a checkpoint says": () => ({
    rows: lastSaying(() => ({ all: "well" })),
    ...{ row: lastCheckpoint(), why: "ledger.fault.unreadable" },
  }),
  "more rows are added at the end than a bench leaves unsigned": () => ({
    rows: rehashed([...rows, ...invented(row(5), 110)], rows.length + 1),
    ...{ row: lastCheckpoint() - 1 + 103, why: "ledger.fault.checkpoints-removed" },
  }),
  "rows are added that pass for handed over": () => {
    const added = invented(row(5), 110).map((one, n) => {
      const there = { seq: n + 1, prevHash: "0".repeat(64) };
      const hash = chainHash(contentHash({ ...one, seq: n + 1, origin: null }), there.prevHash);
      return { ...one, origin: canonicalJson({ ...there, hash }) };
    });
    return {
      rows: rehashed([...rows, ...added], rows.length + 1),
      ...{ row: lastCheckpoint() - 1 + 103, why: "ledger.fault.checkpoints-removed" },
    };
  },
  "an entry passes for handed over, with a hash it never had": (seq) => ({
    rows: rehashed(
      with_(seq, (one) => ({
        ...one,
        origin: canonicalJson({ hash: "ab".repeat(32), prevHash: "0".repeat(64), seq: 4 }),
      })),
      seq,
    ),
    ...{ row: seq, why: "ledger.fault.origin-hash" },
  }),
  "an entry passes for handed over, in words of its own": (seq) => ({
    rows: rehashed(
      with_(seq, (one) => ({ ...one, origin: '{ "seq": 4 }' })),
      seq,
    ),
    ...{ row: seq, why: "ledger.fault.origin-form" },
  }),
  "the end is cut off, and a line was kept elsewhere": (seq) => ({
    ...{ rows: rows.slice(0, seq), row: seq + 1, why: "ledger.fault.cut-short", kept: line },
  }),
  "the end is cut off, and a signed note was kept elsewhere": (seq) => ({
    ...{ rows: rows.slice(0, seq), row: seq + 1, why: "ledger.fault.cut-short", kept: note },
  }),
  "with the bench's own key all is signed anew, and a line was kept elsewhere": (seq) => ({
    rows: rehashed(with_(seq, lighter), seq, from(seq, bench)),
    ...{ row: rows.length - 1, why: "ledger.fault.kept-checkpoint", kept: line },
  }),
  "with the bench's own key all is signed anew, and a signed note was kept elsewhere": (seq) => ({
    rows: rehashed(with_(seq, lighter), seq, from(seq, bench)),
    ...{ row: rows.length - 1, why: "ledger.fault.kept-checkpoint", kept: note },
  }),
};

/** Ordinary rows between the second and the third checkpoint, drawn from the seed of the run. */
const places = fc.sample(fc.integer({ min: 110, max: 195 }), { numRuns: longRun(10), seed });

async function verified(forged: EntryRow[], kept: string | undefined, keyId: string) {
  const copy = join(testFolder(), "copy.sqlite");
  copyFileSync(file, copy);
  tamper(copy, () => forged);
  const ledger = await openLedger({ file: copy, now: clock(), bench: "reader", readOnly: true });
  const head = kept === undefined ? null : readOutside(kept);
  const found = await ledger.verify({ keyId, checkpoints: head ? [head] : [] });
  await ledger.close();
  return found;
}

test("the ledger that is forged here is good as it was written, by the key and by both ways of a kept checkpoint", async () => {
  expect(checkpoints).toHaveLength(4);
  for (const kept of [undefined, line, note])
    expect(await verified(rows, kept, bench.keyId)).toMatchObject({
      good: true,
      signedUpTo: rows.length - 1,
    });
});

test("there are at least 25 kinds", () => {
  expect(Object.keys(forgeries).length).toBeGreaterThanOrEqual(25);
});

test.each(Object.entries(forgeries))("%s: found at its row", async (_, forge) => {
  for (const place of places) {
    const { rows: forged, row: expected, why, kept } = forge(place);
    const found = await verified(forged, kept, bench.keyId);
    expect({ ...found, place }).toMatchObject({ good: false, row: expected, message: { code: why } });
  }
});

test("what no file can show is said: rows after the last signature, and an end that was cut off", async () => {
  const cut = await verified(rows.slice(0, 150), undefined, bench.keyId);
  expect(cut).toMatchObject({
    ...{ good: true, entries: 150, signedUpTo: (checkpoints[1] as number) - 1 },
    notShown: [{ code: "ledger.not-shown.tail" }, { code: "ledger.not-shown.end" }],
  });
  expect(await verified(rows, line, bench.keyId)).toMatchObject({ notShown: [] });
});
