import { expect, test } from "vitest";
import { reportOf } from "../../../server/reports/report-of.ts";
import { writingIn } from "../../../server/reports/writing.ts";
import { statement as frozen } from "../../../server/weighing/kinds/result.ts";
import de from "../../../views/messages/de.json" with { type: "json" };
import en from "../../../views/messages/en.json" with { type: "json" };
import es from "../../../views/messages/es.json" with { type: "json" };
import { tell, tellerOf } from "../../../views/messages/tell.ts";
import { stated } from "../compute/answers.ts";
import { testLedger } from "../ledger/bench-ledger.ts";
import { issued } from "./issued.ts";
import { computed, measurePiece } from "./measured-piece.ts";

const t = tellerOf("en");

const house = { name: "Quay Street counter", address: "3 Quay Street, Harrowmouth" };
const options = { organisation: house, number: "R-00001", copy: 1, issuedAt: "2026-03-02T10:00:00.000Z" };

async function measured() {
  const ledger = await testLedger();
  const result = await measurePiece(ledger, "piece:1");
  const entries = ledger.names?.named(await ledger.entriesOf("piece:1"), "") ?? [];
  return { ledger, result, entries };
}

test("a report states what ISO/IEC 17025:2017 7.8.2 and 7.8.3 ask for, from the entries alone", async () => {
  const { entries, result } = await measured();
  const report = reportOf(entries, { ...options, authorisedBy: "counter 1" });
  expect(report.title).toBe("Report of a density test");
  expect(report.organisation.map((line) => line.value)).toEqual([house.name, house.address]);
  expect(report.customer).toBe("ticket holder H-0412");
  expect(report.method).toMatch(/hung from the balance under the liquid/);
  expect(report.item.map((line) => line.label)).toEqual([
    "Ticket",
    "Description",
    "Condition",
    "Claim tested",
  ]);
  expect(report.dates.map((line) => line.label)).toEqual(["Received", "Work done", "Issued"]);
  expect(report.statements.join(" ")).toMatch(
    /relate only to the item tested.*not be reproduced except in full/,
  );
  expect(report.conditions).toContainEqual({ label: "Balance", value: "balance at the window" });
  expect(report.conditions).toContainEqual({
    label: "Temperature of the liquid",
    value: "21.4 °C, standard uncertainty 0.058 °C",
  });
  expect(report.authorisedBy).toBe("counter 1");
  expect(report.record).toMatchObject({ hash: result.hash, row: result.seq, entry: result.id });
});

test("value and uncertainty are rounded together to two significant digits of the uncertainty (GUM 7.2.6)", async () => {
  const { entries } = await measured();
  const { results, uncertaintyStatement, budget } = reportOf(entries, options);
  const density = results.find(({ quantity }) => quantity.startsWith("Density of the piece"));
  const [value = "", u = ""] = density?.value.split(" ± ") ?? [];
  expect(u.replace(/^0\.0*/, "")).toHaveLength(2);
  expect(value.split(".")[1]).toHaveLength(u.split(".")[1]?.length ?? 0);
  expect(density?.uncertainty).toMatch(/^\d\.\d\d$/);
  expect(uncertaintyStatement).toMatch(/95\.45 %/);
  expect(uncertaintyStatement).toMatch(/k = \d\.\d\d.*Student|Monte Carlo/);
  expect(budget.length).toBeGreaterThan(5);
  const shares = budget.map(({ share }) => Math.abs(Number(share.replace(/[<%\s]/g, ""))));
  expect(shares).toEqual(shares.toSorted((a, b) => b - a));
});

test("of a density too coarse to tell anything the report states the ends alone, no value and no quotient of it", async () => {
  const ledger = await testLedger();
  const coarse = { readability_g: 0.1, repeatability_g: 0.1 };
  const statement = stated({
    ...{
      id: "c",
      method: "hung",
      dry: { readings: ["2.0"] },
      immersed: { readings: ["1.5"] },
      air: { altitude_m: 0 },
    },
    ...{
      liquid: { kind: "water", temperature_c: 20 },
      balance: coarse,
      hanger: { wire_mm: 0, zeroed: "immersed" },
    },
  });
  await measurePiece(ledger, "piece:1", {}, { ...computed(), statement: frozen.parse(statement) });
  const { results } = reportOf(await ledger.entriesOf("piece:1"), options);
  const [density, ...rest] = results;
  expect(density).toMatchObject({ unit: "g/cm³", uncertainty: t("report.results.too-coarse") });
  expect(rest.map(({ unit }) => unit)).toEqual(["g", "cm³"]);
});

test("opinion stands apart from the result, what the customer said apart from both, with rule and risk", async () => {
  const { entries } = await measured();
  const report = reportOf(entries, options);
  expect(report.opinion.state).toBe(tell({ code: "report.state.consistent-not-unique" }, "en"));
  expect(JSON.stringify(report.results)).not.toMatch(/claim|consistent/);
  expect(report.opinion.notExcluded.some(({ id, band }) => id === "ag-925" && band !== null)).toBe(true);
  expect(report.decision.join(" ")).toMatch(/Decision rule: .*95\.45 %.*Risk: .*4\.55 %/);
  expect(report.customerSupplied.map(({ label }) => label)).toEqual([
    t("report.supplied.claim"),
    t("report.supplied.mass"),
  ]);
});

