import { afterEach, beforeEach, expect, test } from "vitest";
import { waterDensityKgPerM3 } from "../../../calibration/water.ts";
import { mixtureDensity } from "../../../server/metals/mixture.ts";
import type { Statement } from "../../../server/weighing/statement-shape.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { settledMelt } from "../melts/settled-melt.ts";
import { host, recorded, textOf, wordsOf } from "./recorded.ts";

const t = tellerOf("en");

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const report = {
  metal: "gold",
  permille: "545,0",
  laboratory: "an invented laboratory",
  report: "L-118",
  method: "cupellation, ISO 11426",
  date: "2024-03-28",
};

/** Records an invented bar of 100 g whose density in water of 21.4 °C is the one given. */
async function bar(id: string, gPerCm3: number): Promise<void> {
  const water = waterDensityKgPerM3(21.4) / 1000;
  const air = 0.0012;
  // ρ = (R/D)(ρL − ρa) + ρa, so the loss D = R(ρL − ρa)/(ρ − ρa)
  const loss = (100 * (water - air)) / (gPerCm3 - air);
  await recorded(at, { id, dry: "100.00", immersed: (100 - loss).toFixed(2) });
}

const enter = (id: string, fields: Record<string, string> = {}) =>
  at.post(`/records/${id}/laboratory`, { ...report, ...fields });

test("weeks later the laboratory's fineness stands beside the density: how far off, in ‰ and in grams", async () => {
  await bar("B-1", 13.4);
  expect(await textOf(at, "/records/B-1")).toContain("The density leaves the fineness open");
  expect((await enter("B-1", { expanded: "0,6" })).statusCode).toBe(303);
  const text = await textOf(at, "/records/B-1");
  expect(text).toContain("545.0 ± 0.6 ‰ gold (k = 2, as the laboratory states it)");
  expect(text).toContain("an invented laboratory Its report L-118, 2024-03-28");
  const [, low, high] = /Fineness by density (\d+) to (\d+) ‰/.exec(text) ?? [];
  expect(Number(low)).toBeLessThan(545);
  expect(Number(high)).toBeGreaterThan(545);
  // 545 ‰ of 100 g; the nearer end is told to the whole per mille from ends that are rounded outwards
  expect(text).toContain("Fine mass by the laboratory 54.50 g");
  const nearer = Math.min(545 - Number(low), Number(high) - 545);
  const [, told] = /inside, (\d+) ‰ from the nearer end/.exec(text) ?? [];
  expect(Math.abs(Number(told) - nearer)).toBeLessThanOrEqual(1);
  const [, lowG] = /Fine mass by density ([\d.]+) to/.exec(text) ?? [];
  const [, more] = /([\d.]+) g more than the low end said/.exec(text) ?? [];
  // each of the three is rounded by itself
  expect(Math.abs(Number(more) - (54.5 - Number(lowG)))).toBeLessThan(0.016);
});

test("the split of silver and copper that reproduces the density is told, and is the one that was melted", async () => {
  const gPerCm3 = mixtureDensity({ Au: 0.5, Ag: 0.15, Cu: 0.35 }).correctedGPerCm3;
  await bar("B-2", gPerCm3);
  await enter("B-2", { permille: "500" });
  const [, silver, copper] = /silver to copper (\d+) : (\d+)/.exec(await textOf(at, "/records/B-2")) ?? [];
  // 0.01 g of immersed mass is 0.02 g/cm³ here, about 1 % of share; the bar is at 21.4 °C and not 20
  expect(Math.abs(Number(silver) - 30)).toBeLessThanOrEqual(1);
  expect(Number(silver) + Number(copper)).toBe(100);
});

test("a bar with pores lies outside, and no split reproduces its density", async () => {
  await bar("B-3", 12.0);
  await enter("B-3", { permille: "600" });
  const text = await textOf(at, "/records/B-3");
  expect(text).toMatch(/outside, \d+ ‰ above the high end/);
  expect(text).toContain("no split of silver and copper reproduces the density");
  expect(text).toContain("pores or a cavity");
});

