import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildTestBench, type TestBench } from "./build.ts";

/** Words that every English sentence has one of and no German one has. */
const english =
  /\b(the|and|with|of|is|are|were|not|to|be|from|which|that|this|than|its|it|by|for|or|on|at|no|nothing|what|how)\b/i;
/** The texts a person reads or hears: between the tags, and in the attributes that are read out. What is marked as English is left out. */
function textsOf(page: string): string[] {
  const main = page.slice(page.indexOf("<body"));
  const plain = main
    .replace(/<(span|p|main|td|code|pre)[^>]* lang="en"[^>]*>[\s\S]*?<\/\1>/g, "")
    .replace(/<(script|code|pre)[\s\S]*?<\/\1>/g, "");
  const between = plain.split(/<[^>]*>/);
  const readOut = [...plain.matchAll(/ (?:aria-label|placeholder|alt|data-say|data-head)="([^"]+)"/g)].map(
    ([, text]) => text ?? "",
  );
  return [...between, ...readOut]
    .map((text) => text.replaceAll("&quot;", '"').replaceAll("&amp;", "&").replace(/\s+/g, " ").trim())
    .filter((text) => text.length > 1);
}

const germanOnly = { host: "localhost:1", "accept-language": "de-DE,de;q=0.9,en;q=0.5" };

let made: TestBench;
let record = "";
beforeAll(async () => {
  made = await buildTestBench();
  const { post } = made;
  await post("/bench/piece", {
    ticket: "A-17",
    description: "Barren",
    claim: "au-916",
    method: "hung",
    key: "first",
  });
  await post("/bench/typed-readings", { role: "dry", reading: "31,10", unit: "g" });
  for (const reading of ["28,10", "28,16", "28,22"])
    await post("/bench/typed-readings", { role: "immersed", reading, unit: "g" });
  await post("/bench/water", { celsius: "21,4" });
  record = made.bench.piece?.id ?? "";
  await post("/bench/record", {});
  await post(`/records/${record}/laboratory`, {
    metal: "gold",
    permille: "916,2",
    expanded: "0,4",
    laboratory: "Probieramt am Hafen",
    report: "L-118",
    method: "Kupellation, ISO 11426",
    date: "2026-03-30",
  });
  await post("/bench/piece", {
    ticket: "A-18",
    description: "Ring",
    claim: "au-750",
    method: "displaced",
    key: "second",
  });
  await post("/bench/typed-readings", { role: "dry", reading: "8,41", unit: "g" });
  await post("/bench/typed-readings", { role: "rise", reading: "0,95", unit: "g" });
  await post("/bench/water", { celsius: "70" });
});
afterAll(() => made.close());

describe("every page in German", () => {
  const pages = (): string[] => [
    "/",
    "/first-start",
    "/records",
    `/records/${record}`,
    `/records/${record}/evidence`,
    `/records/${record}/laboratory`,
    `/records/${record}/price?metal=gold&price=60&currency=EUR&per=g&source=Tafel&at=2026-03-02+09:30`,
    "/records/none",
    "/checks",
    "/checks/check-weight",
    "/checks/reference",
    "/checks/linearity",
    "/metals",
    "/metals?q=silber",
    "/metals/au-916",
    "/metals/own",
    "/plan?method=hung&claim=au-916&mass=31,1&massUnit=g&readability=0,01&readabilityUnit=g&repeatability=&pieces=1",
    "/plan/fineness?density=15,5&uDensity=0,05&metal=gold&colour=any",
    "/plan/two-bodies?question=rest&massG=5&density=8&uDensity=0,1&knownMassG=1&knownDensity=3,5&uKnownDensity=0,01",
    "/specifications",
    "/settings",
    "/customer",
    "/balances",
    "/balances/learning",
    "/balances/asking",
    "/nirgendwo",
  ];

  it("holds no English sentence that is not marked as one", async () => {
    for (const url of pages()) {
      const { body } = await made.app.inject({ url, headers: germanOnly });
      expect.soft(body, url).toContain('<html lang="de"');
      const left = textsOf(body).filter((text) => english.test(text));
      expect.soft([...new Set(left)], url).toEqual([]);
    }
  });
});
