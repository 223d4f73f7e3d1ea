import { existsSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { setImmediate } from "node:timers/promises";
import { expect, test } from "vitest";
import { run as backup } from "../../../server/cli/backup.ts";
import { run as restore } from "../../../server/cli/restore.ts";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { clock, dry, spoken, testFolder, testLedger, weigh } from "./bench-ledger.ts";
import { tamper } from "./tampering.ts";

test("a backup made while captures go on holds everything up to one moment and is good", async () => {
  const said = spoken();
  const ledger = await testLedger();
  const target = join(testFolder(), "copy.sqlite");
  await weigh(ledger, "piece:1");
  let going = true;
  const bench = (async () => {
    while (going) {
      await ledger.append("capture", "piece:2", dry);
      await setImmediate();
    }
  })();
  const before = (await ledger.head())?.seq ?? 0;
  expect(await backup([target, "--ledger", ledger.place])).toBe(0);
  going = false;
  await bench;
  expect(said()).toMatch(/copy\.sqlite: \d+ entries, all good/);
  expect(statSync(target).mode & 0o777).toBe(0o600);
  const copy = await openLedger({ file: target, now: clock(), bench: "reader", readOnly: true });
  const rows = (await copy.head())?.seq ?? 0;
  expect(rows).toBeGreaterThanOrEqual(before);
  expect((await copy.entries({ limit: rows })).at(-1)?.hash).toBe(
    (await ledger.entries({ after: rows - 1, limit: 1 }))[0]?.hash,
  );
  expect((await copy.records({ search: "sail" })).count).toBe(1);
  await copy.close();
});

test("a backup never overwrites a file and is not made from a broken chain", async () => {
  const said = spoken();
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  await ledger.close();
  const folder = testFolder();
  writeFileSync(join(folder, "mine"), "mine");
  expect(await backup([join(folder, "mine"), "--ledger", ledger.place])).toBe(2);
  expect(said()).toMatch(/never overwrites/);
  tamper(ledger.place, (rows) => rows.filter((row) => row.seq !== 3));
  expect(await backup([join(folder, "copy"), "--ledger", ledger.place])).toBe(1);
  expect(said()).toMatch(/row 3 is missing.*Take another backup/);
  expect(readdirSync(folder)).toEqual(["mine"]);
});

test("a restore up to a moment holds what was written until then, keeps the old ledger, and goes on", async () => {
  const said = spoken();
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  const moment = (await ledger.entries()).at(-1)?.at ?? "";
  await weigh(ledger, "piece:2");
  const target = join(testFolder(), "copy.sqlite");
  await backup([target, "--ledger", ledger.place]);
  expect(await restore([target, "--ledger", ledger.place])).toBe(2);
  expect(said()).toMatch(/being written by another Underhook/);
  await ledger.close();
  expect(await restore([target, "--ledger", ledger.place, "--until", moment])).toBe(0);
  expect(readdirSync(dirname(ledger.place)).some((name) => name.includes("before-restore"))).toBe(true);
  const again = await testLedger({ file: ledger.place, now: clock("2026-03-03T09:00:00.000Z") });
  expect((await again.records()).records.map((record) => record.subject)).toEqual(["piece:1"]);
  const [recovery] = await again.entries({ kind: "recovery" });
  expect(recovery?.kind === "recovery" && recovery.body.says).toMatchObject({
    code: "ledger.recovery.restored-until",
    params: { from: target, until: moment },
  });
  await weigh(again, "piece:3");
  expect(await again.verify()).toMatchObject({ good: true });
});

test("a damaged ledger can be replaced by its backup", async () => {
  const said = spoken();
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  const target = join(testFolder(), "copy.sqlite");
  await backup([target, "--ledger", ledger.place]);
  await ledger.close();
  writeFileSync(ledger.place, "scribbled over");
  expect(await restore([target, "--ledger", ledger.place])).toBe(0);
  expect(said()).toMatch(/kept as .*before-restore/);
  const again = await testLedger({ file: ledger.place, now: clock("2026-03-03T09:00:00.000Z") });
  expect(await again.entriesOf("piece:1")).toHaveLength(3);
});

test("a restore names a wrong moment, a missing file, and leaves no half ledger", async () => {
  const said = spoken();
  const folder = testFolder();
  const file = join(folder, "data", "ledger.sqlite");
  expect(await restore([join(folder, "none"), "--ledger", file])).toBe(2);
  expect(said()).toMatch(/There is no ledger at .*none/);
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  await backup([join(folder, "copy"), "--ledger", ledger.place]);
  expect(await restore([join(folder, "copy"), "--ledger", file, "--until", "noon"])).toBe(2);
  expect(said()).toMatch(/“noon”/);
  expect(existsSync(file)).toBe(false);
});
