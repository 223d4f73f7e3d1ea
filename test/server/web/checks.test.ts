import { afterEach, expect, it } from "vitest";
import { message } from "../../../calibration/message.ts";
import type { CheckResult } from "../../../server/checks/check.ts";
import { statementOf } from "../../../server/weighing/recorded-statement.ts";
import { tell } from "../../../views/messages/tell.ts";
import { sentenceText } from "../../../views/sentence.tsx";
import { buildTestBench, newLedgerFile, type TestBench } from "../build.ts";
import { stated } from "../compute/answers.ts";
import { asked } from "../page-fields.ts";

let open: TestBench | undefined;
afterEach(async () => {
  await open?.close();
  open = undefined;
});

async function bench(file = newLedgerFile()): Promise<TestBench> {
  open = await buildTestBench(file);
  return open;
}

const page = async ({ app }: TestBench, url: string) =>
  (await app.inject({ url, headers: { host: "localhost:1" } })).body;

const rows = (name: string, values: readonly string[]) =>
  Object.fromEntries(values.map((value, place) => [`${name}-${place + 1}`, value]));

/** Ten weighings of 50 g, invented: three 0.1 mg below their mean, three above, four on it. */
const scattering = [
  "50.0001",
  "50.0003",
  "50.0002",
  "50.0002",
  "50.0001",
  "50.0003",
  "50.0002",
  "50.0002",
  "50.0001",
  "50.0003",
];
/** mean 50.0002; squares 6 × (0.1 mg)², divided by 9 */
const sGrams = Math.sqrt((6 * 0.0001 ** 2) / 9);

const spanOf50 = Math.hypot(1e-4 / Math.sqrt(3), 3e-4 / Math.sqrt(3), sGrams, 1e-4 / Math.sqrt(6)) / 50;

const passedRepeatability = { ...rows("reading", scattering), unit: "g", by: "K" };

/** Weighs and records one piece; gives the request that its record carries. */
async function recordPiece({ bench, ledger }: TestBench, ticket: string) {
  const id = bench.nextPiece;
  const on = asked(bench);
  await on.start({ ticket }, id);
  await on.type("dry", "31.1035");
  await on.type("immersed", "28.1435");
  await on.temperature("21.4");
  await on.record();
  const result = (await ledger.entriesOf(id)).find(({ kind }) => kind === "result");
  if (result?.kind !== "result") throw new Error("no result was written");
  return {
    id,
    request: result.body.request as { balance: Record<string, number>; liquid: Record<string, number> },
  };
}

it("puts the s and the degrees of freedom of a passed repeatability test into the next piece's request", async () => {
  const test = await bench();
  const before = await recordPiece(test, "T-1");
  expect(before.request.balance.repeatability_dof).toBeUndefined();
  const answer = await test.post("/checks/repeatability", { ...passedRepeatability, step: "r1" });
  expect(answer.statusCode).toBe(303);
  expect(await page(test, String(answer.headers.location))).toContain("Inside its limits");
  const { request } = await recordPiece(test, "T-2");
  expect(request.balance.repeatability_g).toBeCloseTo(sGrams, 12);
  expect(request.balance.repeatability_dof).toBe(9);
});

it("carries the checks over a restart of the bench", async () => {
  const first = await bench();
  await first.post("/checks/repeatability", { ...passedRepeatability, step: "r1" });
  await first.close();
  const again = await bench(first.file);
  const { request } = await recordPiece(again, "T-1");
  expect(request.balance.repeatability_dof).toBe(9);
});

it("takes the immersed scatter and the linearity from their own checks", async () => {
  const test = await bench();
  await test.post("/checks/immersed-repeatability", { ...passedRepeatability, step: "i1" });
  const linear = await test.post("/checks/linearity", {
    ...rows("stated", ["10", "50", "100"]),
    ...rows("reading", ["10.0001", "50.0000", "100.0001"]),
    class: "E2",
    unit: "g",
    by: "K",
    step: "l1",
  });
  expect(linear.statusCode).toBe(303);
  const { request } = await recordPiece(test, "T-1");
  expect(request.balance.immersed_repeatability_g).toBeCloseTo(sGrams, 12);
  expect(request.balance.immersed_repeatability_dof).toBe(9);
  expect(request.balance.linearity_g).toBeGreaterThan(0);
});