test("what the report must say is asked for, with everything typed still there", async () => {
  await bar("B-4", 13.4);
  const refused = await enter("B-4", {
    permille: "54500",
    report: "",
    date: "2999-01-01",
    method: "fire assay",
  });
  expect(refused.statusCode).toBe(422);
  const text = wordsOf(refused.body);
  expect(text).toContain(
    messageText("form.number.out-of-range", { value: "54500", unit: " ‰", from: 1, to: 1000 }),
  );
  expect(text).toContain("A laboratory result needs the number of its report");
  expect(text).toContain("2999-01-01 has not come yet");
  expect(refused.body).toContain('value="fire assay"');
  expect(await at.ledger.entries({ kind: "laboratory-assay" })).toEqual([]);
});

test("a later assay follows the first with a reason; both stay, and the newest that was not set aside counts", async () => {
  await bar("B-5", 13.4);
  await enter("B-5");
  const unexplained = await enter("B-5", { permille: "535" });
  expect(wordsOf(unexplained.body)).toContain(
    "A laboratory result stands already. Write why another one is entered.",
  );
  await enter("B-5", { permille: "535", reason: "second sample, from the other side" });
  expect(await textOf(at, "/records/B-5")).toContain("535 ‰ gold");
  const [first, second, ...more] = await at.ledger.entries({ kind: "laboratory-assay" });
  expect(more).toEqual([]);
  expect(second?.body).toMatchObject({ permille: "535", replaces: first?.id });
  const aside = `/records/B-5/laboratory/${second?.id}/voiding`;
  expect((await at.post(aside, { reason: "" })).statusCode).toBe(422);
  expect((await at.post(aside, { reason: "it was another bar's" })).statusCode).toBe(303);
  expect(await textOf(at, "/records/B-5")).toContain("545.0 ‰ gold");
  const every = await textOf(at, "/records/B-5/laboratory");
  expect(every).toContain(t("assay.list.excluded", { reason: "it was another bar's" }));
  expect(every).toContain("second sample, from the other side");
});

test("the same form sent twice stores once", async () => {
  await bar("B-6", 13.4);
  const version = `${(await at.ledger.entriesOf("B-6")).length}`;
  await enter("B-6", { version });
  expect((await enter("B-6", { version })).statusCode).toBe(303);
  expect(await at.ledger.entries({ kind: "laboratory-assay" })).toHaveLength(1);
});

test("a piece nobody recorded takes no assay", async () => {
  expect((await enter("nobody")).statusCode).toBe(404);
  expect((await at.app.inject({ url: "/records/nobody/laboratory", headers: { host } })).statusCode).toBe(
    404,
  );
});

test("five melts with final figures narrow the rest of the sixth, beside the full interval and not in its place", async () => {
  const splits = [0.26, 0.3, 0.34, 0.28, 0.32];
  const asked = "/plan/fineness?density=13.4&uDensity=0.02&metal=gold&colour=any";
  for (const [place, silver] of splits.entries()) {
    const gPerCm3 = mixtureDensity({ Au: 0.5, Ag: 0.5 * silver, Cu: 0.5 * (1 - silver) }).correctedGPerCm3;
    await bar(`M-${place}`, gPerCm3);
    // a bar with a laboratory result is no melt yet
    if (place === 0) {
      await enter("M-0", { permille: "500" });
      expect(await textOf(at, asked)).not.toContain("gold melts");
    }
    await settledMelt(at, { bar: `M-${place}`, permille: "500" });
    if (place === 0) expect(await textOf(at, asked)).toContain("1 of the 5 gold melts");
  }
  // one with pores tells no split
  await bar("M-p", 10.5);
  await settledMelt(at, { bar: "M-p", permille: "500" });
  const text = await textOf(at, asked);
  expect(text).toContain("5 gold melts with a laboratory result, of 500 to 500 ‰.");
  expect(text).toContain(
    "1 melt with a laboratory result tells no split of silver and copper and is not counted.",
  );
  // by hand, (1/ρ − w/19.3)/(1 − w) of the five bars: their rest lies between those of silver and copper
  const [, from, to] = /beside the gold takes ([\d.]+) to ([\d.]+) cm³/.exec(text) ?? [];
  expect(Number(from)).toBeGreaterThan(1 / 10.49);
  expect(Number(to)).toBeLessThan(0.118);
  expect(Number(to) - Number(from)).toBeLessThan(0.006);
  const [, low, high] = /With that rest the fineness lies between (\d+) and (\d+) ‰/.exec(text) ?? [];
  const [, fullLow, fullHigh] = /Fineness (\d+) to (\d+) ‰/.exec(text) ?? [];
  expect(Number(low)).toBeGreaterThan(Number(fullLow));
  expect(Number(high)).toBeLessThan(Number(fullHigh));
  expect(Number(high)).toBeGreaterThan(Number(low));
  // a voided record counts nowhere
  await at.post("/records/M-0/voiding", { by: "quay counter", reason: "wrong bar" });
  expect(await textOf(at, asked)).toContain("4 of the 5 gold melts");
});

