import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { run as verify } from "../../../server/cli/verify.ts";
import { backUp } from "../../../server/ledger/backup.ts";
import { csvRows } from "../../../server/ledger/csv.ts";
import type { EntryOf } from "../../../server/ledger/entry.ts";
import { sha256 } from "../../../server/ledger/file-beside.ts";
import { copyFiles, verifyFiles } from "../../../server/ledger/named-files.ts";
import { checkRecordFile, recordFile } from "../../../server/ledger/record-file.ts";
import { reportAsIssued } from "../../../server/reports/issue.ts";
import { reportFiles, reportsBeside } from "../../../server/reports/report-folder.ts";
import { statedBy } from "../../../server/reports/stated.ts";
import { statementOf } from "../../../server/weighing/recorded-statement.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { spoken } from "../ledger/bench-ledger.ts";
import { closedUp, textOfPdf } from "../reports/pdf-text.ts";
import { host, recorded, textOf } from "./recorded.ts";

/** Every text inside a value. */
const textsIn = (value: unknown): string[] =>
  typeof value === "string"
    ? [value]
    : typeof value === "object" && value !== null
      ? Object.values(value).flatMap(textsIn)
      : [];

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
  await recorded(at, { id: "bar-1", ticket: "B-1", claim: "ag-999", dry: "31.1035", immersed: "28.1435" });
});
afterEach(() => at.close());

const get = (url: string) => at.app.inject({ url, headers: { host } });
const issue = async (step: string) =>
  (await at.post("/records/bar-1/reports", { step })).headers.location ?? "";

test("a report is issued with a number and a copy, and shows result, readings, decision rule and hash", async () => {
  const href = await issue("click-1");
  expect(href).toMatch(/^\/records\/bar-1\/reports\/R-[0-9A-F]{6}-00001\?copy=1$/);
  const text = await textOf(at, href);
  const result = (await at.ledger.entriesOf("bar-1")).find(({ kind }) => kind === "result");
  for (const part of [
    "31.1035",
    "28.1435",
    "Decision rule:",
    "Risk:",
    "relate only to the item tested",
    result?.hash ?? "?",
  ])
    expect(text).toContain(part);
  expect(text).not.toMatch(/certificate|certified/i);
});

test("the same click sent twice issues once; a new click is the next copy of the same number", async () => {
  const first = await issue("click-1");
  expect(await issue("click-1")).toBe(first);
  const second = await issue("click-2");
  expect(second).toBe(first.replace("copy=1", "copy=2"));
  expect(await textOf(at, "/records/bar-1")).toMatch(/00001, copy 1 .*00001, copy 2 /);
});

test("a report of an amended record has a new number, names the one it replaces, and the old one stays as it was", async () => {
  const first = await issue("click-1");
  const before = (await get(first)).body;
  await at.post("/records/bar-1/amendments", { ticket: "B-17", by: "counter 2", reason: "ticket misread" });
  const second = await issue("click-2");
  const number = /reports\/(R-[^?]+)/.exec(first)?.[1];
  expect(second).toContain("-00002?copy=1");
  expect(await textOf(at, second)).toContain(
    `Amendment to report ${number}, which it replaces. Reason: ticket misread`,
  );
  const tokens = /name="_csrf" value="[^"]+"/g;
  expect((await get(first)).body.replace(tokens, "")).toBe(before.replace(tokens, ""));
});

test("the PDF of a report is the same bytes each time, and names the house that issued it", async () => {
  await at.settings.keep({
    house: { name: "Quay Street counter", address: "3 Quay Street", verifiedScale: "", verifiedUntil: "" },
  });
  const href = (await issue("click-1")).replace("?", ".pdf?");
  const [one, two] = [await get(href), await get(href)];
  expect(one.headers["content-type"]).toBe("application/pdf");
  expect(one.rawPayload.subarray(0, 5).toString()).toBe("%PDF-");
  expect(one.rawPayload.equals(two.rawPayload)).toBe(true);
  expect(await textOf(at, href.replace(".pdf?", "?"))).toContain("Quay Street counter");
});