it("corrects the water temperature by the ice point and states its uncertainty", async () => {
  const test = await bench();
  await test.post("/checks/ice-point", { ...rows("reading", ["0.2", "0.2", "0.2"]), by: "K", step: "t1" });
  const { request } = await recordPiece(test, "T-1");
  expect(request.liquid.temperature_c).toBeCloseTo(21.2, 9);
  expect(request.liquid.temperature_correction_c).toBeCloseTo(-0.2, 9);
  // no scatter, two roundings of 0.1 °C (0.1/√6), 0.01 °C of the ice bath, and ±0.01 °C for each °C away from it
  expect(request.liquid.temperature_u_c).toBeCloseTo(
    Math.hypot(0.1 / Math.sqrt(6), 0.01, (0.01 * 21.4) / Math.sqrt(3)),
    9,
  );
});

it("keeps every attempt once; a failed one widens the budget at once, shows the look-back, and a passed one ends both", async () => {
  const test = await bench();
  await test.post("/checks/repeatability", { ...passedRepeatability, step: "r1" });
  const { id } = await recordPiece(test, "T-LOOK");
  const wild = scattering.map((text, place) => (place % 2 ? "50.0100" : text));
  const bad = { ...rows("reading", wild), unit: "g", by: "K", step: "r2" };
  await test.post("/checks/repeatability", bad);
  await test.post("/checks/repeatability", bad);
  expect(await test.ledger.entries({ kind: "check" })).toHaveLength(2);
  const checks = await page(test, "/checks");
  expect(checks).toContain("The bench is closed since");
  expect(checks).toContain(`/records/${id}`);
  expect(await page(test, "/checks/repeatability")).toContain("Attempt 2 of this occasion");
  const worse = (await recordPiece(test, "T-2")).request.balance.repeatability_g!;
  // every second of the ten readings is 9.8 mg above its place: s of about 5 mg against 0.08 mg
  expect(worse).toBeGreaterThan(50 * sGrams);
  expect(await page(test, "/checks")).toContain("from a failed check: it counts because it is worse");
  await test.post("/checks/repeatability", { ...passedRepeatability, step: "r3" });
  const open = await page(test, "/checks");
  expect(open).not.toContain("The bench is closed since");
  // the two passed tests of ten are pooled: s stays what it was
  expect(open).toContain("s = 0.082 mg with 18 degrees of freedom");
  expect((await recordPiece(test, "T-3")).request.balance.repeatability_g).toBeCloseTo(sGrams, 12);
});

it("leaves what was typed in its field when an entry cannot be read, and stores nothing", async () => {
  const test = await bench();
  const answer = await test.post("/checks/repeatability", {
    ...passedRepeatability,
    "reading-3": "fifty",
  });
  expect(answer.statusCode).toBe(422);
  expect(answer.body).toContain('value="fifty"');
  expect(await test.ledger.entries({ kind: "check" })).toHaveLength(0);
  const few = await test.post("/checks/repeatability", { ...rows("reading", ["50.0", "50.1"]), by: "K" });
  expect(few.statusCode).toBe(422);
  expect(few.body).toContain("at least 6 readings");
});

