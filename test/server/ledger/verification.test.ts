import { copyFileSync, existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "../../../server/cli/verify.ts";
import { readCheckpoint, writtenCheckpoint } from "../../../server/ledger/checkpoint.ts";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { publicKeyId, signingKey } from "../../../server/ledger/signing-key.ts";
import type { EntryRow } from "../../../server/ledger/tables.ts";
import { clock, spoken, testFolder, testLedger, weigh } from "./bench-ledger.ts";
import { rechained, tamper } from "./tampering.ts";

let folder: string;
let original: string;
let keyId: string;
let printed: string;
let rows: number;

beforeAll(async () => {
  // 90 pieces are 270 entries: the key signs at once, two checkpoints are due on the way, a fourth is asked for at the end
  folder = mkdtempSync(join(tmpdir(), "underhook-verify-"));
  const file = join(folder, "ledger.sqlite");
  const ledger = await openLedger({ file, now: clock(), bench: "window bench" });
  for (let i = 0; i < 90; i += 1) await weigh(ledger, `piece:${i}`, { ticket: `H-${i}` });
  const checkpoint = await ledger.checkpoint();
  printed = checkpoint ? writtenCheckpoint(checkpoint) : "";
  rows = (await ledger.head())?.seq ?? 0;
  await ledger.close();
  original = file;
  keyId = publicKeyId(join(dirname(file), "signing-key.pem"));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function verified(work: (rows: EntryRow[]) => EntryRow[], options = {}) {
  const file = join(testFolder(), "copy.sqlite");
  copyFileSync(original, file);
  tamper(file, work);
  const ledger = await openLedger({ file, now: clock(), bench: "reader", readOnly: true });
  const found = await ledger.verify(options);
  await ledger.close();
  return found;
}

test("an untouched ledger is good, with all its entries and checkpoints", async () => {
  expect(await verified((all) => all, { keyId })).toMatchObject({
    good: true,
    entries: rows,
    checkpoints: 4,
    signedUpTo: rows - 1,
  });
});

test("a changed digit is found in its row", async () => {
  const found = await verified((all) =>
    all.map((row) => (row.seq === 77 ? { ...row, body: row.body.replace("3", "4") } : row)),
  );
  expect(found).toMatchObject({
    good: false,
    row: 77,
    entries: 76,
    message: expect.objectContaining({ code: "ledger.fault.changed" }),
  });
});

test("a removed row is found, and so are rows removed and numbered anew", async () => {
  expect(await verified((all) => all.filter((row) => row.seq !== 50))).toMatchObject({
    good: false,
    message: { code: "ledger.fault.missing", params: { from: 50, to: 50, count: 1, before: 49, found: 51 } },
  });
  const renumbered = await verified((all) =>
    all.filter((row) => row.seq !== 50).map((row, index) => ({ ...row, seq: index + 1 })),
  );
  expect(renumbered).toMatchObject({ good: false, row: 50 });
});

test("two rows that changed places are found at the first of them", async () => {
  const found = await verified((all) =>
    all.map((row) => (row.seq === 20 ? { ...row, seq: 21 } : row.seq === 21 ? { ...row, seq: 20 } : row)),
  );
  expect(found).toMatchObject({ good: false, row: 20 });
});

test("an inserted row with a hash of its own is found", async () => {
  const found = await verified((all) => {
    const last = all.at(-1) as EntryRow;
    return [
      ...all,
      { ...last, seq: last.seq + 1, id: "mine", prev_hash: "ab".repeat(32), hash: "cd".repeat(32) },
    ];
  });
  expect(found).toMatchObject({ good: false, row: rows + 1 });
});

test("a chain rewritten with every hash made again is caught by the first signature after the change", async () => {
  const found = await verified((all) =>
    rechained(all.map((row) => ({ ...row, body: row.body.replace('"H-9"', '"H-8"') }))),
  );
  expect(found).toMatchObject({ good: false, message: { code: "ledger.fault.checkpoint-hash" } });
});

test("a rewritten chain without its checkpoints is caught by their absence", async () => {
  const found = await verified((all) => rechained(all.filter((row) => row.kind !== "checkpoint")));
  expect(found).toMatchObject({ good: false, message: { code: "ledger.fault.checkpoints-removed" } });
});

test("a chain rewritten and signed by another key is caught by the key that should have signed", async () => {
  const other = signingKey(join(testFolder(), "other.pem"));
  const rewrite = (all: EntryRow[]) => rechained(all, other);
  expect(await verified(rewrite)).toMatchObject({ good: true });
  expect(await verified(rewrite, { keyId })).toMatchObject({
    good: false,
    message: { code: "ledger.fault.key-never-signed" },
  });
});

test("a key that was introduced but did not sign does not make a rewritten chain good", async () => {
  const other = signingKey(join(testFolder(), "other.pem"));
  const signed = (all: EntryRow[]) => {
    const own = all.find(({ kind }) => kind === "signing-key") as EntryRow;
    return rechained(
      all.flatMap((row) => (row === own ? [{ ...own, id: "true-key" }, row] : [row])),
      other,
    );
  };
  expect(await verified(signed, { keyId })).toMatchObject({
    good: false,
    message: { code: "ledger.fault.key-never-signed" },
  });
});

test("a ledger that says of itself that it needs no checkpoints is not good by the key that signed it", async () => {
  const silenced = (all: EntryRow[]) =>
    rechained(
      all
        .filter(({ kind }) => kind !== "checkpoint")
        .map((row) =>
          row.kind === "ledger-opened"
            ? { ...row, body: row.body.replace(/"checkpointEvery":\d+/, '"checkpointEvery":0') }
            : row,
        ),
    );
  expect(await verified(silenced)).toMatchObject({ good: true, checkpoints: 0 });
  expect(await verified(silenced, { keyId })).toMatchObject({
    good: false,
    message: { code: "ledger.fault.key-never-signed" },
  });
});

test("a successor counts when the key before vouched for it; one that came by itself is told and not good", async () => {
  for (const vouched of [true, false]) {
    const folder = testFolder();
    const file = join(folder, "ledger.sqlite");
    const keyFile = join(folder, "signing-key.pem");
    copyFileSync(original, file);
    copyFileSync(
      join(dirname(original), "signing-key.pem"),
      join(folder, vouched ? "signing-key.previous.pem" : "gone.pem"),
    );
    const ledger = await openLedger({ file, keyFile, now: clock(), bench: "window bench" });
    expect(ledger.found.map(({ code }) => code)).toEqual(vouched ? [] : ["ledger.key.replaced"]);
    for (let i = 90; i < 140; i += 1) await weigh(ledger, `piece:${i}`, { ticket: `H-${i}` });
    await ledger.checkpoint();
    const found = await ledger.verify({ keyId });
    expect(found).toMatchObject(
      vouched ? { good: true } : { good: false, message: { code: "ledger.fault.untrusted-key" } },
    );
    await ledger.close();
  }
});

test("without any key from outside a signed ledger is not called good", async () => {
  const file = join(testFolder(), "ledger.sqlite");
  copyFileSync(original, file);
  expect(await run([file])).toBe(1);
  expect(await run([file, "--key", keyId])).toBe(0);
});

test("a shortened ledger is caught by a checkpoint that was printed", async () => {
  const shorten = (all: EntryRow[]) => all.slice(0, 150);
  expect(await verified(shorten)).toMatchObject({ good: true, entries: 150 });
  const checkpoint = readCheckpoint(printed);
  expect(checkpoint).not.toBeNull();
  expect(await verified(shorten, { checkpoints: [checkpoint] })).toMatchObject({
    good: false,
    message: { code: "ledger.fault.cut-short", params: { last: 150 } },
  });
});

test("whatever single thing is changed in whatever row, it is found there or right after", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: 1, max: 270 }),
      fc.constantFrom("id", "bench", "at", "kind", "subject", "body", "prev_hash", "hash"),
      fc.string({ minLength: 1, maxLength: 5 }),
      async (seq, column, added) => {
        const found = await verified((all) =>
          all.map((row) => (row.seq === seq ? { ...row, [column]: row[column as "id"] + added } : row)),
        );
        expect(found).toMatchObject({ good: false, row: seq });
      },
    ),
    { numRuns: 40 },
  );
});

