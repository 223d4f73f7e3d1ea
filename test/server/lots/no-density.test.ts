import { randomBytes } from "node:crypto";
import { afterEach, beforeEach, expect, test } from "vitest";
import { newToken } from "../../../server/ledger/tokens.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { codesIn } from "../page-fields.ts";
import { host } from "../web/recorded.ts";
import { openedLot, weighed } from "./screened.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const get = (url: string) => at.app.inject({ url, headers: { host } });

/** The newest record of the lot. */
async function newestOf(lot: string) {
  const { records } = await at.ledger.records({ filters: { lot: lot.replace("/lots/", "") } });
  return records[0]!;
}

async function opened(): Promise<string> {
  const lot = await openedLot(at);
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  return lot;
}

// Archimedes: a solid of ρ = dry/(dry − immersed) × ρ of water; neither is one.
test.each([
  ["nothing displaced", "12.90", "12.90", /^check\.displacement-negative$/],
  ["heavier in water than in air, as when the two are swapped", "11.93", "12.90", /^check\.boxes-swapped$/],
])("a row of a lot with %s is written, flagged and without a density", async (_, dry, immersed, code) => {
  const lot = await opened();
  await weighed(at, lot, "30", "12.90", "11.932");
  const sums = (await get(lot)).body;
  const answer = await weighed(at, lot, "31", dry, immersed);
  expect([codesIn(answer.body), answer.statusCode]).toEqual([[], 303]);

  const row = await newestOf(lot);
  expect(row).toMatchObject({
    ticket: "31",
    state: "no-valid-reading",
    density_g_cm3: null,
    expanded_g_cm3: null,
    dry: `${dry} g`,
    mass_g: Number(dry),
  });
  const entry = (await at.ledger.entriesOf(row.subject)).find(({ kind }) => kind === "result");
  expect(entry?.body).toMatchObject({
    statement: {
      density_g_cm3: null,
      interval_g_cm3: null,
      mass_g: null,
      conformity: { claim: "au-585", state: "no-valid-reading" },
      not_excluded: [],
      fineness: null,
      answer: { code: "answer.no-valid-reading" },
    },
    stops: [{ code: expect.stringMatching(code) }],
  });

  // it counts for nothing: the sums stand as they stood
  const page = (await get(lot)).body;
  expect(codesIn(page)).toContain(entry?.kind === "result" && entry.body.stops?.[0]?.code);
  const sumOf = (body: string) => /Sum of the pieces.{0,120}/s.exec(body)?.[0];
  expect(sumOf(page)).toBe(sumOf(sums));
});

test("it is shown with its readings, and stands in the list, the file and the API without a number", async () => {
  const lot = await opened();
  await weighed(at, lot, "31", "12.90", "12.90");
  const { subject } = await newestOf(lot);

  const record = await get(`/records/${subject}`);
  expect(record.statusCode).toBe(200);
  expect(codesIn(record.body)).toContain("check.displacement-negative");
  expect(record.body).toContain("12.90 g");
  expect(record.body).toContain("21.4 °C");
  expect(record.body).not.toContain("result-value");
  expect((await get("/records")).statusCode).toBe(200);
  expect((await get(`/lots/${lot.replace("/lots/", "")}/payout`)).statusCode).toBe(200);

  const csv = (await get("/records.csv")).body.split("\r\n");
  const cell = (name: string) => csv[1]?.split(",")[csv[0]!.split(",").indexOf(name)];
  expect(cell("density (g/cm3)")).toBe("");
  expect(cell("state")).toBe("no-valid-reading");

  const { token, tokenHash } = newToken(randomBytes(32));
  await at.ledger.append("token-issued", "tokens", {
    name: "laboratory",
    tokenHash,
    scopes: ["lots:read", "records:read"],
  });
  const asked = (url: string) => at.app.inject({ url, headers: { host, authorization: `Bearer ${token}` } });
  const { pieces } = (await asked(`/api${lot}`)).json();
  expect(pieces).toMatchObject([{ ticket: "31", state: "no-valid-reading", density_g_cm3: null }]);
  const { record: row, statement } = (await asked(`/api/records/${subject}`)).json();
  expect(row.density_g_cm3).toBeNull();
  expect(statement).toMatchObject({ density_g_cm3: null, conformity: { state: "no-valid-reading" } });
});