it("draws every check weight, and changes limits only by a name and a reason", async () => {
  const test = await bench();
  const weigh = (reading: string, step: string) =>
    test.post("/checks/check-weight", {
      stated: "50",
      class: "F1",
      "reading-1": reading,
      unit: "g",
      by: "K",
      step,
    });
  for (const [place, reading] of scattering.slice(0, 7).entries()) await weigh(reading, `w${place}`);
  await weigh("50.0200", "failed before the limits");
  const chart = "check-weight 50 g on typed";
  expect((await test.post("/checks/limits", { chart, by: "K", why: " " })).statusCode).toBe(422);
  expect(await test.ledger.entries({ kind: "control-limits" })).toHaveLength(0);
  expect((await test.post("/checks/limits", { chart, by: "K", why: "first limits" })).statusCode).toBe(303);
  expect((await weigh("50.0100", "w8")).statusCode).toBe(303);
  const body = await page(test, "/checks");
  expect(body).toContain("first limits");
  expect(body).toContain("Out of control");
  expect(await test.ledger.entries({ kind: "check" })).toHaveLength(9);
  const [limits] = await test.ledger.entries({ kind: "control-limits" });
  expect(limits?.body).toMatchObject({ n: 7, provisional: true, signedBy: "K", why: "first limits" });
});

it("sends the reference piece through the whole procedure", async () => {
  const test = await bench();
  // invented: R = 20 g, D = 7.55 g; (20/7.55)(0.9982 − 0.0012) + 0.0012 = 2.642 g/cm³
  const typed = {
    piece: "glass 1",
    expanded: "0.01",
    celsius: "20.0",
    "dry-1": "20.0000",
    "wet-1": "12.4500",
    unit: "g",
    by: "K",
  };
  const right = await test.post("/checks/reference", { ...typed, stated: "2.6430", step: "p1" });
  expect(await page(test, String(right.headers.location))).toContain("Inside its limits");
  // the next time it stands there as it was typed
  expect(await page(test, "/checks/reference")).toContain('value="2.6430"');
  const wrong = await test.post("/checks/reference", { ...typed, stated: "2.70", step: "p2" });
  expect(await page(test, String(wrong.headers.location))).toContain("Outside its limits");
});

/** Rows of the table beside a chart, cell by cell, by a part of its caption. */
function chartRows(body: string, caption: string): string[][] {
  const figure = body.split("<figure").find((part) => part.includes(caption)) ?? "";
  return [...figure.matchAll(/<tr>(.*?)<\/tr>/gs)]
    .map(([, row = ""]) => [...row.matchAll(/<t[dh][^>]*>(.*?)<\/t[dh]>/gs)].map(([, cell = ""]) => cell))
    .slice(1);
}

it("charts the zero after each lift and the dry mass afterwards from the pieces weighed, also what was set aside", async () => {
  const test = await bench();
  const id = test.bench.nextPiece;
  const on = asked(test.bench);
  await on.start({ ticket: "T-Z" }, id);
  await on.type("dry", "31.1035");
  await on.type("zero", "0.0002");
  await on.type("immersed", "28.1435");
  await on.type("zero", "-0.0040");
  const drop = test.bench.item?.captures.at(-1)?.id ?? "";
  await on.type("zero", "0.0003");
  await on.type("immersed", "28.1436");
  await on.type("zero", "0.0001");
  await on.type("dry-after", "31.1037");
  await on.exclude(drop, "drop on the hanger");
  const body = await page(test, "/checks");
  // in mg: −4.0 − 0.2 (set aside), 0.3 − 0.2, then 0.1 − 0.3 against the zero before that immersion
  const zeros = chartRows(body, "Zero after the lift");
  expect(zeros.map(([, value, attempt]) => [value, attempt])).toEqual([
    ["−4.20", "1"],
    ["0.10", "2"],
    ["−0.20", "1"],
  ]);
  const [dry] = chartRows(body, "Dry mass after minus before");
  expect(dry?.[1]).toBe("0.20");
});

