import { gzipSync } from "node:zlib";
import { afterAll, beforeAll, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "./build.ts";

let made: TestBench;
let demo: TestBench;
beforeAll(async () => {
  made = await buildTestBench();
  demo = await buildTestBench(undefined, { demo: true });
  const { post } = made;
  await post("/bench/piece", {
    ticket: "A-17",
    description: "bar",
    claim: "ag-925",
    method: "hung",
    key: "heavy",
  });
  await post("/bench/typed-readings", { role: "dry", reading: "31.10", unit: "g" });
  for (let repeat = 0; repeat < 20; repeat++)
    await post("/bench/typed-readings", {
      role: "immersed",
      reading: `28.1${4 + (repeat % 2)}`,
      unit: "g",
      key: `${repeat}`,
    });
  await post("/bench/water", { celsius: "21.4" });
});
afterAll(() => Promise.all([made.close(), demo.close()]));

const browser = { host: "localhost:1", "accept-encoding": "identity" };

/** Bytes of a page with everything it loads, each gzipped; what a browser has cached is counted again. */
async function weightOf({ app }: TestBench, url: string): Promise<number> {
  const { body, statusCode } = await app.inject({ url, headers: browser });
  expect(statusCode, url).toBe(200);
  const loaded = [...body.matchAll(/<(?:script|img|link)[^>]* (?:src|href)="([^"]+)"/g)].map(
    ([, at]) => at ?? "",
  );
  expect(
    loaded.filter((at) => !at.startsWith("/") || at.startsWith("//")),
    `${url} loads from another host`,
  ).toEqual([]);
  const bytes = await Promise.all(
    [...new Set(loaded)].map(async (at) => {
      const asset = await app.inject({ url: at, headers: browser });
      expect(asset.statusCode, at).toBe(200);
      return gzipSync(asset.rawPayload).length;
    }),
  );
  return bytes.reduce((sum, one) => sum + one, gzipSync(body).length);
}

test("every page weighs less than 100 kB gzipped with all it loads, and loads nothing from elsewhere", async () => {
  const measured: [string, number][] = [["/ with a piece of 20 repeats", await weightOf(made, "/")]];
  await made.post("/bench/record", {});
  const pages = [
    "/",
    "/first-start",
    "/records",
    "/records/heavy",
    "/records/statistics",
    "/records/heavy/evidence",
    "/lots",
    "/balances",
    "/checks",
    "/checks/reference",
    "/metals",
    "/metals/au-916",
    "/metals/own",
    "/plan",
    "/plan?method=hung&claim=au-916&mass=31.1&massUnit=g&readability=0.01&readabilityUnit=g",
    "/plan/fineness?density=15.5&uDensity=0.05&metal=gold&colour=any",
    "/plan/two-bodies",
    "/specifications",
    "/settings",
    "/customer",
  ];
  for (const url of pages) measured.push([url, await weightOf(made, url)]);
  measured.push(["/ of the demonstration", await weightOf(demo, "/")]);
  const tooHeavy = measured.filter(([, bytes]) => bytes >= 100_000);
  expect(tooHeavy).toEqual([]);
  const [heaviest] = measured.toSorted(([, a], [, b]) => b - a);
  console.log(`heaviest page: ${heaviest?.[0]}, ${((heaviest?.[1] ?? 0) / 1000).toFixed(1)} kB`);
});