test("nothing that needs a density is made of it, and each page says why", async () => {
  const lot = await opened();
  await weighed(at, lot, "31", "12.90", "12.90");
  const { subject } = await newestOf(lot);
  for (const page of ["share", "share.txt", "share.svg", "evidence", "price", "laboratory"]) {
    const answer = await get(`/records/${subject}/${page}`);
    expect([page, answer.statusCode]).toEqual([page, 422]);
    expect(codesIn(answer.body)).toContain("record.no-density");
  }
  const report = await at.post(`/records/${subject}/reports`, { step: "click-1" });
  expect(report.statusCode).toBe(422);
  expect(codesIn(report.body)).toContain("record.no-density");
  expect(await at.ledger.entries({ kind: "report-issued" })).toEqual([]);
});

test("an answer settles none of it; an amendment of the typed reading does, and then it counts", async () => {
  const lot = await opened();
  await weighed(at, lot, "31", "12.90", "12.90");
  const { subject } = await newestOf(lot);
  const entries = await at.ledger.entriesOf(subject);
  const version = `${entries.length}`;

  const answered = await at.post(`${lot}/answers`, {
    subject,
    version,
    found: "looked",
    stands: "yes",
    by: "kl",
  });
  expect(answered.statusCode).toBe(422);
  expect(codesIn(answered.body)).toContain("weighing.check.impossible");

  const wet = entries.findLast(
    ({ kind, body }) => kind === "capture" && "what" in body && body.what === "immersed",
  );
  const amended = await at.post(`/records/${subject}/amendments`, {
    version,
    [`reading:${wet?.id}`]: "11.93",
    reason: "typed the dry reading twice",
    by: "kl",
  });
  expect(amended.statusCode).toBe(303);
  const row = await newestOf(lot);
  expect(row.state).not.toBe("no-valid-reading");
  // (12.90 / 0.97) × 0.9979 g/cm³ of water at 21.4 °C (Tanaka 2001)
  expect(row.density_g_cm3).toBeCloseTo((12.9 / 0.97) * 0.99791, 1);
  expect((await get(`/records/${subject}`)).statusCode).toBe(200);
});

test("the same readings on the bench are still refused, and nothing is written", async () => {
  await at.post("/bench/piece", { ticket: "T-1", method: "hung", claim: "au-585", key: "piece-1" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "12.90", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "12.90", unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
  expect((await at.post("/bench/record", { found: "looked", stands: "yes" })).statusCode).toBe(422);
  expect(await at.ledger.entries({ kind: "result" })).toEqual([]);
});

// 12.90 g that make the beaker 20.00 g heavier: 0.64 g/cm³, which floats unless something holds it under
test("a row that floats is written without a density, although its readings would give one", async () => {
  await at.settings.keep({ method: "displaced" });
  const lot = await opened();
  await at.post(`${lot}/pieces`, { ticket: "31", claim: "au-585" });
  await at.post(`${lot}/pieces`, { typed: "12.90", role: "dry", unit: "g" });
  const written = await at.post(`${lot}/pieces`, { typed: "20.00", role: "rise", unit: "g" });
  expect([codesIn(written.body), written.statusCode]).toEqual([[], 303]);
  const row = await newestOf(lot);
  expect(row).toMatchObject({ state: "no-valid-reading", density_g_cm3: null });
  const entry = (await at.ledger.entriesOf(row.subject)).find(({ kind }) => kind === "result");
  expect(entry?.body).toMatchObject({
    statement: { density_g_cm3: null, u_g_cm3: null, mass_g: null, budget: [] },
    stops: [{ code: "check.floats" }],
  });
});