/** Words that an English report has and a German one has not. */
const english = /\b(the|and|of|with|is|from|by|standard|interval|none|reading|report|density)\b/i;

test("a report issued in German is German for good, page and PDF, with decimals to match", async () => {
  await at.settings.keep({
    house: { name: "Kontor am Kai", address: "", verifiedScale: "HB 117", verifiedUntil: "2027-12-31" },
  });
  const answer = await at.post("/records/bar-1/reports", { step: "click-1", by: "Ö. Größ", language: "de" });
  const href = answer.headers.location ?? "";
  const { body } = await get(href);
  expect(body).toContain('<main id="main" tabindex="-1" lang="de"');
  const text = await textOf(at, href);
  const response = statementOf(
    (await at.ledger.entriesOf("bar-1")).find((entry) => entry.kind === "result")!.body,
  );
  for (const part of [
    "Bericht über eine Dichteprüfung",
    "31,1035 g",
    "21,4 °C",
    `k = ${response.k?.toFixed(2).replace(".", ",")}`,
    "95,45 %",
    "Entscheidungsregel:",
    tellerOf("de")("report.left.head.met"),
    "HB 117, Siegel gültig bis 2027-12-31",
    "Freigegeben von Ö. Größ",
    "Formel des Wassers",
  ])
    expect(text).toContain(part);
  const pdf = textOfPdf((await get(href.replace("?", ".pdf?"))).rawPayload);
  for (const part of [
    "Bericht über eine Dichteprüfung",
    "trocken31,1035 g",
    "gemessen, mit Überdeckungsintervall",
    "Freigegeben von Ö. Größ",
    "Ausfertigung 1 · Seite 2 von 2 · Ende des Berichts",
  ])
    expect(pdf).toContain(closedUp(part));
  const issued = (await at.ledger.entriesOf("bar-1")).find(({ kind }) => kind === "report-issued")!;
  const report = await reportAsIssued(at.ledger, issued as EntryOf<"report-issued">);
  expect(report.onlyEnglish).toEqual([]);
  const { record, ...stated } = report;
  expect(textsIn(stated).filter((one) => english.test(one))).toEqual([]);
});

test("without a choice a report is in the language of the page that asked, and each copy keeps its own", async () => {
  const german = { "accept-language": "de" };
  const form = await at.app.inject({ url: "/records/bar-1", headers: { host, ...german } });
  expect(form.body).toMatch(/<option value="de" selected[^>]*>Deutsch/);
  const first = await issue("click-1");
  const before = (await get(first.replace("?", ".pdf?"))).rawPayload;
  await at.post("/records/bar-1/reports", { step: "click-2", language: "de" });
  expect((await get(first.replace("?", ".pdf?"))).rawPayload.equals(before)).toBe(true);
  expect(await textOf(at, first)).toContain("Report of a density test");
  expect(await textOf(at, first.replace("copy=1", "copy=2"))).toContain("Bericht über eine Dichteprüfung");
});

test("an excluded claim is reported with what excludes it, fineness and hazards with what they rest on", async () => {
  const page = async (step: string) => (await get(await issue(step))).body;
  const before = await page("click-1");
  const { fineness, cautions } = statedBy(await at.ledger.entriesOf("bar-1")).statement;
  const [low_permille, high_permille] = fineness!.permille;
  const [least_g, most_g] = fineness!.fine_g;
  const of = { low_permille, high_permille, least_g, most_g, element: { metal: "el-ag" } };
  expect(before).toContain(messageText("report.opinion.fineness", of));
  expect(cautions).toContain("lead");
  expect(before).toContain(messageText("hazard.of.lead"));
  await at.post("/records/bar-1/evidence", {
    kind: "conductivity",
    "conductivity-percent": "31,4",
    "conductivity-within": "1",
    "conductivity-celsius": "21,5",
  });
  const { statement } = statedBy(await at.ledger.entriesOf("bar-1"));
  expect(statement.conformity).toMatchObject({
    state: "excluded",
    says: { code: "conformity.excluded-by-tests" },
  });
  const { code, params } = statement.conformity.says!;
  expect(await page("click-2")).toContain(messageText(code, params));
});

