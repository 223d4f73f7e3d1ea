import { readdirSync, statSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { DatabaseSync } from "@photostructure/sqlite";
import { expect, test } from "vitest";
import { chainHash, contentHash, noHash } from "../../../server/ledger/entry.ts";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { clock, dry, piece, result, testFolder, testLedger, weigh } from "./bench-ledger.ts";

test("what was appended is read back in order, with its decimals as they were typed", async () => {
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  const entries = await ledger.entriesOf("piece:1");
  expect(entries.map((entry) => entry.kind)).toEqual(["piece-opened", "capture", "result"]);
  const capture = entries[1];
  expect(capture?.kind === "capture" && capture.body.what === "dry" && capture.body.reading.text).toBe(
    "31.10",
  );
  expect(capture?.at).toMatch(/^2026-03-02T09:00:\d\d\.000Z$/);
});

test("every entry carries the hash of the one before and its own over what it says", async () => {
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  let before = noHash;
  for (const entry of await ledger.entries()) {
    expect(entry.prevHash).toBe(before);
    const body = new DatabaseSync(ledger.place)
      .prepare("select body from entries where seq = ?")
      .get(entry.seq).body;
    expect(entry.hash).toBe(chainHash(contentHash({ ...entry, body, origin: null }), before));
    before = entry.hash;
  }
});

test("saving twice with one key stores once, and gives the same entry", async () => {
  const ledger = await testLedger();
  const once = await ledger.append("capture", "piece:1", dry, { key: "form-7" });
  const again = await ledger.append("capture", "piece:1", dry, { key: "form-7" });
  expect(again).toEqual(once);
  expect(await ledger.entriesOf("piece:1")).toHaveLength(1);
});

test("one key with another content is refused and says what stands", async () => {
  const ledger = await testLedger();
  await ledger.append("note", "piece:1", { text: "rim knock" }, { key: "form-7" });
  await expect(
    ledger.append("note", "piece:1", { text: "no rim knock" }, { key: "form-7" }),
  ).rejects.toMatchObject({
    code: "ledger.entry.stands",
    params: { id: "form-7" },
  });
});

test("a wrong body is refused with place, value and what would be right", async () => {
  const ledger = await testLedger();
  const wrong = { ...dry, reading: { text: "31,10", unit: "g", grams: "31.10" } };
  await expect(ledger.append("capture", "piece:1", wrong as typeof dry)).rejects.toMatchObject({
    code: "ledger.entry.wrong",
    params: { kind: "capture", wrong: [expect.stringContaining('reading.text = "31,10"')] },
  });
  await expect(ledger.append("weighing" as "note", "piece:1", { text: "x" })).rejects.toMatchObject({
    code: "ledger.entry.unknown-kind",
    params: { kind: "weighing" },
  });
  await expect(ledger.append("note", "two\nlines", { text: "x" })).rejects.toMatchObject({
    code: "ledger.entry.not-a-name",
    params: { what: "subject", value: '"two\\nlines"' },
  });
  expect(await ledger.entriesOf("piece:1")).toEqual([]);
});

test("the file refuses update, delete and replace, even by other programs", async () => {
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  const other = new DatabaseSync(ledger.place);
  expect(() => other.exec("update entries set body = '{}' where seq = 3")).toThrow(/append-only/);
  expect(() => other.exec("delete from entries where seq = 3")).toThrow(/append-only/);
  expect(() =>
    other.exec(
      "insert or replace into entries select seq, id, bench, at, kind, subject, '{}', origin, prev_hash, hash from entries where seq = 3",
    ),
  ).toThrow(/append-only/);
  expect(() =>
    other.exec(
      "insert into entries select 99, 'x', bench, at, kind, subject, body, origin, prev_hash, 'y' from entries where seq = 3",
    ),
  ).toThrow(/append-only|UNIQUE/);
  other.close();
  expect(await ledger.verify()).toMatchObject({ good: true });
});

test("appends made all at once stand one behind the other", async () => {
  const ledger = await testLedger();
  await Promise.all(
    Array.from({ length: 40 }, (_, i) => ledger.append("note", "piece:1", { text: `note ${i}` })),
  );
  const notes = await ledger.entries({ kind: "note" });
  expect(notes).toHaveLength(40);
  expect(await ledger.verify()).toMatchObject({ good: true });
});

test("entries that rest on what stood are written all together, or not at all when another came between", async () => {
  const ledger = await testLedger();
  await ledger.append("piece-opened", "piece:1", piece);
  const readings = [
    { kind: "capture", body: dry },
    { kind: "note", body: { text: "rim dried" } },
  ] as const;
  expect((await ledger.appendAll("piece:1", readings, 1)).map(({ kind }) => kind)).toEqual([
    "capture",
    "note",
  ]);
  await expect(ledger.appendAll("piece:1", readings, 1)).rejects.toMatchObject({
    name: "Stale",
    expected: 1,
    found: 3,
  });
  const broken = [
    { kind: "note", body: { text: "first" } },
    { kind: "note", body: { text: "" } },
  ] as const;
  await expect(ledger.appendAll("piece:1", broken, 3)).rejects.toMatchObject({ kind: "refused" });
  const [one, other] = await Promise.allSettled([
    ledger.appendAll("piece:1", readings, 3),
    ledger.appendAll("piece:1", readings, 3),
  ]);
  expect([one.status, other.status]).toEqual(["fulfilled", "rejected"]);
  expect(await ledger.entriesOf("piece:1")).toHaveLength(5);
});

test("a second writer on the same file is refused, reading is not", async () => {
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  await expect(openLedger({ file: ledger.place, now: clock(), bench: "back room" })).rejects.toMatchObject({
    kind: "in-use",
  });
  const reader = await openLedger({ file: ledger.place, now: clock(), bench: "reader", readOnly: true });
  expect(await reader.entriesOf("piece:1")).toHaveLength(3);
  await expect(reader.append("note", "piece:1", { text: "x" })).rejects.toMatchObject({ kind: "read-only" });
  await reader.close();
});

test("a ledger that was closed goes on where it stopped", async () => {
  const file = join(testFolder(), "ledger.sqlite");
  const first = await openLedger({ file, now: clock(), bench: "window bench" });
  await weigh(first, "piece:1");
  const head = await first.head();
  await first.close();
  const second = await testLedger({ file, now: clock("2026-03-03T09:00:00.000Z") });
  const closing = await second.entry(`checkpoint-${head?.hash}`);
  expect(await second.head()).toEqual({ seq: (head?.seq ?? 0) + 1, hash: closing?.hash });
  await second.append("note", "piece:1", { text: "next morning" });
  expect(await second.verify()).toMatchObject({ good: true, entries: (head?.seq ?? 0) + 2 });
});

test("a clock that went back is written down before the next entry, and the order stays", async () => {
  const file = join(testFolder(), "ledger.sqlite");
  const first = await openLedger({ file, now: clock("2026-03-02T09:00:00.000Z"), bench: "window bench" });
  await weigh(first, "piece:1");
  await first.close();
  const second = await testLedger({ file, now: clock("1970-01-01T00:00:00.000Z") });
  const note = await second.append("note", "piece:1", { text: "battery was flat" });
  const jump = (await second.entries({ kind: "clock-jump" }))[0];
  expect(jump?.seq).toBe(note.seq - 1);
  expect(jump?.kind === "clock-jump" && jump.body.to).toMatch(/^1970/);
});

test("the signing key is made at first start; only its owner can read it, the ledger and what lies beside it", async () => {
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  const folder = dirname(ledger.place);
  const files = readdirSync(folder);
  expect(files).toEqual(expect.arrayContaining(["signing-key.pem", `${basename(ledger.place)}-owner`]));
  for (const one of files) expect([one, statSync(join(folder, one)).mode & 0o777]).toEqual([one, 0o600]);
  expect(ledger.key?.keyId).toMatch(/^[0-9a-f]{64}$/);
});

test("the list shows finished measurements, newest first, and pages through them", async () => {
  const ledger = await testLedger();
  for (let i = 1; i <= 7; i += 1) await weigh(ledger, `piece:${i}`, { ticket: `H-000${i}` });
  await ledger.append("piece-opened", "piece:8", piece);
  const first = await ledger.records({ page: { size: 4 } });
  expect(first.records.map((record) => record.ticket)).toEqual(["H-0007", "H-0006", "H-0005", "H-0004"]);
  expect(first).toMatchObject({ count: 7, countIsFloor: false });
  const second = await ledger.records({ page: { size: 4, before: first.next ?? 0 } });
  expect(second.records.map((record) => record.ticket)).toEqual(["H-0003", "H-0002", "H-0001"]);
  expect(second.next).toBeNull();
});

test("the search finds beginnings of words in any order, without accents, and cannot be broken by signs", async () => {
  const ledger = await testLedger();
  await weigh(ledger, "piece:1", { ticket: "H-0412", description: "Médaille à la voile" });
  await weigh(ledger, "piece:2", { ticket: "H-0413", description: "Sailing cup" });
  const tickets = async (search: string) =>
    (await ledger.records({ search })).records.map((record) => record.ticket);
  expect(await tickets("medai 0412")).toEqual(["H-0412"]);
  expect(await tickets("H-0413")).toEqual(["H-0413"]);
  expect(await tickets("h")).toEqual(["H-0413", "H-0412"]);
  expect(await tickets(`" OR * NEAR( ' ; drop`)).toEqual([]);
  expect((await ledger.records({ search: "h", filters: { claim: "au-750" } })).records).toEqual([]);
});

test("a voided measurement stays in the list as voided, an amended one shows what holds now", async () => {
  const ledger = await testLedger();
  const one = await weigh(ledger, "piece:1");
  await ledger.append("voiding", "piece:1", { entry: one.id, reason: "bubble under the rim" });
  const two = await weigh(ledger, "piece:2");
  await ledger.append("amendment", "piece:2", {
    replaces: two.id,
    reason: "ticket misread",
    by: "counter 1",
    piece: { ticket: "H-0999" },
  });
  const { records } = await ledger.records();
  expect(records.map(({ ticket, voided, amendments }) => ({ ticket, voided, amendments }))).toEqual([
    { ticket: "H-0999", voided: false, amendments: 1 },
    { ticket: "H-0412", voided: true, amendments: 0 },
  ]);
  expect(records[0]?.at).toBe(two.at);
  await ledger.append("amendment", "piece:2", {
    replaces: two.id,
    reason: "typing error",
    by: "counter 1",
    result,
  });
  expect((await ledger.records()).records[0]).toMatchObject({ at: two.at, amendments: 2 });
  expect((await ledger.records({ search: "0999" })).records).toHaveLength(1);
  expect((await ledger.records({ search: "0412", filters: { voided: true } })).records).toHaveLength(1);
});

test("a clock set forward, or a machine that slept, is written down with the entry after it; time that passes is not", async () => {
  let wall = Date.parse("2026-03-02T09:00:00.000Z");
  let passed = 0;
  const ledger = await testLedger({ now: () => new Date(wall), monotonicMs: () => passed });
  const note = () => ledger.append("note", "piece:1", { text: "x" });
  await note();
  wall += 3_600_000;
  passed += 3_600_000;
  await note();
  expect(await ledger.entries({ kind: "clock-jump" })).toEqual([]);
  wall += 7_200_000;
  passed += 1000;
  await note();
  const [jump] = await ledger.entries({ kind: "clock-jump" });
  expect(jump?.body).toMatchObject({
    byMs: 7_199_000,
    message: { code: "ledger.clock.forward" },
  });
  expect(await ledger.verify()).toMatchObject({ good: true });
});
