import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { csvRows } from "../../../server/ledger/csv.ts";
import { buildTestBench, newLedgerFile, type TestBench } from "../build.ts";
import { host } from "./recorded.ts";

let large: TestBench;
let typed: TestBench;
beforeAll(async () => {
  const file = newLedgerFile();
  // 1200 records from 2016-01-01T00:00Z on, one every five minutes
  execFileSync(process.execPath, [join("dist", "test", "scale-process.js"), "make", file, "1200"]);
  [large, typed] = await Promise.all([buildTestBench(file), buildTestBench()]);
});
afterAll(() => Promise.all([large.close(), typed.close()]));

const page = async (at: TestBench, query: string) =>
  (await at.app.inject({ url: `/records/statistics${query}`, headers: { host } })).body;

/** The rows of the data below a plot, cell by cell. */
function dataOf(body: string, id: string): string[][] {
  const figure = new RegExp(`<figure class="plot" id="${id}">.*?</figure>`, "s").exec(body)?.[0] ?? "";
  return [...figure.matchAll(/<tr>(.*?)<\/tr>/gs)]
    .slice(1)
    .map(([, row = ""]) => [...row.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gs)].map(([, cell = ""]) => cell));
}

test("what a page counts is what the exported records of these days hold, by day and by claim", async () => {
  const body = await page(large, "?from=2016-01-02&to=2016-01-04");
  const csv = (await large.app.inject({ url: "/records.csv", headers: { host } })).body;
  const [head, ...rows] = [...csvRows(csv)].map(({ cells }) => cells);
  const column = (name: string) => head!.indexOf(name);
  const within = rows.filter((cells) => {
    const day = cells[column("measured at (ISO 8601 UTC)")]!.slice(0, 10);
    return day >= "2016-01-02" && day <= "2016-01-04";
  });
  const counted = (name: string, length?: number) => {
    const counts = new Map<string, number[]>();
    for (const cells of within) {
      const key = cells[column(name)]!.slice(0, length);
      const of = ["consistent", "consistent-not-unique", "excluded"].indexOf(cells[column("state")]!);
      const count = counts.get(key) ?? [0, 0, 0, 0];
      count[of < 0 ? 3 : of]! += 1;
      counts.set(key, count);
    }
    return [...counts].map(([key, count]) => [key, ...[count.reduce((a, b) => a + b), ...count].map(String)]);
  };
  const days = dataOf(body, "count-by-time").map((cells) => cells.slice(0, 6));
  expect(days).toEqual(counted("measured at (ISO 8601 UTC)", 10).toSorted());
  expect(days.map(([, count]) => count)).toEqual(["288", "288", "288"]);
  const claims = dataOf(body, "count-by-claim").map((cells) => cells.slice(1, 6).join(" "));
  expect(claims.toSorted()).toEqual(
    counted("claim")
      .map(([, ...count]) => count.join(" "))
      .toSorted(),
  );
  const lots = dataOf(body, "count-by-lot").map(([name, count]) => [name, count]);
  // 200 pieces a lot; the second day begins with piece 288
  expect(lots).toContainEqual(["lot 2", "200"]);
  expect(lots).toContainEqual(["lot 1", "112"]);
});

test("the scatter is that of the repeats of a load about their mean, dry and immersed apart", async () => {
  const { post } = typed;
  await post("/bench/piece", {
    ticket: "S-1",
    description: "bar",
    claim: "ag-999",
    method: "hung",
    key: "s",
  });
  for (const reading of ["31.1035", "31.1037", "31.1036"])
    await post("/bench/typed-readings", { role: "dry", reading, unit: "g", key: reading });
  for (const reading of ["28.1435", "28.1439"])
    await post("/bench/typed-readings", { role: "immersed", reading, unit: "g", key: reading });
  await post("/bench/water", { celsius: "21.4" });
  const recorded = await post("/bench/record", {});
  expect(recorded.statusCode).toBe(303);
  // n − 1 in the denominator: 0.1 mg of three readings, 0.4 / √2 mg of two
  expect(dataOf(await page(typed, ""), "scatter-1").map((cells) => cells.slice(2))).toEqual([
    ["0.10", "2"],
    ["0.28", "1"],
  ]);
});

test("a range is told by days, months or years; one that holds nothing, and one that is none, are no error", async () => {
  const names = async (query: string) =>
    dataOf(await page(large, query), "count-by-time").map(([name]) => name);
  expect(await names("?from=2015-12-01&to=2016-02-10")).toEqual(["2015-12", "2016-01", "2016-02"]);
  expect(await names("?from=2012-06-01&to=2016-02-10")).toEqual(["2012", "2013", "2014", "2015", "2016"]);
  expect(await names("?from=2010-01-01&to=2010-02-01")).toEqual([]);
  const answer = await large.app.inject({ url: "/records/statistics?from=x&to=1e9", headers: { host } });
  expect(answer.statusCode).toBe(200);
});
