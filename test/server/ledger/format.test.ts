import { execFileSync, spawnSync } from "node:child_process";
import { createPrivateKey, sign } from "node:crypto";
import { copyFileSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "@photostructure/sqlite";
import { expect, test } from "vitest";
import { chainHash, contentHash, contentText, noHash } from "../../../server/ledger/entry.ts";
import type { Ledger } from "../../../server/ledger/ledger.ts";
import { headText, logName, noteSigned, readNote, spkiOf } from "../../../server/ledger/note.ts";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { leafHash, Tree } from "../../../server/ledger/tree.ts";
import { clock, testFolder, testLedger, weigh } from "./bench-ledger.ts";
import { tamper } from "./tampering.ts";

const page = readFileSync(join(import.meta.dirname, "../../../server/ledger/FORMAT.md"), "utf8");
const block = (language: string) => new RegExp(`\`\`\`${language}\\n([^]*?)\`\`\``).exec(page)?.[1] ?? "";
const vectors = JSON.parse(block("json"));

/** Runs the verifier that stands on the page. */
function byPython(file: string, keyId: string) {
  const program = join(testFolder(), "verify.py");
  writeFileSync(program, block("python"));
  const { stdout, stderr, status } = spawnSync("python3", [program, file, keyId], { encoding: "utf8" });
  return { said: stdout.trim() || stderr, status };
}

/** The same file judged by this program. */
async function byProgram(file: string, keyId: string) {
  const ledger = await openLedger({ file, now: clock(), bench: "reader", readOnly: true });
  const found = await ledger.verify({ keyId });
  await ledger.close();
  return found.good
    ? { said: `good: ${found.entries} entries, signed up to row ${found.signedUpTo}`, status: 0 }
    : { said: expect.stringMatching(new RegExp(`^not good: row ${found.row}\\b`)), status: 1 };
}

const keysIn = (file: string): string[] => {
  const db = new DatabaseSync(file, { readOnly: true });
  const rows = db.prepare("select body from entries where kind = 'signing-key' order by seq").all();
  db.close();
  return rows.map(({ body }: { body: string }) => JSON.parse(body).keyId);
};

/** A ledger that was made by a released version and went on with this one. */
async function continued(name: string): Promise<string> {
  const file = join(testFolder(), "ledger.sqlite");
  copyFileSync(join(import.meta.dirname, "old", name), file);
  const ledger = await openLedger({ file, now: clock("2027-01-04T08:00:00.000Z"), bench: "window bench" });
  for (let n = 0; n < 40; n += 1) await weigh(ledger, `piece:new-${n}`);
  await ledger.close();
  return file;
}

test("the tree heads of the page are those of RFC 6962, and the program makes the same", () => {
  const tree = new Tree();
  // by hand for two leaves: SHA-256(01 ‖ SHA-256(00) ‖ SHA-256(00 ‖ 00))
  for (const leaf of vectors.leaves) tree.add(leafHash(Buffer.from(leaf, "hex")));
  expect(tree.root().toString("hex")).toBe(vectors.root8);
  expect(new Tree().root().toString("hex")).toBe(
    "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
  );
});

test("entry, leaf and note of the page are what the program makes of the same values", () => {
  const { entry, hash, leaf, note } = vectors;
  expect(chainHash(contentHash(entry), noHash)).toBe(hash);
  expect(leafHash(contentText(entry)).toString("hex")).toBe(leaf);
  const seed = Buffer.concat([Buffer.from("302e020100300506032b657004220420", "hex"), Buffer.alloc(32, 1)]);
  const key = createPrivateKey({ key: seed, format: "der", type: "pkcs8" });
  // public key of the seed of 32 bytes 01, by another implementation of RFC 8032
  const raw = Buffer.from("8a88e3dd7409f195fd52db2d3cba5d72ca6709bf1d94121bf3748801b40f6f5c", "hex");
  const name = logName(hash);
  const text = headText({ origin: name, size: 1, root: Buffer.from(leaf, "hex") });
  const signature = sign(null, Buffer.from(text), key).toString("base64");
  expect(noteSigned(text, { name, raw }, signature)).toBe(note);
});

test("the verifier is about forty lines", () => {
  expect(block("python").trim().split("\n").length).toBeLessThanOrEqual(50);
});

const old = readdirSync(join(import.meta.dirname, "old")).filter((name) => name.endsWith(".sqlite"));

test.each(old)(
  "the verifier of the page says of %s, as it is and continued, what this program says",
  async (name) => {
    const untouched = join(testFolder(), "old.sqlite");
    copyFileSync(join(import.meta.dirname, "old", name), untouched);
    const [first = ""] = keysIn(untouched).slice(-1);
    expect(byPython(untouched, first)).toEqual({
      ...{ said: expect.stringMatching(/^good: \d+ entries, signed up to row \d+$/), status: 0 },
    });
    const file = await continued(name);
    const keys = keysIn(file);
    expect(byPython(file, keys.at(-1) ?? "")).toMatchObject({ status: 0 });
    for (const key of keys) expect(byPython(file, key)).toEqual(await byProgram(file, key));
  },
);

test("the verifier finds what was changed, in its row, and refuses a key that never signed", async () => {
  const file = join(testFolder(), "ledger.sqlite");
  const ledger = await openLedger({ file, now: clock(), bench: "window bench" });
  const keyId = ledger.key?.keyId ?? "";
  for (let n = 0; n < 40; n += 1) await weigh(ledger, `piece:${n}`);
  await ledger.close();
  expect(byPython(file, keyId)).toMatchObject({ status: 0 });
  expect(byPython(file, "0".repeat(64))).toMatchObject({ status: 1 });
  tamper(file, (rows) => rows.map((row) => (row.seq === 30 ? { ...row, subject: "piece:other" } : row)));
  expect(byPython(file, keyId)).toEqual({ said: "not good: row 30", status: 1 });
});

/** The newest checkpoint of a ledger, as a note and as its parts. */
async function newestNote(ledger: Ledger) {
  const checkpoint = await ledger.checkpoint();
  return { note: checkpoint?.note ?? "", publicKey: ledger.key?.publicKey ?? "" };
}

test("a checkpoint holds by a general tool for signatures (openssl), and not once a byte of it is changed", async () => {
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  const { note, publicKey } = await newestNote(ledger);
  const read = readNote(note);
  const folder = testFolder();
  const at = (name: string) => join(folder, name);
  writeFileSync(at("text"), read?.text ?? "");
  writeFileSync(at("signature"), read?.signatures[0]?.signature ?? "");
  writeFileSync(at("key"), Buffer.from(publicKey, "base64"));
  const check = () =>
    execFileSync(
      "openssl",
      ["pkeyutl", "-verify", "-pubin", "-keyform", "DER", "-inkey", at("key"), "-rawin"].concat(
        ...["-in", at("text"), "-sigfile", at("signature")],
      ),
      { stdio: "pipe" },
    );
  expect(check).not.toThrow();
  expect(spkiOf(Buffer.from(publicKey, "base64").subarray(-32)).toString("base64")).toBe(publicKey);
  writeFileSync(at("text"), (read?.text ?? "").replace("\n", "\n1"));
  expect(check).toThrow();
});
