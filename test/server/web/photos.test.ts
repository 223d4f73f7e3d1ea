import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { backUp, restore } from "../../../server/ledger/backup.ts";
import { copyFiles, verifyFiles } from "../../../server/ledger/named-files.ts";
import { photoFiles, photosBeside } from "../../../server/photos/photo-folder.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { codesIn } from "../page-fields.ts";
import { secrets, talkativePng, telephoneJpeg } from "../photos/pictures.ts";
import { host, recorded, sendPhoto, textOf, wordsOf } from "./recorded.ts";

const t = tellerOf("en");

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const send = (url: string, photo: Buffer, fields?: Record<string, string>) =>
  sendPhoto(at, url, photo, fields);
const photoEntries = () => at.ledger.entries({ kind: "photo" });

test("a photo taken at the bench is on the record and the report, without place and time, under its hash", async () => {
  await at.post("/bench/piece", { ticket: "A-1", description: "", method: "hung", claim: "", key: "a1" });
  const front = { shows: "front" };
  expect((await send("/bench/photos", telephoneJpeg(), { ...front, subject: "a0" })).statusCode).toBe(422);
  expect((await send("/bench/photos", telephoneJpeg(), front)).statusCode).toBe(303);
  expect(await photoEntries()).toHaveLength(1);
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.10", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.14", unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
  await at.post("/bench/record", {});
  const record = await at.app.inject({ url: "/records/a1", headers: { host } });
  const src = /src="(\/photos\/[0-9a-f]{64}\.jpg)" alt="Photo of A-1: front" width="16" height="24"/.exec(
    record.body,
  )?.[1];
  const photo = await at.app.inject({ url: src ?? "", headers: { host } });
  expect(photo.headers["content-type"]).toBe("image/jpeg");
  expect(photo.headers["content-security-policy"]).toContain("img-src 'self'");
  expect(secrets.filter((secret) => photo.rawPayload.includes(secret))).toEqual([]);
  const issued = await at.post("/records/a1/reports", {});
  const report = await at.app.inject({ url: issued.headers.location ?? "", headers: { host } });
  expect(report.body).toContain(`src="${src}"`);
  expect(wordsOf(report.body)).toContain("Photo front, SHA-256");
});

test("the same photo sent twice is kept once, and a refused file keeps nothing", async () => {
  await recorded(at, { id: "b1", dry: "31.10", immersed: "28.14" });
  await send("/records/b1/photos", talkativePng());
  await send("/records/b1/photos", talkativePng());
  const refused = await send("/records/b1/photos", Buffer.from("%PDF-1.7"), { shows: "edge, seen 3×" });
  expect(refused.statusCode).toBe(422);
  expect(wordsOf(refused.body)).toContain("no JPEG, PNG or WebP picture");
  // what was typed beside the file stands in its field again
  expect(refused.body).toMatch(
    /name="shows"[^>]*value="edge, seen 3×"|value="edge, seen 3×"[^>]*name="shows"/,
  );
  expect(await photoEntries()).toHaveLength(1);
  expect(await textOf(at, "/records/b1")).toContain("Photos of this piece");
});

test("only names that are hashes lead to a file", async () => {
  writeFileSync(join(at.file, "..", "other.png"), "");
  for (const name of ["..%2Fledger.sqlite", "..%2Fother.png", "signing-key.pem", `${"a".repeat(64)}.jpg`])
    expect((await at.app.inject({ url: `/photos/${name}`, headers: { host } })).statusCode).toBe(404);
});