test("a report from before reports had a language is in English", async () => {
  const result = (await at.ledger.entriesOf("bar-1")).find(({ kind }) => kind === "result")!;
  const body = { number: "R-OLD-00001", copy: 1, record: result.id, recordHash: result.hash };
  await at.ledger.append("report-issued", "bar-1", body);
  const page = await at.app.inject({
    url: "/records/bar-1/reports/R-OLD-00001",
    headers: { host, "accept-language": "de" },
  });
  expect(page.body).toContain('<html lang="de"');
  expect(page.body).toContain('<main id="main" tabindex="-1" lang="en"');
  expect(page.body).toContain("Report of a density test");
});

test("other tests of the piece stand in the report apart from the result", async () => {
  await at.post("/records/bar-1/evidence", { kind: "magnet", "magnet-shows": "none" });
  expect(await textOf(at, await issue("click-1"))).toMatch(/not part of the density result magnet: nothing/);
});

test("a number that was never issued is refused by name", async () => {
  const answer = await get("/records/bar-1/reports/R-00099");
  expect(answer.statusCode).toBe(404);
  expect(answer.body).toContain("No report R-00099 was issued");
});

test("the list can be taken out as CSV with units in its headings", async () => {
  const answer = await get("/records.csv");
  expect(answer.headers["content-disposition"]).toContain("underhook-records.csv");
  const [head, row] = [...csvRows(answer.body)];
  expect(head?.cells).toContain("density (g/cm3)");
  expect(row?.cells).toContain("B-1");
});

test("every entry can be taken out as JSON Lines, one record as a file that checks by itself", async () => {
  const lines = (await get("/records.jsonl")).body.trim().split("\n");
  expect(lines.map((line) => JSON.parse(line).kind)).toContain("result");
  const before = await at.ledger.head();
  const file = recordFile.parse((await get("/records/bar-1/file")).json());
  expect(await at.ledger.head()).toEqual(before);
  expect(checkRecordFile(file)).toMatchObject({ good: true });
  expect((await get("/records/nobody/file")).statusCode).toBe(404);
});

test("who authorised it, the seal of the scale and the state of the checks stand in the report as they were", async () => {
  await at.settings.keep({
    house: { name: "", address: "", verifiedScale: "HB 117", verifiedUntil: "2027-12-31" },
  });
  const answer = await at.post("/records/bar-1/reports", { step: "click-1", by: "counter 1" });
  const href = answer.headers.location ?? "";
  const text = await textOf(at, href);
  expect(text).toContain("Authorised by counter 1");
  expect(text).toContain("HB 117, seal valid until 2027-12-31");
  expect(text).toContain("thermometer: no check is kept");
  const before = (await get(href)).body;
  await at.ledger.append("check", "thermometer", {
    kind: "ice-point",
    passed: false,
    says: "0.3 °C too high",
  });
  const tokens = /name="_csrf" value="[^"]+"/g;
  expect((await get(href)).body.replace(tokens, "")).toBe(before.replace(tokens, ""));
});

test("a piece measured after a check says how its thermometer stood on that day", async () => {
  await at.ledger.append("check", "thermometer", {
    kind: "ice-point",
    passed: false,
    says: "0.3 °C too high",
  });
  await recorded(at, { id: "bar-2", dry: "31.1035", immersed: "28.1435" });
  const answer = await at.post("/records/bar-2/reports", { step: "click-1" });
  expect(await textOf(at, answer.headers.location ?? "")).toContain(
    "thermometer: ice point NOT PASSED on the day of the work",
  );
});