it("limits from points that are all the same are as wide as the display hides, and are signed in the ledger", async () => {
  const test = await bench();
  for (let n = 0; n < 7; n += 1)
    await test.post("/checks/check-weight", {
      stated: "50",
      class: "F1",
      "reading-1": "50.000",
      unit: "g",
      by: "K",
      step: `same ${n}`,
    });
  const chart = "check-weight 50 g on typed";
  await test.post("/checks/limits", { chart, by: "Mia K", why: "balance moved to the window" });
  const [limits] = await test.ledger.entries({ kind: "control-limits" });
  if (limits?.kind !== "control-limits") throw new Error("no limits were kept");
  // two roundings of d = 1 mg, each rectangular (d/√12)
  expect(limits.body.s).toBeCloseTo(Math.hypot(0.001 / Math.sqrt(12), 0.001 / Math.sqrt(12)), 12);
  const signed = (await test.ledger.entries({ kind: "checkpoint" })).at(-1);
  expect(signed?.body).toMatchObject({ seq: limits.seq, hash: limits.hash });
  const body = await page(test, "/checks");
  expect(body).toContain("signed by Mia K: balance moved to the window.");
  expect(body).toContain(`Entry ${limits.seq} of the ledger`);
});

it("looks back at all that was measured since the last good attempt, through failure after failure", async () => {
  const test = await bench();
  await recordPiece(test, "T-GOOD");
  await test.post("/checks/repeatability", { ...passedRepeatability, step: "g" });
  const wild = {
    ...rows(
      "reading",
      scattering.map((text, n) => (n % 2 ? "50.0100" : text)),
    ),
    unit: "g",
    by: "K",
  };
  const [result] = await test.ledger.entries({ kind: "result" });
  // more than one page of records between two failures
  for (let n = 0; n < 120; n += 1) {
    const id = `doubtful-${n}`;
    await test.ledger.append("piece-opened", id, { ticket: id, description: "bar", claim: null });
    await test.ledger.append("result", id, result!.body as never);
    if (n === 80) await test.post("/checks/repeatability", { ...wild, step: "f1" });
  }
  await test.post("/checks/repeatability", { ...wild, step: "f2" });
  const body = await page(test, "/checks");
  expect(body.match(/href="\/records\/doubtful-\d+"/g)).toHaveLength(120);
  expect(body).not.toContain("T-GOOD");
});

it("says on the Bench page that a check closed the bench, lets weighing go on, and the record carries the mark", async () => {
  const test = await bench();
  expect(await page(test, "/")).not.toContain("The bench is closed since");
  const open = await recordPiece(test, "T-OPEN");
  await test.post("/checks/check-weight", {
    stated: "50",
    class: "F1",
    "reading-1": "50.0300",
    unit: "g",
    by: "K",
    step: "w",
  });
  const before = await page(test, "/");
  expect(before).toContain("The bench is closed since");
  const failed = (await test.ledger.entries({ kind: "check" })).at(-1)?.body as CheckResult;
  expect(failed.says).toMatchObject({
    code: "bench-check.check-weight.found",
    params: {
      passed: "false",
      side: "high",
      error: { code: "amount.mg", params: { mg: expect.closeTo(30, 6) } },
    },
  });
  expect(before).toContain(sentenceText(failed.says, "en"));
  expect(before).toContain(sentenceText(failed.todo, "en"));
  const { id } = await recordPiece(test, "T-CLOSED");
  const result = (await test.ledger.entriesOf(id)).find(({ kind }) => kind === "result");
  expect(result?.body).toMatchObject({ checked: { closed: { says: failed.says } } });
  expect(await page(test, `/records/${id}`)).toContain("Weighed while the bench was closed");
  expect(await page(test, `/records/${open.id}`)).not.toContain("Weighed while the bench was closed");
  // computed anew, it is still the weighing of a closed bench
  await test.post(`/records/${id}/amendments`, { celsius: "21.9", by: "K", reason: "misread" });
  const amended = (await test.ledger.entriesOf(id)).findLast(({ kind }) => kind === "amendment");
  expect(amended?.body).toMatchObject({
    result: { checked: { closed: { says: failed.says } } },
  });
  expect(await page(test, `/records/${id}`)).toContain("Weighed while the bench was closed");
});

