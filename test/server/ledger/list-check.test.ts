import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "@photostructure/sqlite";
import { expect, test } from "vitest";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { clock, testFolder, testLedger, weigh } from "./bench-ledger.ts";

/** A ledger of three pieces, one voided and one amended, after somebody changed its tables by hand. */
async function checked(statement: string) {
  const ledger = await testLedger();
  const first = await weigh(ledger, "piece:1", { ticket: "H-1" });
  const second = await weigh(ledger, "piece:2", { ticket: "H-2" });
  await weigh(ledger, "piece:3", { ticket: "H-3" });
  await ledger.append("voiding", "piece:1", { entry: first.id, reason: "bubble" });
  await ledger.append("amendment", "piece:2", {
    replaces: second.id,
    reason: "misread",
    by: "K",
    piece: { ticket: "H-9" },
  });
  await ledger.close();
  const file = join(testFolder(), "copy.sqlite");
  copyFileSync(ledger.place, file);
  const db = new DatabaseSync(file);
  db.exec(statement);
  db.close();
  const copy = await openLedger({ file, now: clock(), bench: "reader", readOnly: true });
  try {
    expect(await copy.verify()).toMatchObject({ good: true });
    return await copy.verifyList();
  } finally {
    await copy.close();
  }
}

test("a list that message what the entries say is good, voidings and amendments included", async () => {
  expect(await checked("select 1")).toEqual({ good: true, records: 3 });
});

test.each([
  [
    "update records set density_g_cm3 = 19.3 where ticket = 'H-3'",
    {
      code: "ledger.list.other-value",
      params: { column: "density_g_cm3", shown: "19.3", subject: "piece:3", right: "10.3432" },
    },
  ],
  [
    "update records set voided = 0 where subject = 'piece:1'",
    {
      code: "ledger.list.other-value",
      params: { column: "voided", shown: "0", subject: "piece:1", right: "1" },
    },
  ],
  [
    "update records set search = 'gold' where subject = 'piece:2'",
    { code: "ledger.list.other-value", params: { column: "search", shown: '"gold"' } },
  ],
  [
    "delete from records where subject = 'piece:2'",
    { code: "ledger.list.missing", params: { subject: "piece:2" } },
  ],
  [
    "update records set subject = 'piece:7' where subject = 'piece:3'",
    { code: "ledger.list.unknown", params: { subject: "piece:7" } },
  ],
  [
    "delete from record_words where rowid = (select seq from records limit 1)",
    { code: "ledger.list.search", params: { searched: 2, records: 3 } },
  ],
])("%s is found although the chain is good", async (statement, message) => {
  expect(await checked(statement)).toMatchObject({ good: false, message: message });
});
