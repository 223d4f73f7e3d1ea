import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, newLedgerFile, type TestBench } from "../build.ts";
import { host, wordsOf } from "./recorded.ts";

const maker = join("dist", "test", "scale-process.js");
/** More than are counted, so that the list must say so. */
const many = 1200;

let at: TestBench;
beforeEach(async () => {
  const file = newLedgerFile();
  execFileSync(process.execPath, [maker, "make", file, String(many)]);
  at = await buildTestBench(file);
});
afterEach(() => at.close());

/** As the page asks while one types; without the header, as a browser opens the address. */
const part = (query: string) =>
  at.app.inject({ url: `/records?${query}`, headers: { host, "hx-request": "true" } });

test("what is typed narrows the list letter by letter, and the address alone gives the same list", async () => {
  const counts: number[] = [];
  for (const typed of ["", "H-000", "H-00002", "H-0000217"]) {
    const text = wordsOf((await part(`q=${typed}`)).body);
    counts.push(Number(/(\d+) (?:of more than 1000 )?records/.exec(text)?.[1]));
    const whole = await at.app.inject({ url: `/records?q=${typed}`, headers: { host } });
    if (typed !== "") expect(whole.body).toContain(`value="${typed}"`);
    expect(wordsOf(whole.body)).toContain(/[a-z ]*\d+ (?:of more than 1000 )?records/.exec(text)?.[0]);
  }
  // tickets H-0000000 onwards: all, all, those from 200 to 299, one
  expect(counts).toEqual([1000, 1000, 100, 1]);
  expect(wordsOf((await part("q=")).body)).toContain("more than 1000 records");
});

test("a filter that leaves more than are counted says so of what it found, and one that leaves fewer gives the number", async () => {
  const { records } = await at.ledger.records({ page: { size: 500 } });
  const text = async (query: string) => wordsOf((await part(query)).body);
  expect(await text("mass=0+to+99.9")).toContain("more than 1000 of more than 1000 records, 50 shown");
  expect(await text("from=2016-01-01")).toContain("more than 1000 of more than 1000 records, 50 shown");
  // every third has a photo
  expect(await text("photo=with")).toContain("400 of more than 1000 records");
  const dry = records[0]?.dry_g ?? Number.NaN;
  expect(await text(`mass=${dry.toFixed(4)}`)).toContain("1 of more than 1000 records");
});

test("filters and words narrow together, every row fits them, and older pages keep them in their address", async () => {
  const { body } = await part("q=H-00&state=excluded");
  const rows = [...body.matchAll(/<tr[\s\S]*?<\/tr>/g)].map(([row]) => wordsOf(row)).slice(1);
  expect(rows.length).toBeGreaterThan(10);
  for (const row of rows) expect(row).toContain("excluded");
  const older = /href="(\/records\?[^"]+)" rel="prev next"|href="(\/records\?[^"]+)" rel="next"/.exec(body);
  const href = (older?.[1] ?? older?.[2] ?? "").replaceAll("&amp;", "&");
  expect(new URLSearchParams(href.split("?")[1]).get("state")).toBe("excluded");
  expect(new URLSearchParams(href.split("?")[1]).get("q")).toBe("H-00");
});

test("nothing found says so, and marks of the search language are only letters", async () => {
  for (const typed of ["zzz", '"', "*", "a OR b", "H-00 -1"]) {
    const answer = await part(`q=${encodeURIComponent(typed)}`);
    expect(answer.statusCode).toBe(200);
  }
  expect(wordsOf((await part("q=zzz")).body)).toContain("No record fits");
});