test("a voided reading stays in the report with its reason, as a deviation too", async () => {
  const { entries } = await measured();
  const report = reportOf(entries, options);
  const voided = report.readings.filter((reading) => reading.voided !== null);
  expect(voided).toEqual([expect.objectContaining({ shown: "28.0990 g", voided: "bubble under the rim" })]);
  expect(report.deviations.join(" ")).toMatch(/28\.0990 g\) was declared void: bubble under the rim/);
});

test("what a person wrote is printed as it was written; the report's own words promise nothing", async () => {
  const ledger = await testLedger();
  await measurePiece(ledger, "piece:1", {
    description: "Bar stamped ASSAYED, with a Certificate",
    condition: "zertifiziert, sagt er",
    decisionRule: "as certified",
  });
  const entries = await ledger.entriesOf("piece:1");
  const report = reportOf(entries, options);
  expect(report.item.map(({ value }) => value)).toContain("Bar stamped ASSAYED, with a Certificate");
  expect(report.item.map(({ value }) => value)).toContain("zertifiziert, sagt er");
  expect(report.decision.join(" ")).toContain("as certified");
  for (const catalogue of [en, de, es])
    for (const [code, text] of Object.entries(catalogue))
      if (code.startsWith("report.")) expect(text, code).not.toMatch(/certif|assay|zertifi/i);
});

test("a hobbyist's report leaves out laboratory and customer and states the rest", async () => {
  const ledger = await testLedger();
  await ledger.append("piece-opened", "piece:1", { ticket: "", description: "", claim: null });
  await ledger.append("result", "piece:1", computed());
  const { ledger: _, ...report } = {
    ledger,
    ...reportOf(await ledger.entriesOf("piece:1"), { ...options, organisation: {} }),
  };
  expect(report.organisation).toEqual([]);
  expect(report.customer).toBe(t("report.not-stated"));
  expect(report.item.map(({ value }) => value)).toContain(t("report.not-stated"));
  expect(report.readings).toHaveLength(5);
});

test("a further print is a further copy, a click sent twice is one copy, an amended record has a new number that names the old", async () => {
  const { ledger, result } = await measured();
  const first = await issued(ledger, "piece:1", { organisation: house, key: "click-1" });
  const same = await issued(ledger, "piece:1", { organisation: house, key: "click-1" });
  const second = await issued(ledger, "piece:1", { organisation: house, key: "click-2" });
  expect(same).toEqual(first);
  const number = (n: number) => `R-${ledger.key?.keyId.slice(0, 6).toUpperCase()}-0000${n}`;
  expect([first.number, first.copy, second.number, second.copy]).toEqual([number(1), 1, number(1), 2]);
  expect(first.record.keyId).toBe(ledger.key?.keyId);

  await measurePiece(ledger, "piece:2");
  expect((await issued(ledger, "piece:2", { organisation: house })).number).toBe(number(2));

  await ledger.append("amendment", "piece:1", {
    replaces: result.id,
    reason: "ticket misread",
    by: "counter 1",
    piece: { ticket: "H-0421" },
  });
  const amended = await issued(ledger, "piece:1", { organisation: house });
  expect(amended).toMatchObject({
    number: number(3),
    copy: 1,
    replaces: { number: number(1), reason: "ticket misread", by: "counter 1" },
  });
  expect(amended.item[0]?.value).toBe("H-0421");
  expect(await ledger.verify()).toMatchObject({ good: true });
});

test("reports issued at the same moment never share a number", async () => {
  const ledger = await testLedger();
  const subjects = Array.from({ length: 6 }, (_, i) => `piece:${i}`);
  for (const subject of subjects) await measurePiece(ledger, subject);
  const reports = await Promise.all(
    subjects.map((subject) => issued(ledger, subject, { organisation: house })),
  );
  expect(new Set(reports.map(({ number }) => number)).size).toBe(6);
});

test("an unfinished piece gives no report, and a voided result says so", async () => {
  const ledger = await testLedger();
  await ledger.append("piece-opened", "piece:1", { ticket: "H-1", description: "", claim: null });
  await expect(issued(ledger, "piece:1")).rejects.toThrow(
    expect.objectContaining({ code: "report.refused.no-result" }),
  );
  const result = await measurePiece(ledger, "piece:2");
  await ledger.append("voiding", "piece:2", { entry: result.id, reason: "wrong piece on the hook" });
  expect((await issued(ledger, "piece:2")).voided).toBe("wrong piece on the hook");
});

test.each(["en", "de", "es"] as const)(
  "a port, a room and a customer pass through a report unchanged in %s",
  async (locale) => {
    const port = "/dev/serial/by-path/pci-0000:00:14.0-usb-0:1.2-port0";
    expect(writingIn(locale).balance(`balance on ${port}`)).toContain(port);
    expect(writingIn(locale).balance("Window and counter 1.5")).toBe("Window and counter 1.5");
    const { entries } = await measured();
    const report = reportOf(
      entries,
      { ...options, organisation: { name: "Window and counter" } },
      writingIn(locale),
    );
    expect(report.organisation[0]?.value).toBe("Window and counter");
    expect(report.customer).toBe("ticket holder H-0412");
  },
);