it("marks a piece whose readings were taken while closed although a check has passed since", async () => {
  const test = await bench();
  const weigh = (reading: string, step: string) =>
    test.post("/checks/check-weight", {
      stated: "50",
      class: "F1",
      "reading-1": reading,
      unit: "g",
      by: "K",
      step,
    });
  await weigh("50.0300", "bad");
  const id = test.bench.nextPiece;
  const on = asked(test.bench);
  await on.start({ ticket: "T-1" }, id);
  await on.type("dry", "31.1035");
  await on.type("immersed", "28.1435");
  await on.temperature("21.4");
  await weigh("50.0001", "good");
  expect(await page(test, "/")).not.toContain("The bench is closed since");
  await on.record();
  expect(await page(test, `/records/${id}`)).toContain("Weighed while the bench was closed");
});

it("a chart of checks that calls for action closes the bench, each single check passed or not", async () => {
  const test = await bench();
  const weigh = (reading: string, step: string) =>
    test.post("/checks/check-weight", {
      stated: "50",
      class: "M1",
      "reading-1": reading,
      unit: "g",
      by: "K",
      step,
    });
  for (const [n, reading] of scattering.slice(0, 7).entries()) await weigh(reading, `w${n}`);
  await test.post("/checks/limits", { chart: "check-weight 50 g on typed", by: "K", why: "first limits" });
  // within what a weight of class M1 may be off (3 mg), far beyond three s of its own chart
  await weigh("50.0020", "drifted");
  expect((await test.ledger.entries({ kind: "check" })).at(-1)?.body).toMatchObject({ passed: true });
  const body = await page(test, "/");
  expect(body).toContain("The bench is closed since");
  expect(body).toContain("Out of control");
  // the Checks page names the check as stopped and lists what was weighed since its last point in control
  const { id } = await recordPiece(test, "T-AFTER");
  const checks = await page(test, "/checks");
  expect(/Check weight<\/a>.{0,200}stopped/s.test(checks)).toBe(true);
  expect(checks).toContain(`/records/${id}`);
  const german = await test.app.inject({
    url: "/",
    headers: { host: "localhost:1", "accept-language": "de" },
  });
  const why = message("bench-check.chart.violation", {
    rule: message("bench-check.rule.beyond-3s"),
    cause: message("bench-check.cause.either"),
  });
  expect(german.body).toContain(tell(message("bench-check.chart.action", { attempt: 1, why }), "de"));
  expect(german.body).toContain(tell(message("bench-check.chart.stop"), "de"));
});

it("hands the degrees of freedom of a thermometer comparison on to the budget, and a vague one widens the interval", async () => {
  const test = await bench();
  // a second thermometer known far better than these three pairs scatter: nearly all of u comes from three readings
  await test.post("/checks/thermometer", {
    ...rows("stated", ["20.00", "20.00", "20.00"]),
    ...rows("reading", ["20.50", "20.00", "19.50"]),
    referenceU: "0.01",
    by: "K",
    step: "t",
  });
  const { id, request } = await recordPiece(test, "T-1");
  // Welch–Satterthwaite (GUM G.4.1) over s/√3 = 0.289 with 2 degrees of freedom, 0.01/√6 and 0.01 with infinitely many
  const s = 0.5 / Math.sqrt(3);
  // and ±0.01 °C for each °C between 21.4 °C and where it was compared
  const u = Math.hypot(s, 0.01 / Math.sqrt(6), 0.01, (0.01 * 1.4) / Math.sqrt(3));
  expect(request.liquid.temperature_u_c).toBeCloseTo(u, 9);
  expect(request.liquid.temperature_dof).toBeCloseTo(u ** 4 / (s ** 4 / 2), 6);
  const result = (await test.ledger.entriesOf(id)).find(({ kind }) => kind === "result");
  if (result?.kind !== "result") throw new Error("no result");
  const { temperature_dof: _, ...sure } = request.liquid;
  const known = stated({ ...result.body.request, liquid: sure });
  const kept = statementOf(result.body);
  expect(kept.u_g_cm3).toBeCloseTo(known.u_g_cm3, 12);
  expect(Number(kept.dof)).toBeLessThan(known.dof ?? Number.POSITIVE_INFINITY);
  expect(kept.expanded_g_cm3).toBeGreaterThan(known.expanded_g_cm3);
});