test("a changed or missing photo is found, and a backup and what is restored from it carry the good ones", async () => {
  await recorded(at, { id: "c1", dry: "31.10", immersed: "28.14" });
  await send("/records/c1/photos", talkativePng());
  await send("/records/c1/photos", telephoneJpeg());
  const folder = photosBeside(at.file);
  expect(await verifyFiles(photoFiles, at.ledger, folder)).toEqual({ count: 2, wrong: [] });

  const now = () => new Date();
  const [copy, again] = [1, 2].map(() => join(mkdtempSync(join(tmpdir(), "underhook-")), "ledger.sqlite"));
  await backUp(at.file, copy!);
  expect(await copyFiles(photoFiles, at.file, copy!, now)).toEqual({ count: 2, wrong: [] });
  await restore(copy!, again!, now().toISOString());
  expect(await copyFiles(photoFiles, copy!, again!, now)).toEqual({ count: 2, wrong: [] });
  const names = (await photoEntries()).flatMap(({ kind, body }) => (kind === "photo" ? [body.hash] : []));
  const restored = join(photosBeside(again!), `${names[0]}.png`);
  expect(readFileSync(restored).equals(readFileSync(join(folder, `${names[0]}.png`)))).toBe(true);

  writeFileSync(join(folder, `${names[0]}.png`), "not the picture");
  const { wrong } = await verifyFiles(photoFiles, at.ledger, folder);
  expect(wrong).toEqual([{ code: "photo.file.changed", params: { name: `${names[0]}.png` } }]);
  expect(existsSync(join(folder, `${names[1]}.jpg`))).toBe(true);
});

test("a photo is set aside with a reason at the bench: it is gone from the page, its file and its entry stay, and the same picture may be kept anew", async () => {
  await at.post("/bench/piece", { ticket: "D-1", description: "", method: "hung", claim: "", key: "d1" });
  await send("/bench/photos", telephoneJpeg(), { piece: "d1", shows: "front" });
  const [photo] = at.bench.item?.photos ?? [];
  const aside = `/bench/photos/${encodeURIComponent(photo?.id ?? "")}/voiding`;
  const without = await at.post(aside, { reason: " " });
  expect(without.statusCode).toBe(422);
  expect(codesIn(without.body)).toEqual(["weighing.photo.reason-missing"]);
  expect((await at.post(aside, { reason: "shows another piece" })).statusCode).toBe(303);
  expect(await textOf(at, "/")).toContain(t("photos.excluded", { count: 1, reasons: "shows another piece" }));
  expect(codesIn((await at.post(aside, { reason: "once more" })).body)).toEqual([
    "weighing.photo.already-excluded",
  ]);
  expect(existsSync(join(photosBeside(at.file), `${photo?.body.hash}.jpg`))).toBe(true);
  expect(await verifyFiles(photoFiles, at.ledger, photosBeside(at.file))).toMatchObject({ wrong: [] });
  await send("/bench/photos", telephoneJpeg(), { piece: "d1", shows: "front again" });
  expect(at.bench.item?.photos).toHaveLength(1);
  expect(await photoEntries()).toHaveLength(2);
});

test("a photo of a record is set aside with a name and a reason, and the search for pieces with a photo no longer finds it", async () => {
  await recorded(at, { id: "e1", dry: "31.10", immersed: "28.14" });
  await send("/records/e1/photos", telephoneJpeg(), { shows: "front" });
  const withPhoto = async () => (await at.ledger.records({ filters: { photo: true } })).count;
  expect(await withPhoto()).toBe(1);
  const [photo] = await photoEntries();
  const href = `/records/e1/photos/${encodeURIComponent(photo?.id ?? "")}/voiding`;
  expect((await at.app.inject({ url: "/records/e1", headers: { host } })).body).toContain(`action="${href}"`);
  expect((await at.post(href, { by: "KR", reason: "wrong medal" })).statusCode).toBe(303);
  expect(await textOf(at, "/records/e1")).toContain(
    t("photos.excluded", { count: 1, reasons: "wrong medal" }).split(".")[0]!,
  );
  expect(await withPhoto()).toBe(0);
  expect((await at.ledger.entriesOf("e1")).at(-1)).toMatchObject({
    kind: "voiding",
    body: { entry: photo?.id, by: "KR", reason: "wrong medal" },
  });
  expect(await at.ledger.verifyList()).toMatchObject({ good: true });
  expect((await at.post(href.replace("e1", "nobody"), { by: "KR", reason: "x" })).statusCode).toBe(404);
});
