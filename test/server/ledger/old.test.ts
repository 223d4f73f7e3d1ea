import { copyFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { currentSchema } from "../../../server/ledger/schema.ts";
import { clock, testFolder, testLedger, weigh } from "./bench-ledger.ts";

const folder = join(import.meta.dirname, "old");
const files = readdirSync(folder).filter((name) => name.endsWith(".sqlite"));

test("there is an old ledger for every released schema", () => {
  expect(files).toEqual(Array.from({ length: currentSchema }, (_, index) => `schema-${index + 1}.sqlite`));
});

test.each(files)("the old ledger %s is read, good, listed, searched and continued", async (name) => {
  const file = join(testFolder(), "ledger.sqlite");
  copyFileSync(join(folder, name), file);
  const ledger = await testLedger({ file, now: clock("2027-01-04T08:00:00.000Z") });
  // one more than the old program wrote: the key made at this start signs what stood
  const checkpoints = 1 + ({ "schema-3.sqlite": 3, "schema-4.sqlite": 4 }[name] ?? 2);
  expect(await ledger.verify()).toMatchObject({ good: true, checkpoints });
  const noDensity = (await ledger.records({ filters: { state: "no-valid-reading" } })).records;
  expect(await ledger.records()).toMatchObject({ count: 40 + noDensity.length });
  expect(noDensity).toMatchObject(
    name === "schema-4.sqlite"
      ? [{ subject: "piece:41", dry: "12.90 g", mass_g: 12.9, density_g_cm3: null, expanded_g_cm3: null }]
      : [],
  );
  const [amended] = (await ledger.records({ search: "H-0999" })).records;
  expect(amended).toMatchObject({ subject: "piece:2", amendments: 1, mass_g: 31.1003 });
  expect((await ledger.records({ filters: { voided: true } })).records[0]?.subject).toBe("piece:1");
  // The columns that a later schema added follow from the entries.
  expect(await ledger.records({ filters: { dryFromG: 31.1, dryToG: 31.1 } })).toMatchObject({ count: 40 });
  expect(amended).toMatchObject({ dry: "31.10 g", photos: 0, state: "consistent-not-unique" });
  expect(await ledger.records({ filters: { state: "consistent-not-unique" } })).toMatchObject({ count: 40 });
  expect(await ledger.records({ filters: { state: "consistent" } })).toMatchObject({ count: 0 });
  await weigh(ledger, "piece:new");
  expect(await ledger.verify()).toMatchObject({ good: true });
});