it("writes a version of the profile for each change the checks bring, and a record names the one it used", async () => {
  const test = await bench();
  const unchecked = await recordPiece(test, "T-0");
  await test.post("/checks/repeatability", { ...passedRepeatability, step: "r1" });
  const first = await recordPiece(test, "T-1");
  // a check weight tells the span; a second repeatability test is pooled into the first
  await test.post("/checks/check-weight", {
    stated: "50",
    class: "F1",
    "reading-1": "50.0001",
    unit: "g",
    by: "K",
    step: "w",
  });
  await test.post("/checks/repeatability", { ...passedRepeatability, step: "r2" });
  await test.post("/checks/ice-point", { ...rows("reading", ["0.2", "0.2", "0.2"]), by: "K", step: "t" });
  const second = await recordPiece(test, "T-2");
  const versions = await test.ledger.entries({ kind: "checked-profile" });
  expect(versions.map(({ body }) => body)).toMatchObject([
    { of: "typed", version: 1, numbers: { repeatability: { dof: 9 } } },
    // 0.1 mg off at 50 g as a rectangle, the 0.3 mg that F1 allows as another (OIML R 111-1), scatter and rounding
    {
      of: "typed",
      version: 2,
      numbers: { repeatability: { dof: 9 }, span: { value: expect.closeTo(spanOf50, 9) } },
    },
    { of: "typed", version: 3, numbers: { repeatability: { dof: 18 }, span: {} } },
    {
      of: "thermometer",
      version: 1,
      numbers: { thermometer: [{ atCelsius: 0, correctionCelsius: expect.closeTo(-0.2, 9) }] },
    },
  ]);
  const used = async (id: string) => {
    const result = (await test.ledger.entriesOf(id)).find(({ kind }) => kind === "result");
    if (result?.kind !== "result") throw new Error("no result");
    return result.body.checked?.profiles?.map(({ entry }) => entry);
  };
  const ids = versions.map(({ id }) => id);
  expect(await used(unchecked.id)).toBeUndefined();
  expect(await used(first.id)).toEqual([ids[0]]);
  expect(await used(second.id)).toEqual([ids[2], ids[3]]);
  const shown = await page(test, `/records/${second.id}`);
  // a year for a repeatability test, common practice
  const until = new Date(Date.parse(versions[0]!.at) + 365 * 86_400_000).toISOString().slice(0, 10);
  expect(shown).toContain("Checked profile of: typed");
  expect(shown).toContain(`version 3, holds until ${until}`);
  // a thermometer comparison holds a month and changes nothing of the balance's own validity
  await test.post("/checks/thermometer", {
    ...rows("stated", ["20.0", "20.0", "20.1"]),
    ...rows("reading", ["20.2", "20.2", "20.3"]),
    referenceU: "0.05",
    by: "K",
    step: "t2",
  });
  const third = await page(test, `/records/${(await recordPiece(test, "T-3")).id}`);
  expect(third).toContain(`version 3, holds until ${until}`);
  await test.close();
  const again = await bench(test.file);
  await recordPiece(again, "T-4");
  expect(await again.ledger.entries({ kind: "checked-profile" })).toHaveLength(5);
});

