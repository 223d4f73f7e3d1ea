import { randomBytes } from "node:crypto";
import { afterAll, beforeAll, expect, test } from "vitest";
import { csvRows } from "../../../server/ledger/csv.ts";
import { newToken } from "../../../server/ledger/tokens.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { openedLot, weighed } from "../lots/screened.ts";
import { wordsOfPdf } from "../reports/pdf-text.ts";
import { host, textOf } from "./recorded.ts";

/*
 * One number a thing: a lot of two pieces, one paid by a laboratory and one by its density, is closed, and every number of
 * it is looked for at every door: pages, API, CSV, label, report and the settlement's paper in three languages. Invented.
 */

let at: TestBench;
let lot: string;
let record: string;
let doors: { page: string; list: string; lot: string; payout: string };
let papers: Record<"label" | "en" | "de" | "es" | "report-en" | "report-de" | "report-es", string>;
// biome-ignore lint/suspicious/noExplicitAny: what a stranger reads of the API
let api: { record: any; lot: any };
let csv: Record<string, string>;

const fetched = async (url: string, headers: Record<string, string> = {}) =>
  at.app.inject({ url, headers: { host, ...headers } });

beforeAll(async () => {
  at = await buildTestBench();
  lot = await openedLot(at, { gross: "22.90", count: "2" });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weighed(at, lot, "31", "12.90", "11.932");
  await weighed(at, lot, "32", "10.00", "9.25");
  const { records } = await at.ledger.records({ filters: { ticket: "32" } });
  record = records[0]?.subject ?? "";
  const [other] = (await at.ledger.records({ filters: { ticket: "31" } })).records;
  await at.post(`/records/${other?.subject}/laboratory`, {
    ...{ metal: "gold", permille: "585.2", laboratory: "Hafenlabor", report: "L-1" },
    ...{ method: "Kupellation", date: "2024-03-28" },
  });
  await at.post(`${lot}/payout`, {
    ...{ metal: "gold", price: "60.25", currency: "EUR", per: "g", source: "Hafen" },
    ...{ at: "2026-03-02 09:30", rate: "95", rounding: "down" },
  });
  await at.post(`${lot}/closing`, { by: "KR" });
  const { token, tokenHash } = newToken(randomBytes(32));
  const scopes = ["records:read", "lots:read"] as const;
  await at.ledger.append("token-issued", "tokens", { name: "test", tokenHash, scopes: [...scopes] });
  const asked = async (url: string) => (await fetched(url, { authorization: `Bearer ${token}` })).json();
  api = { record: await asked(`/api/records/${record}`), lot: await asked(`/api${lot}`) };
  const [head, ...rows] = [...csvRows((await fetched("/records.csv")).body)];
  const row = rows.find(({ cells }) => cells.includes(record));
  csv = Object.fromEntries((head?.cells ?? []).map((name, place) => [name, row?.cells[place] ?? ""]));
  doors = {
    page: await textOf(at, `/records/${record}`),
    list: await textOf(at, "/records?q=32"),
    lot: await textOf(at, lot),
    payout: await textOf(at, `${lot}/payout`),
  };
  const pdf = async (url: string) => wordsOfPdf((await fetched(url)).rawPayload);
  const report = async (language: string) => {
    const issued = await at.post(`/records/${record}/reports`, { language });
    const [path, query] = String(issued.headers.location).split("?");
    return pdf(`${path}.pdf?${query}`);
  };
  const settlement = async (language: string) => {
    await at.post(`${lot}/prints`, { language });
    const entries = await at.ledger.entriesOf(lot.replace("/lots/", ""));
    return pdf(`${lot}/prints/${entries.findLast(({ kind }) => kind === "settlement-printed")?.id}`);
  };
  papers = {
    label: await pdf(`/records/${record}/label.pdf`),
    en: await settlement("en"),
    de: await settlement("de"),
    es: await settlement("es"),
    "report-en": await report("en"),
    "report-de": await report("de"),
    "report-es": await report("es"),
  };
}, 60_000);
afterAll(() => at.close());

/** The numbers of the first group of every match, with a point for the decimals. */
function numbersIn(text: string, shape: RegExp): string[] {
  return [...text.replaceAll(/\s+/g, " ").matchAll(shape)].map(([, found = ""]) =>
    found.replaceAll(/[.\s](?=\d{3},)/g, "").replace(",", "."),
  );
}

/** That a shown number is this value, in every digit that is shown. */
function mustBe(shown: string | undefined, value: number, where: string): void {
  expect(shown, where).toMatch(/^-?\d+(\.\d+)?$/);
  const decimals = shown?.split(".")[1]?.length ?? 0;
  expect(Math.abs(Number(shown) - value), `${where}: ${shown} for ${value}`).toBeLessThanOrEqual(
    0.5 * 10 ** -decimals + 1e-12,
  );
}

/** What of a piece stands everywhere, by where. */
const ofPiece = () => ({
  "record page": doors.page,
  "list of records": doors.list,
  label: papers.label,
  "report en": papers["report-en"],
  "report de": papers["report-de"],
  "report es": papers["report-es"],
});

/** What the page of the lot says of the piece. */
const rowOfLot = () => /\b32 [^±]*10\.00 g [^±]*± [\d.]+/.exec(doors.lot)?.[0] ?? "";