test("a learner's test on the same balance is no check of the equipment and stays off the report", async () => {
  const check = (kind: string, message: string) =>
    at.ledger.append("check", "thermometer", { kind, passed: false, says: message });
  await check("ice-point", "0.3 °C too high");
  await check("trainee", "J. Doe scatters more than the house");
  await recorded(at, { id: "bar-2", dry: "31.1035", immersed: "28.1435" });
  const answer = await at.post("/records/bar-2/reports", { step: "click-1" });
  const text = await textOf(at, answer.headers.location ?? "");
  expect(text).toContain("thermometer: ice point NOT PASSED");
  expect(text).not.toMatch(/trainee|Doe/);
});

test("the house is printed as it names itself; an accreditation needs body and number both", async () => {
  await at.post("/settings/organisation", { organisation: "Certified Assay Counter" });
  expect(await textOf(at, await issue("click-1"))).toContain("Certified Assay Counter");
  const half = await at.post("/settings/organisation", {
    organisation: "Certified Assay Counter",
    accreditation: "T-1",
  });
  expect(half.statusCode).toBe(422);
  await at.post("/settings/organisation", {
    organisation: "Certified Assay Counter",
    accreditedBy: "an invented accreditation body",
    accreditation: "T-1",
  });
  expect(await textOf(at, await issue("click-2"))).toContain("an invented accreditation body, T-1");
});

test("earlier attempts of the day, a laboratory's finding and every amendment stand in report and API", async () => {
  await at.post("/bench/piece", { ticket: "B-1", description: "", method: "hung", claim: "", key: "bar-0" });
  await at.post("/bench/call-off", { reason: "fell off the hook" });
  await at.ledger.append("laboratory-assay", "bar-1", {
    ...{ metal: "silver", permille: "998.7", expanded_permille: "0.4", coverage_factor: "2" },
    ...{ laboratory: "an invented laboratory", report: "L-77", method: "potentiometry", date: "2026-03-02" },
  });
  const result = (await at.ledger.entriesOf("bar-1")).find(({ kind }) => kind === "result");
  await at.ledger.append("amendment", "bar-1", {
    ...{
      replaces: result?.id ?? "",
      reason: "ticket misread",
      by: "counter 1",
      piece: { description: "bar" },
    },
  });
  const href = await issue("click-1");
  const text = await textOf(at, href);
  const pdf = textOfPdf((await get(href.replace("?", ".pdf?"))).rawPayload);
  for (const part of ["called off: fell off the hook", "998.7 ± 0.4 ‰", "L-77", "ticket misread"]) {
    expect(text).toContain(part);
    expect(pdf).toContain(closedUp(part));
  }
});

test("a report stays as it was issued when the library of metals changes", async () => {
  const href = await issue("click-1");
  const before = (await get(href.replace("?", ".pdf?"))).rawPayload;
  await at.library.keep({
    underhook_metals: 1,
    version: 1,
    metals: [
      {
        id: "own-x",
        name: "Melt 7",
        composition: { Ag: [1, 1, 1] },
        density_g_cm3: { nominal: 10.5, low: 10.4, high: 10.6 },
        expansion_per_million_k: null,
        magnetism: "none",
        conductivity_iacs_percent: null,
        sound_m_s: null,
        colour: "white",
        likelihood: "common",
        source: "an invented melt",
      },
    ],
  });
  expect((await get(href.replace("?", ".pdf?"))).rawPayload.equals(before)).toBe(true);
});

test("what was told of the piece when it was opened stands in the report: condition and operator, and apart what the customer says", async () => {
  const opened = { ticket: "T-9", description: "ring", method: "hung", claim: "" };
  const wrong = await at.post("/bench/piece", { ...opened, statedMass: "heavy" });
  expect([wrong.statusCode, wrong.body]).toEqual([422, expect.stringContaining('value="heavy"')]);
  await at.post("/bench/piece", {
    ...opened,
    key: "ring-9",
    customer: "window 3",
    condition: "one knock at the rim",
    operator: "counter 2",
    statedMass: "31,1",
    marks: "ship and anchor",
  });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
  await at.post("/bench/record", {});
  const answer = await at.post("/records/ring-9/reports", { step: "click-1" });
  const text = await textOf(at, answer.headers.location ?? "");
  for (const part of ["Customer window 3", "Condition one knock at the rim", "Operator counter 2"])
    expect(text).toContain(part);
  expect(text).toMatch(
    /Supplied by the customer, not measured here Mass, as stated 31\.1 g Marks ship and anchor/,
  );
});