it("judges a trainee's ten runs against the house's own scatter, closes nothing, and asks for the house first", async () => {
  const test = await bench();
  const dry = Array.from({ length: 10 }, () => "20.0000");
  const runs = (wet: readonly string[], step: string) =>
    test.post("/checks/trainee", {
      trainee: "Ana",
      piece: "glass 1",
      celsius: "20.0",
      ...rows("dry", dry),
      ...rows("wet", wet),
      unit: "g",
      by: "K",
      step,
    });
  const steady = [
    "12.4500",
    "12.4502",
    "12.4499",
    "12.4501",
    "12.4500",
    "12.4498",
    "12.4501",
    "12.4500",
    "12.4499",
    "12.4502",
  ];
  const early = await runs(steady, "early");
  expect(early.statusCode).toBe(422);
  expect(early.body).toContain(tell(message("bench-check.trainee.no-piece", { piece: "glass 1" }), "en"));
  for (const [n, wet] of steady.slice(0, 7).entries())
    await test.post("/checks/reference", {
      piece: "glass 1",
      stated: "2.643",
      expanded: "0.01",
      celsius: "20.0",
      "dry-1": "20.0000",
      "wet-1": wet,
      unit: "g",
      by: "K",
      step: `house ${n}`,
    });
  const calm = await page(test, String((await runs(steady, "calm")).headers.location));
  expect(calm).toContain("Inside its limits");
  const wild = steady.map((text, n) => (n % 2 ? "12.4600" : text));
  const loud = await page(test, String((await runs(wild, "loud")).headers.location));
  expect(loud).toContain("Outside its limits");
  expect(await page(test, "/")).not.toContain("The bench is closed since");
  const kept = (await test.ledger.entries({ kind: "check" })).at(-1);
  expect(kept?.body).toMatchObject({ kind: "trainee", found: { dof: 9 } });
});

it("takes several weighings of one weight as one load: their mean counts, and the test's own u shrinks", async () => {
  const test = await bench();
  const linear = (stated: string[], reading: string[], step: string) =>
    test.post("/checks/linearity", {
      ...rows("stated", stated),
      ...rows("reading", reading),
      class: "E2",
      unit: "g",
      by: "K",
      step,
    });
  await linear(
    ["10", "10", "10", "10", "50", "50", "50", "50", "100", "100", "100", "100"],
    [
      "10.0001",
      "10.0003",
      "10.0001",
      "10.0003",
      "50.0000",
      "50.0000",
      "50.0000",
      "50.0000",
      "100.0000",
      "100.0000",
      "100.0000",
      "100.0000",
    ],
    "four",
  );
  await linear(["10", "50", "100"], ["10.0002", "50.0000", "100.0000"], "one");
  const [four, one] = (await test.ledger.entries({ kind: "check" })).map(({ body }) => {
    const { points } = (body as unknown as { found: { points: { errorGrams: number; uGrams: number }[] } })
      .found;
    return points;
  });
  expect(four?.map(({ errorGrams }) => errorGrams)).toEqual(
    one?.map(({ errorGrams }) => expect.closeTo(errorGrams, 9)),
  );
  // what the repeatability adds: s²/4 instead of s², s assumed two thirds of d = 0.1 mg
  const s = (2 / 3) * 0.0001;
  expect((one![0]!.uGrams ** 2 - four![0]!.uGrams ** 2) / s ** 2).toBeCloseTo(3 / 4, 6);
});

it("computes a reference piece weighed by the flask as a flask", async () => {
  const test = await bench();
  await test.settings.keep({ method: "flask" });
  const typed = {
    piece: "glass grains",
    expanded: "0.01",
    celsius: "20.0",
    "dry-1": "20.0000",
    "wet-1": "152.4500",
    unit: "g",
    by: "K",
  };
  const lacking = await test.post("/checks/reference", { ...typed, stated: "2.643", step: "f0" });
  expect(lacking.statusCode).toBe(422);
  expect(lacking.body).toContain(
    tell({ code: "check.reference.reading-missing", params: { count: 3 } }, "en"),
  );
  // invented: D = 140 + 20 − 152.45 = 7.55 g, the same piece as above: 2.642 g/cm³
  const right = await test.post("/checks/reference", {
    ...typed,
    "full-1": "140.0000",
    stated: "2.643",
    step: "f1",
  });
  expect(await page(test, String(right.headers.location))).toContain("Inside its limits");
  const [check] = await test.ledger.entries({ kind: "check" });
  const { measured } = (check!.body as unknown as { asked: { measured: { gPerCm3: number } } }).asked;
  // (20/7.55)(ρw − 0.0012) + 0.0012 with ρw = 0.99821 at 20 °C (Tanaka 2001 [from memory]); the last place is worth 0.00004
  expect(measured.gPerCm3).toBeCloseTo((20 / 7.55) * (0.99821 - 0.0012) + 0.0012, 3);
});