test("the command says how many are good and exits 0, or names the first bad row and exits 1", async () => {
  const file = join(testFolder(), "ledger.sqlite");
  copyFileSync(original, file);
  copyFileSync(join(dirname(original), "signing-key.pem"), join(dirname(file), "signing-key.pem"));
  const said = spoken();
  expect(await run([file, "--checkpoint", printed])).toBe(0);
  expect(said()).toMatch(new RegExp(`${rows} entries are good; 4 checkpoints`));
  tamper(file, (all) => all.map((row) => (row.seq === 9 ? { ...row, subject: "piece:other" } : row)));
  expect(await run([file])).toBe(1);
  expect(said()).toMatch(/row 9 .* was changed[\s\S]*8 rows before it follow each other[\s\S]*up to 2/);
  expect(await run([join(dirname(file), "none.sqlite")])).toBe(2);
  expect(said()).toMatch(/There is no ledger at/);
  expect(existsSync(join(dirname(file), "none.sqlite"))).toBe(false);
});

test("a bench does not write behind a broken chain", async () => {
  const folder = testFolder();
  const file = join(folder, "ledger.sqlite");
  copyFileSync(original, file);
  tamper(file, (all) =>
    all.map((row) => (row.seq === rows - 2 ? { ...row, at: "2030-01-01T00:00:00.000Z" } : row)),
  );
  await expect(testLedger({ file })).rejects.toMatchObject({
    kind: "damaged",
    code: "ledger.start.damaged",
    params: { fault: { code: "ledger.fault.changed", params: { row: rows - 2 } } },
  });
});

test("a file that holds no ledger is named as none", async () => {
  const file = join(folder, "empty.sqlite");
  writeFileSync(file, "");
  await expect(openLedger({ file, now: clock(), bench: "verify", readOnly: true })).rejects.toMatchObject({
    code: "ledger.is-none",
    params: { place: file },
  });
});
