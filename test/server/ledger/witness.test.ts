import { readdirSync, readFileSync, renameSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { expect, onTestFinished, test, vi } from "vitest";
import { run as exportRun } from "../../../server/cli/export.ts";
import { run as verify } from "../../../server/cli/verify.ts";
import type { Ledger } from "../../../server/ledger/ledger.ts";
import { cosignedAt, readNote, readVerifierKey, verifierKey } from "../../../server/ledger/note.ts";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { signingKey } from "../../../server/ledger/signing-key.ts";
import { leafHash, rootByInclusion } from "../../../server/ledger/tree.ts";
import { checkpointRequest } from "../../../server/ledger/witness/add-checkpoint.ts";
import { askToCosign } from "../../../server/ledger/witness/ask.ts";
import { keepWitnessed } from "../../../server/ledger/witness/keep-witnessed.ts";
import { ledgerWitness } from "../../../server/ledger/witness/ledger-witness.ts";
import { clock, spoken, testFolder, testLedger, weigh } from "./bench-ledger.ts";
import { rehashed, saying, signedCheckpoint } from "./forging.ts";
import { tamper } from "./tampering.ts";

const now = () => new Date("2026-03-02T12:00:00.000Z");
const rawOf = (ledger: Ledger) => Buffer.from(ledger.key?.publicKey ?? "", "base64").subarray(-32);

function watched(ledger: Ledger) {
  const kept = keepWitnessed(ledger, {
    now,
    sleep: (_ms, signal) => wait(20, undefined, { signal }).catch(() => {}),
  });
  onTestFinished(() => kept.stop());
  return kept;
}

test("a folder cosigns by itself once it is there, and its file shows a ledger that was shortened or rewritten", async () => {
  const ledger = await testLedger();
  const stick = join(testFolder(), "stick");
  await ledger.append("witnesses", "witnesses", { folders: [stick], benches: [], of: [] });
  for (let n = 0; n < 3; n += 1) await weigh(ledger, `piece:${n}`);
  const first = await ledger.checkpoint();
  const kept = watched(ledger);
  await vi.waitFor(() => expect(kept.states()[0]?.why?.code).toBe("ledger.witness.no-folder"));
  renameSync(testFolder(), stick);
  await vi.waitFor(() => expect(kept.states()[0]).toMatchObject({ why: null, upTo: first?.seq }));
  for (let n = 3; n < 60; n += 1) await weigh(ledger, `piece:${n}`);
  const second = await ledger.checkpoint();
  await vi.waitFor(() => expect(kept.states()[0]).toMatchObject({ why: null, upTo: second?.seq }), 5000);
  const name = readdirSync(stick).find((one) => one.endsWith(".checkpoint")) ?? "";
  const onStick = join(stick, name);
  const note = readNote(readFileSync(onStick, "utf8"));
  const key = signingKey(join(stick, "underhook-witness-key.pem"), { anyMode: true });
  expect(note?.head.size).toBe(second?.seq);
  expect(cosignedAt(note!, { name: `underhook-witness/${key.keyId}`, raw: key.raw })).toBe(
    Date.parse("2026-03-02T12:00:00Z") / 1000,
  );
  await kept.stop();
  const keyId = ledger.key?.keyId ?? "";
  await ledger.close();

  const said = spoken();
  const by = ["--chain", "--key", keyId, "--checkpoint", onStick];
  expect(await verify([ledger.place, ...by])).toBe(0);
  tamper(ledger.place, (rows) => rows.slice(0, 120));
  expect(await verify([ledger.place, ...by])).toBe(1);
  expect(said()).toMatch(/kept elsewhere vouches for row/);
  const cut = await openLedger({ file: ledger.place, now: clock(), bench: "window bench" });
  onTestFinished(() => cut.close());
  await cut.checkpoint();
  const again = watched(cut);
  await vi.waitFor(() => expect(again.states()[0]?.why?.code).toBe("ledger.witness.saw-more"));
});

test("another bench cosigns what it can follow, and nothing else", async () => {
  const [ledger, other] = [await testLedger(), await testLedger()];
  const origin = await ledger.name();
  const log = verifierKey({ name: origin, raw: rawOf(ledger) }, "note");
  const answers = ledgerWitness(other);
  for (let n = 0; n < 4; n += 1) await weigh(ledger, `piece:${n}`);
  const first = await ledger.checkpoint();
  const note = first?.note ?? "";
  expect(await answers("what is this")).toMatchObject({ status: 400 });
  expect(await answers(checkpointRequest(0, [], note))).toMatchObject({ status: 404 });
  await other.append("witnesses", "witnesses", { folders: [], benches: [], of: [log] });
  const key = readVerifierKey(verifierKey({ name: await other.name(), raw: rawOf(other) }, "cosignature"));
  const asked = { name: "other", key: key!, send: answers };
  const strange = note.replace(
    /(.)(.{30})\n$/,
    (_, letter, rest) => `${letter === "A" ? "B" : "A"}${rest}\n`,
  );
  expect(await answers(checkpointRequest(0, [], strange))).toMatchObject({ status: 403 });
  expect(await answers(checkpointRequest(1e6, [], note))).toMatchObject({ status: 400 });
  const signed = await askToCosign(ledger, note, asked);
  expect("line" in signed && cosignedAt(readNote(`${note}${signed.line}`)!, key!)).toBeGreaterThan(0);

  for (let n = 4; n < 50; n += 1) await weigh(ledger, `piece:${n}`);
  const second = await ledger.checkpoint();
  const size = second?.seq ?? 0;
  expect(await answers(checkpointRequest(3, [], second?.note ?? ""))).toEqual({
    status: 409,
    body: `${first?.seq}\n`,
  });
  const proof = await ledger.consistencyProof(first?.seq ?? 0, size);
  const broken = proof.with(0, leafHash("another"));
  expect(await answers(checkpointRequest(first?.seq ?? 0, broken, second?.note ?? ""))).toMatchObject({
    status: 422,
  });
  expect(await askToCosign(ledger, second?.note ?? "", asked)).toHaveProperty("line");
  // what was seen stands in the other ledger: it knows it after a new start too
  expect((await other.entries({ kind: "witnessed" })).map(({ body }) => body)).toMatchObject([
    { origin, size: first?.seq },
    { origin, size },
  ]);
  expect(await askToCosign(ledger, note, asked)).toMatchObject({
    message: { code: "ledger.witness.saw-more" },
  });
});

test("a ledger rewritten with its own key is found out by the bench that cosigned it", async () => {
  const [ledger, other] = [await testLedger(), await testLedger()];
  const log = verifierKey({ name: await ledger.name(), raw: rawOf(ledger) }, "note");
  await other.append("witnesses", "witnesses", { folders: [], benches: [], of: [log] });
  const key = readVerifierKey(verifierKey({ name: await other.name(), raw: rawOf(other) }, "cosignature"));
  const asked = { name: "other", key: key!, send: ledgerWitness(other) };
  for (let n = 0; n < 20; n += 1) await weigh(ledger, `piece:${n}`);
  expect(await askToCosign(ledger, (await ledger.checkpoint())?.note ?? "", asked)).toHaveProperty("line");
  await ledger.close();
  const bench = signingKey(join(ledger.place, "..", "signing-key.pem"));
  tamper(ledger.place, (rows) =>
    rehashed(
      rows.map((row) => (row.seq === 10 ? saying(row, (body) => ({ ...body, operator: "another" })) : row)),
      10,
      (row, upTo, hash) => signedCheckpoint(row, upTo, hash, bench),
    ),
  );
  const rewritten = await openLedger({ file: ledger.place, now: clock(), bench: "window bench" });
  onTestFinished(() => rewritten.close());
  for (let n = 20; n < 25; n += 1) await weigh(rewritten, `piece:${n}`);
  expect(await rewritten.verify({ keyId: bench.keyId }), "the key alone finds nothing").toMatchObject({
    good: true,
  });
  const answer = await askToCosign(rewritten, (await rewritten.checkpoint())?.note ?? "", asked);
  expect(answer).toMatchObject({ message: { code: "ledger.witness.saw-other" } });
});

test("one entry is taken out with a proof that general tools for such logs check", async () => {
  const ledger = await testLedger();
  for (let n = 0; n < 110; n += 1) await weigh(ledger, `piece:${n}`);
  await ledger.checkpoint();
  const out = join(testFolder(), "entry.tlog-proof");
  expect(await exportRun(["--proof", "77", "--out", out, "--ledger", ledger.place])).toBe(0);
  const [first, extra = "", index = "", ...rest] = readFileSync(out, "utf8").split("\n");
  expect([first, index]).toEqual(["c2sp.org/tlog-proof@v1", "index 76"]);
  const end = rest.indexOf("");
  const note = readNote(rest.slice(end + 1).join("\n"));
  const path = rest.slice(0, end).map((line) => Buffer.from(line, "base64"));
  const text = Buffer.from(extra.replace("extra ", ""), "base64");
  expect(JSON.parse(text.toString())).toMatchObject({ seq: 77 });
  expect(rootByInclusion(leafHash(text), 76, note?.head.size ?? 0, path)).toEqual(note?.head.root);
  expect(await exportRun(["--proof", "9999", "--ledger", ledger.place])).toBe(2);
});
