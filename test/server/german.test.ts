import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { starterSet } from "../../server/metals/specifications/starter-set.ts";
import { buildTestBench, type TestBench } from "./build.ts";
import { openedLot, weighed } from "./lots/screened.ts";

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
    .map((text) =>
      text
        .replace(/\/dev\/\S+/g, "")
        .replaceAll("&quot;", '"')
        .replaceAll("&amp;", "&")
        .replace(/\s+/g, " ")
        .trim(),
    )
    .filter((text) => text.length > 1);
}

/** What a page marks as English, each with its words. */
const markedIn = (page: string) =>
  [...page.matchAll(/<(\w+)[^>]* lang="en"[^>]*>([\s\S]*?)<\/\1>/g)]
    .map(([, , text]) => (text ?? "").replaceAll("&amp;", "&").replaceAll("&quot;", '"'))
    .filter((text) => !sources.has(text));

/** Laws, books and tables are named in the language they were printed in. */
const sources = new Set(starterSet.map(({ source }) => source));

const germanOnly = { host: "localhost:1", "accept-language": "de-DE,de;q=0.9,en;q=0.5" };

let made: TestBench;
let record = "";
let lot = "";
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
  record = made.bench.item?.id ?? "";
  await post("/bench/record", {});
  await post(`/records/${record}/laboratory`, {
    metal: "gold",
    permille: "916,2",
    expanded: "0,4",
    laboratory: "Probieramt am Hafen",
    report: "L-118",
    method: "Kupellation, ISO 11426",
    date: "2024-03-28",
  });
  await made.settings.keep({ secondUnit: "dwt" });
  lot = await openedLot(made, { name: "Partie 7", gross: "14,70", count: "2" });
  await post(`${lot}/pieces`, { celsius: "21,4" });
  await weighed(made, lot, "B-1", "12,900", "11,902");
  await weighed(made, lot, "B-2", "1,84", "1,70");
  await post(`${lot}/again`, { again: "B-2", againTyped: "1,90", unit: "g" });
  await post(`${lot}/payout`, {
    metal: "gold",
    price: "60",
    currency: "EUR",
    per: "g",
    source: "Tafel am Hafen",
    at: "2026-03-02 09:30",
    rate: "95",
    rounding: "down",
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
    "/balances/profiles/none",
    "/lots",
    "/lots/none",
    lot,
    `${lot}/payout`,
    "/imports",
    "/tickets",
    "/plan/density-matches",
    "/settings/ledger",
    "/settings/retention",
    "/settings/tokens",
    `/records/${record}/share`,
    `/records/${record}/reports/none`,
    "/nirgendwo",
  ];

  it("names the claims of a lot in German", async () => {
    const { body } = await made.app.inject({ url: "/lots", headers: germanOnly });
    expect(body).toContain("Feinsilber 999");
    expect(body).not.toMatch(/<option value="ag-[^"]*"[^>]*>Silver/);
  });

  it("holds no English sentence that is not marked as one", async () => {
    for (const url of pages()) {
      const { body } = await made.app.inject({ url, headers: germanOnly });
      expect.soft(body, url).toContain('<html lang="de"');
      const left = textsOf(body).filter((text) => english.test(text));
      expect.soft([...new Set(left)], url).toEqual([]);
    }
  });

  it("marks nothing as English: every sentence from behind the pages is told", async () => {
    const left = new Map<string, string[]>();
    for (const url of pages()) {
      const { body } = await made.app.inject({ url, headers: germanOnly });
      const marked = markedIn(body);
      if (marked.length > 0) left.set(url, marked);
    }
    expect(Object.fromEntries(left)).toEqual({});
  });

  it.each([
    ["/bench/piece", { ticket: "", method: "hung", claim: "ag-999", key: "x" }],
    ["/bench/piece", { ticket: "A-1", method: "lever", claim: "gold 12", key: "x" }],
    ["/bench/typed-readings", { role: "dry", reading: "zwölf", unit: "g" }],
    ["/bench/typed-readings", { role: "dry", reading: "-3", unit: "g" }],
    ["/bench/typed-readings", { role: "dry", reading: "3", unit: "Pfund" }],
    ["/bench/water", { celsius: "70" }],
    ["/bench/water", { celsius: "900" }],
    ["/bench/details", { pieces: "2,5" }],
    ["/bench/call-off", { reason: "" }],
    ["/settings/bench", { readability: "x" }],
    ["/settings/organisation", { accreditation: "T-1" }],
    ["/settings/tokens", { name: "", scopes: "" }],
    ["/settings/retention", { months: "x" }],
    ["/lots", { name: "" }],
    ["/lots", { name: "Partie 7", count: "viele" }],
    ["/specifications", { name: "", source: "", madeOf: "" }],
    ["/metals/own", { name: "", composition: "Ag viel" }],
    ["/checks/check-weight", { stated: "x", class: "F1", "reading-1": "y", unit: "g", by: "" }],
    ["/checks/linearity", {}],
    ["/checks/thermometer", {}],
    ["/balances/choice", { port: "nirgends" }],
    ["/balances/finding", { port: "" }],
    ["/balances/asking", {}],
    ["/balances/learning", { go: "x" }],
    ["/balances/profiles", {}],
    ["/records/first/amendments", { celsius: "x", by: "", reason: "" }],
    ["/records/first/voiding", { by: "", reason: "" }],
    ["/records/first/evidence", { kind: "hammer" }],
    ["/records/first/evidence", { kind: "conductivity", percent: "900" }],
  ])("refuses in German: %s %o", async (url, fields) => {
    const { body } = await made.post(url, { ...fields }, germanOnly);
    expect(body).toContain("<");
    expect(markedIn(body)).toEqual([]);
    expect(textsOf(body).filter((text) => english.test(text))).toEqual([]);
  });
});
