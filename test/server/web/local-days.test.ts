import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { csvRows } from "../../../server/ledger/csv.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { openedLot, weighed } from "../lots/screened.ts";
import { codesIn } from "../page-fields.ts";
import { wordsOfPdf } from "../reports/pdf-text.ts";
import { host, recorded, textOf } from "./recorded.ts";

let at: TestBench;
/** The clock of the machine; only its date is set, timers run. */
const clock = (moment: string) => vi.setSystemTime(new Date(moment));
const place = (timeZone: string) => at.settings.keep({ place: { timeZone, currency: "EUR" } });

// an evening in Berlin, just before and just after midnight; in UTC all of it is the 28th
const before = "2026-11-28T22:59:30.000Z";
const after = "2026-11-28T23:00:30.000Z";

beforeAll(async () => {
  vi.useFakeTimers({ toFake: ["Date"] });
  clock(before);
  at = await buildTestBench();
  await place("Europe/Berlin");
  await recorded(at, { id: "before", dry: "31.70", immersed: "28.14" });
  clock(after);
  await recorded(at, { id: "after", dry: "12.90", immersed: "11.93" });
});
afterAll(async () => {
  await at.close();
  vi.useRealTimers();
});

const listed = async (query: string) => {
  const { body } = await at.app.inject({ url: `/records?${query}`, headers: { host } });
  return ["before", "after"].filter((id) => body.includes(`/records/${id}"`));
};

test("a day of the list is a day of the place: midnight parts it, not that of UTC", async () => {
  expect(await listed("from=2026-11-29&to=2026-11-29")).toEqual(["after"]);
  expect(await listed("from=2026-11-28&to=2026-11-28")).toEqual(["before"]);
  await place("UTC");
  expect(await listed("from=2026-11-28&to=2026-11-28")).toEqual(["before", "after"]);
  await place("Europe/Berlin");
});

test("pages, CSV, label and report tell the clock of the place; the ledger keeps UTC", async () => {
  const shown = "2026-11-29 00:00:30 +01:00";
  expect(await textOf(at, "/records")).toContain(shown);
  expect(await textOf(at, "/records/after")).toContain(shown);
  expect(await textOf(at, "/records/after")).not.toMatch(/\bUTC\b/);
  const csv = (await at.app.inject({ url: "/records.csv", headers: { host } })).body;
  const [head, row] = [...csvRows(csv)];
  const local = head?.cells.indexOf("measured at (clock of the place)") ?? -1;
  expect([row?.cells[0], row?.cells[local]]).toEqual([after, "2026-11-29T00:00:30+01:00"]);
  const label = await at.app.inject({ url: "/records/after/label.pdf", headers: { host } });
  expect(wordsOfPdf(label.rawPayload)).toContain("2026-11-29");
  const issued = await at.post("/records/after/reports", { language: "de", step: "r1" });
  const [path, query] = String(issued.headers.location).split("?");
  const pdf = await at.app.inject({ url: `${path}.pdf?${query}`, headers: { host } });
  const report = wordsOfPdf(pdf.rawPayload);
  expect(report).toMatch(/29\. Nov\.? 2026, 00:00/);
  expect(report).toContain("UTC+01:00");
  expect(report).not.toMatch(/28\. Nov/);
  expect((await at.ledger.entriesOf("after")).every(({ at: when }) => when === after)).toBe(true);
});

test("a laboratory's report of today is taken in Sydney before eleven, and one of tomorrow is not", async () => {
  // nine in the morning of the 29th in Sydney; in UTC it is still the 28th
  clock("2026-11-28T22:00:00.000Z");
  await place("Australia/Sydney");
  const assay = (date: string) =>
    at.post("/records/before/laboratory", {
      metal: "gold",
      permille: "585",
      laboratory: "an invented laboratory",
      report: "L-1",
      method: "cupellation",
      date,
    });
  const tomorrow = await assay("2026-11-30");
  expect(tomorrow.statusCode).toBe(422);
  expect(codesIn(tomorrow.body)).toContain("assay.refused.day-to-come");
  expect((await assay("2026-11-29")).statusCode).toBe(303);
});

test("the hour that comes twice: lots opened in both are told apart, and a price read in it is asked about", async () => {
  await place("Europe/Berlin");
  // 02:30 twice on the morning of 25 October 2026
  clock("2026-10-25T00:30:00.000Z");
  const first = await openedLot(at, { name: "Lot 1", gross: "12.90", count: "1" });
  clock("2026-10-25T01:30:00.000Z");
  await openedLot(at, { name: "Lot 2", gross: "12.90", count: "1" });
  const text = await textOf(at, "/lots");
  expect(text).toContain("2026-10-25 02:30:00 +02:00");
  expect(text).toContain("2026-10-25 02:30:00 +01:00");
  const price = { metal: "gold", price: "60", currency: "EUR", per: "g", source: "board", rate: "100" };
  const asked = await at.post(`${first}/payout`, { ...price, at: "2026-10-25 02:30" });
  expect(codesIn(asked.body)).toContain("price.refused.twice");
  const skipped = await at.post(`${first}/payout`, { ...price, at: "2026-03-29 02:30" });
  expect(codesIn(skipped.body)).toContain("price.refused.skipped");
  expect((await at.post(`${first}/payout`, { ...price, at: "2026-10-25 02:30 +02:00" })).statusCode).toBe(
    303,
  );
  await at.post(`${first}/pieces`, { celsius: "21.4" });
  await weighed(at, first, "31", "12.90", "11.932");
  await at.post(`${first}/closing`, { by: "KR" });
  expect(await textOf(at, first)).toContain("2026-10-25 02:30:00 +01:00");
});

test("the place is stated on a page: a zone of the list and a currency; both stand on the forms that need them", async () => {
  await place("");
  const zone = await at.post("/settings/place", { timeZone: "Mars/Olympus", currency: "EUR" });
  expect([zone.statusCode, codesIn(zone.body).includes("settings.place.no-zone")]).toEqual([422, true]);
  expect(zone.body).toContain('value="Mars/Olympus"');
  const money = await at.post("/settings/place", { timeZone: "Asia/Kolkata", currency: "euros" });
  expect(codesIn(money.body)).toContain("price.refused.currency");
  expect((await at.post("/settings/place", { timeZone: "Asia/Kolkata", currency: "inr" })).statusCode).toBe(
    303,
  );
  expect(at.settings.now.place).toEqual({ timeZone: "Asia/Kolkata", currency: "INR" });
  expect(await textOf(at, "/records")).toContain("2026-11-29 04:30:30 +05:30");
  const lot = await openedLot(at, { name: "Lot 3" });
  const page = await at.app.inject({ url: `${lot}/payout`, headers: { host } });
  expect(page.body).toMatch(/name="currency"[^>]*value="INR"/);
});