test("the melts of the house stand beside the fineness of a record, the record's own melt left out", async () => {
  for (const place of [0, 1, 2, 3, 4]) {
    await bar(
      `M-${place}`,
      mixtureDensity({ Au: 0.5, Ag: 0.14 + place / 100, Cu: 0.36 - place / 100 }).correctedGPerCm3,
    );
    await settledMelt(at, { bar: `M-${place}`, permille: "500" });
  }
  expect(await textOf(at, "/records/M-0/evidence?metal=gold")).toContain("4 of the 5 gold melts");
  await bar("new", 13.2);
  const text = await textOf(at, "/records/new/evidence?metal=gold");
  expect(text).toContain(`${tellerOf("en")("assay.own-melts.heading")} 5 gold melts`);
  expect(text).toContain("not in its place");
});

test("once five pieces of a claim have a laboratory result, the next of the claim rests on them, and says so", async () => {
  const gPerCm3 = mixtureDensity({ Au: 0.585, Ag: 0.2, Cu: 0.215 }).correctedGPerCm3;
  const loss = (100 * (waterDensityKgPerM3(21.4) / 1000 - 0.0012)) / (gPerCm3 - 0.0012);
  const piece = (id: string) =>
    recorded(at, { id, claim: "au-585", dry: "100.00", immersed: (100 - loss).toFixed(2) });
  const fineness = async (id: string) => {
    const result = (await at.ledger.entriesOf(id)).find(({ kind }) => kind === "result");
    return (result!.body as { statement: Statement }).statement.fineness;
  };
  for (const id of ["F-1", "F-2", "F-3", "F-4", "F-5"]) {
    await piece(id);
    expect((await enter(id, { permille: "585,2", expanded: "0,6" })).statusCode).toBe(303);
  }
  const free = await fineness("F-1");
  expect(free?.laboratory_results).toBeUndefined();
  await piece("F-6");
  const narrowed = await fineness("F-6");
  expect(narrowed?.laboratory_results).toMatchObject({ results: 5, narrows: true });
  expect(narrowed!.permille[1] - narrowed!.permille[0]).toBeLessThan(
    (free!.permille[1] - free!.permille[0]) / 2,
  );
  expect(narrowed!.permille[0]).toBeLessThan(585.2);
  expect(narrowed!.permille[1]).toBeGreaterThan(585.2);
  expect(await textOf(at, "/records/F-6")).toContain(t("result.rests-on"));
  // an assay that was set aside is none, and neither is one of a piece that is not of the claim
  const assay = (await at.ledger.entriesOf("F-1")).find(({ kind }) => kind === "laboratory-assay");
  await at.post(`/records/F-1/laboratory/${assay?.id}/voiding`, { reason: "another piece was sent" });
  await piece("F-7");
  expect((await enter("F-7", { permille: "417", expanded: "0,6" })).statusCode).toBe(303);
  await piece("F-8");
  expect((await fineness("F-8"))?.laboratory_results).toMatchObject({ results: 4, narrows: false });
});