test("the check the report prints needs the bench's file alone, and names the hash and the key that are printed", async () => {
  const text = await textOf(at, await issue("click-1"));
  const [, key = ""] = /underhook verify record\.json --key ([0-9a-f]{64})/.exec(text) ?? [];
  const [, hash = ""] = /Hash \(SHA-256\) ([0-9a-f]{64})/.exec(text) ?? [];
  const file = join(mkdtempSync(join(tmpdir(), "underhook-")), "record.json");
  writeFileSync(file, (await get("/records/bar-1/file")).body);
  const said = spoken();
  expect(await verify([file, "--key", key])).toBe(0);
  expect(said()).toContain(`has the hash ${hash}`);
  expect(await verify([file, "--key", "0".repeat(64)])).toBe(1);
});

test("the PDF that was handed out says whose and which it is, and whether it was amended or voided since", async () => {
  const href = await issue("click-1");
  await at.ledger.checkpoint();
  const pdf = join(mkdtempSync(join(tmpdir(), "underhook-")), "report.pdf");
  const bytes = (await get(href.replace("?", ".pdf?"))).rawPayload;
  writeFileSync(pdf, bytes);
  const by = ["--ledger", at.file, "--key", at.ledger.key?.keyId ?? ""];
  const said = spoken();
  expect(await verify([pdf, ...by])).toBe(0);
  expect(said()).toMatch(/report R-\w+-00001, copy 1, of bar-1/);
  expect(await verify([pdf, "--ledger", at.file])).toBe(1);
  writeFileSync(pdf, Buffer.concat([bytes, Buffer.from("\n")]));
  expect(await verify([pdf, ...by])).toBe(1);
  writeFileSync(pdf, bytes);
  const result = (await at.ledger.entriesOf("bar-1")).find(({ kind }) => kind === "result");
  await at.ledger.append("voiding", "bar-1", { entry: result?.id ?? "", reason: "wet cord" });
  said();
  expect(await verify([pdf, ...by])).toBe(1);
  expect(said()).toMatch(/^VOID.*wet cord/);
});

test("a report is printed once: page and PDF stay the bytes that the ledger names, and a changed file is never shown", async () => {
  const href = await issue("click-1");
  const pdfHref = href.replace("?", ".pdf?");
  const entry = (await at.ledger.entriesOf("bar-1")).find(({ kind }) => kind === "report-issued");
  const { print } = (entry as EntryOf<"report-issued">).body;
  const folder = reportsBeside(at.file);
  expect(sha256((await get(pdfHref)).rawPayload)).toBe(print?.pdf);
  expect((await get(href)).body).toContain(readFileSync(join(folder, `${print?.page}.html`), "utf8"));
  expect(await verifyFiles(reportFiles, at.ledger, folder)).toEqual({ count: 1, wrong: [] });

  const copy = join(mkdtempSync(join(tmpdir(), "underhook-")), "ledger.sqlite");
  await backUp(at.file, copy);
  expect(await copyFiles(reportFiles, at.file, copy, () => new Date())).toEqual({ count: 1, wrong: [] });
  expect(await verifyFiles(reportFiles, at.ledger, reportsBeside(copy))).toEqual({ count: 1, wrong: [] });

  writeFileSync(join(folder, `${print?.pdf}.pdf`), "%PDF- another report");
  const refused = await get(pdfHref);
  expect(refused.statusCode).toBe(404);
  expect(refused.body).toContain(`${print?.pdf}.pdf`);
  expect((await verifyFiles(reportFiles, at.ledger, folder)).wrong).toHaveLength(1);
});