test("the density of a piece and its uncertainty are one at every door", () => {
  const { density_g_cm3: density, expanded_g_cm3: expanded } = api.record.record;
  const piece = api.lot.pieces.find(({ ticket }: { ticket: string }) => ticket === "32");
  expect([piece.density_g_cm3, piece.expanded_g_cm3]).toEqual([density, expanded]);
  expect([api.record.statement.density_g_cm3, api.record.statement.expanded_g_cm3]).toEqual([
    density,
    expanded,
  ]);
  expect(Number(csv["density (g/cm3)"])).toBe(density);
  expect(Number(csv["expanded uncertainty of density (g/cm3)"])).toBe(expanded);
  for (const [where, text] of Object.entries({ ...ofPiece(), lot: rowOfLot() })) {
    const at20 = api.record.statement.density_20_g_cm3;
    const shown = numbersIn(text, /(\d+[.,]\d+) ± \d/g).filter((one) => one !== "10.00");
    expect(shown.length, where).toBeGreaterThan(0);
    const near = shown.filter((one) => Math.abs(Number(one) - density) < 0.5);
    expect(near.length, where).toBeGreaterThan(0);
    for (const one of near)
      mustBe(one, Math.abs(Number(one) - at20) < Math.abs(Number(one) - density) ? at20 : density, where);
    const [u] = numbersIn(text, new RegExp(`${near[0]?.replace(".", "[.,]")} ± (\\d+[.,]\\d+)`, "g"));
    mustBe(u, expanded, where);
  }
});

test("the dry mass of a piece is one at every door, as its balance showed it", () => {
  const piece = api.lot.pieces.find(({ ticket }: { ticket: string }) => ticket === "32");
  expect([api.record.record.dry_g, piece.dry_g, Number(csv["dry (g)"]), csv["dry reading"]]).toEqual([
    10,
    10,
    10,
    "10.00 g",
  ]);
  expect([piece.mass_g, Number(csv["mass (g)"]), api.record.statement.mass_g]).toEqual([
    api.record.record.mass_g,
    api.record.record.mass_g,
    api.record.record.mass_g,
  ]);
  for (const [where, text] of Object.entries({ ...ofPiece(), lot: doors.lot }))
    expect(text, where).toMatch(/\b10[.,]00 g/);
});

test("fineness and fine mass of a piece are those of its statement wherever they stand", () => {
  const { permille, fine_g } = api.record.statement.fineness;
  const [low, high] = [...doors.page.matchAll(/Fineness (\d+) to (\d+) ‰/g)][0]?.slice(1) ?? [];
  mustBe(low, permille[0], "record page");
  mustBe(high, permille[1], "record page");
  const row = /32 .*?10\.00 g .*?([\d.]+) to ([\d.]+) g/.exec(doors.lot);
  mustBe(row?.[1], fine_g[0], "lot row");
  mustBe(row?.[2], fine_g[1], "lot row");
  const line = api.lot.settlement.lines.find(
    (one: { rests_on: { source: string } }) => one.rests_on.source === "density",
  );
  mustBe(Number(line.fine_g.low).toFixed(5), fine_g[0], "settlement");
  mustBe(Number(line.fine_g.high).toFixed(5), fine_g[1], "settlement");
});

test("the sums of a closed lot are one on its page, its payout, its paper in three languages and over the API", async () => {
  const { settlement } = api.lot;
  const entries = await at.ledger.entriesOf(lot.replace("/lots/", ""));
  const closed = entries.findLast((entry) => entry.kind === "lot-closed");
  expect(closed?.kind === "lot-closed" && closed.body.settlement).toEqual(settlement);
  expect(api.lot.lot.closed.settlement).toEqual(settlement);
  const [{ paid, low, high }] = settlement.totals;
  // 12.90 g × 585.2 ‰ × 60.25 × 95 % = 432.09…, and the low end of what the density leaves
  expect(settlement.lines.map((one: { pay: { low: string } }) => one.pay.low)).toContain("432.09");
  const withComma = (text: string) => text.replace(".", ",");
  const sums = [
    ["lot", doors.lot, paid],
    ["payout", doors.payout, paid, low, high],
    ["paper en", papers.en, paid, low, high],
    ["paper de", papers.de, withComma(paid), withComma(low), withComma(high)],
    ["paper es", papers.es, withComma(paid), withComma(low), withComma(high)],
  ];
  for (const [where, text = "", ...shown] of sums)
    for (const one of shown) expect(text.replaceAll(/\s+/g, " "), where).toContain(`${one} EUR`);
  for (const { pay, fine_g, net_g } of settlement.lines) {
    for (const [where, text] of [
      ["payout", doors.payout],
      ["paper", papers.en],
    ] as const) {
      expect(text, where).toContain(`${net_g} g`);
      for (const amount of [pay.low, pay.high])
        expect(text.replaceAll(/\s+/g, " "), where).toContain(`${amount} EUR`);
      const [shown] = numbersIn(text, /(\d+\.\d{3,4})(?= (?:to|g))/g).filter(
        (one) => Math.abs(Number(one) - Number(fine_g.low)) < 0.001,
      );
      mustBe(shown, Number(fine_g.low), where);
    }
  }
  // what the lot counts as fine is told at its closing, and why the settlement counts another
  const { low: lotLow } = api.lot.lot.closed.fine_g.gold;
  expect(doors.lot).toContain(`${lotLow} to`);
});

/** English words that no German or Spanish paper holds; names, units and what a person typed are not among them. */
const english =
  /\b(the|and|of|with|by|from|to|is|are|not|piece|pieces|paid|weighed|pay|buyer|seller|report|mass|fine|price|rests|closing|closed|settlement|density|uncertainty|reading|readings|water|air|page|claim|typed|measured|laboratory|method|result|record|signature|date)\b/i;

test.each(["de", "es", "report-de", "report-es"] as const)("the paper %s holds no English word", (paper) => {
  const words = papers[paper]
    .replaceAll(/underhook (export|verify)[^.;]*[.;]/g, "")
    .replaceAll(/\b(Underhook|Hafenlabor|Kupellation|Hafen|KR|Lot 7|test)\b/g, "");
  expect(english.exec(words)?.[0]).toBeUndefined();
});
