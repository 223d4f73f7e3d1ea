import { afterEach, beforeEach, expect, test } from "vitest";
import { checkRecordFile } from "../../../server/ledger/record-file.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { talkativePng } from "../photos/pictures.ts";
import { host, recorded, sendPhoto, textOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
  await recorded(at, { id: "M-0301", customer: "book 7, page 31", dry: "31.10", immersed: "28.14" });
  await recorded(at, { id: "M-0302", customer: "book 7, page 32", dry: "12.95", immersed: "11.90" });
  // the same mass read in pennyweight, 20.00 dwt = 31.1034768 g (NIST SP 811 B.8)
  await recorded(at, {
    id: "M-0303",
    customer: "book 7, page 32",
    dry: "20.00",
    immersed: "18.09",
    unit: "dwt",
  });
});
afterEach(() => at.close());

/** Tickets on the page of the list. */
async function tickets(query: string): Promise<string[]> {
  const { body } = await at.app.inject({ url: `/records?${query}`, headers: { host } });
  return [...body.matchAll(/href="\/records\/M-\d+">(M-\d+)</g)].map(([, ticket = ""]) => ticket);
}

test("a piece is found by who brought it, by its ticket, by its mass and by its photo, all from the address", async () => {
  await sendPhoto(at, "/records/M-0301/photos", talkativePng());
  expect(await tickets("q=page+31")).toEqual(["M-0301"]);
  expect(await tickets("q=book+7+page+32")).toEqual(["M-0303", "M-0302"]);
  expect(await tickets("q=M-0302")).toEqual(["M-0302"]);
  expect(await tickets("photo=with")).toEqual(["M-0301"]);
  expect(await tickets("photo=without")).toEqual(["M-0303", "M-0302"]);
  const today = new Date().toISOString().slice(0, 10);
  expect(await tickets(`mass=12.8+to+13&from=${today}&to=${today}`)).toEqual(["M-0302"]);
  expect(await tickets(`mass=12.8+to+13&to=2020-01-01`)).toEqual([]);
  expect(await tickets(`mass=${encodeURIComponent("31.1 ± 0.2")}&q=page+31`)).toEqual(["M-0301"]);
});

test.each([
  ["31.10", ["M-0303", "M-0301"]],
  ["31.100", ["M-0301"]],
  ["31.1", ["M-0303", "M-0301"]],
  ["31.2", []],
  ["20 dwt", ["M-0303", "M-0301"]],
  ["13 +- 0.1", ["M-0302"]],
  ["31.3-31", ["M-0303", "M-0301"]],
  ["12,95", ["M-0302"]],
])("a mass of %s is every reading a display could mean by it", async (mass, found) => {
  expect(await tickets(`mass=${encodeURIComponent(mass)}`)).toEqual(found);
});

test("a mass that cannot be read narrows nothing, and the page says so with what was typed", async () => {
  for (const typed of ["heavy", "31.1 ±", "31.1 stone", "1..2..3", "1.2.3 to"]) {
    expect(await tickets(`mass=${encodeURIComponent(typed)}`)).toHaveLength(3);
    expect(await textOf(at, `/records?mass=${encodeURIComponent(typed)}`)).toContain(
      `The mass “${typed}” is not understood and narrows nothing.`,
    );
  }
});

test("the list says what the balance showed, who brought it and how many photos there are; the one record goes out as a file that proves itself", async () => {
  await sendPhoto(at, "/records/M-0303/photos", talkativePng());
  const text = await textOf(at, "/records?q=page+32");
  expect(text).toContain("20.00 dwt");
  expect(text).toContain("brought by book 7, page 32");
  expect(text).toContain("1 photo");
  expect(text).toContain("2 of 3 records");
  const { body } = await at.app.inject({ url: "/records/M-0303/file", headers: { host } });
  expect(checkRecordFile(JSON.parse(body))).toMatchObject({ good: true });
  // who brought it is kept apart: the file holds its hash, and nothing of anybody else
  const referenceOf = (who: string) => at.ledger.names?.all.find(({ name }) => name === who)?.reference;
  expect(body).toContain(referenceOf("book 7, page 32"));
  for (const kept of ["page 3", referenceOf("book 7, page 31") ?? "nobody"]) expect(body).not.toContain(kept);
  expect(body).not.toContain("M-0302");
});

test("who brought a piece is amended with a reason, and the piece is found by the new words only", async () => {
  const amended = await at.post("/records/M-0301/amendments", {
    customer: "book 8, page 2",
    by: "KR",
    reason: "wrong page",
  });
  expect(amended.statusCode).toBe(303);
  expect(await tickets("q=book+8")).toEqual(["M-0301"]);
  expect(await tickets("q=page+31")).toEqual([]);
  expect(await textOf(at, "/records/M-0301")).toContain("Brought by: book 7, page 31 → book 8, page 2");
});
