import { afterEach, beforeEach, expect, test } from "vitest";
import { normalBelow } from "../../../calibration/normal.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

/** The form of the bench as the page sends it, with the rule and the confidence given here. */
const bench = (change: Record<string, string>) => ({
  method: "hung",
  metal: "silver",
  water: "distilled",
  scaleStep: "0.0001",
  scaleStepUnit: "g",
  repeatabilityGrams: "",
  immersedRepeatabilityGrams: "",
  linearityGrams: "0",
  confidencePercent: "95.45",
  thermometerHalfWidthCelsius: "0.5",
  dissolvedSolidsMgPerL: "0",
  altitudeMetres: "0",
  wireMillimetres: "0",
  bubbleAllowanceMg: "0",
  rule: "none",
  ruleMultiple: "1",
  ...change,
});

const open = (key: string) =>
  at.post("/bench/piece", { ticket: key, description: "a bar", method: "hung", claim: "ag-925", key });

/** 10.35 g/cm³ in water of 21.4 °C, in the middle of the band of sterling silver. */
async function weigh() {
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1045", unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
}

test("the rule and the confidence of a piece are those of the moment it was opened, whatever Settings say later", async () => {
  await at.post("/settings/bench", bench({ rule: "guard-band" }));
  await open("R-1");
  await weigh();
  await at.post("/settings/bench", bench({ rule: "simple", confidencePercent: "80" }));
  await at.post("/bench/record", {});
  const entries = await at.ledger.entriesOf("R-1");
  expect(entries[0]?.body).toMatchObject({
    rule: { kind: "guard-band", multiple: "1", confidence_percent: "95.45" },
  });
  const result = entries.find(({ kind }) => kind === "result");
  expect(result?.body).toMatchObject({
    request: { confidence: 0.9545, decision_rule: { kind: "guard-band", multiple: 1 } },
    statement: { conformity: { decision: { rule: { kind: "guard-band" } } } },
  });
  await open("R-2");
  await weigh();
  expect(at.bench.evaluation).toMatchObject({
    request: { confidence: 0.8, decision_rule: { kind: "simple" } },
  });
});

test("bench, record and report state rule, limits, verdict and risk", async () => {
  await at.post("/settings/bench", bench({ rule: "guard-band" }));
  await open("R-1");
  await weigh();
  const evaluation = at.bench.evaluation;
  if (!evaluation || "refused" in evaluation) throw new Error("not evaluated");
  const { density_g_cm3: value, u_g_cm3: u, expanded_g_cm3: U } = evaluation.statement;
  const conformity = evaluation.statement.conformity.decision!;
  const [low, high] = conformity.limits_g_cm3;
  // JCGM 106:2012 clause 8.3.2.1: limits moved inwards by w = U; clause 7: conformance probability of a normal density.
  // The interval is quoted to five figures of a Monte Carlo, hence a thousandth of its width.
  expect(conformity.acceptance_g_cm3![0]).toBeCloseTo(low + U, 5);
  expect(conformity.acceptance_g_cm3![1]).toBeCloseTo(high - U, 5);
  expect(conformity.conformance_probability).toBeCloseTo(
    normalBelow((high - value) / u) - normalBelow((low - value) / u),
    3,
  );
  expect(conformity.verdict).toBe("pass");

  const stated = [/Guard band of 1 U/, /Pass\b/, /inside the limits/i, /with a probability of up to 2\.3 %/];
  const benchPage = await textOf(at, "/");
  await at.post("/bench/record", {});
  const record = await textOf(at, "/records/R-1");
  await at.post("/records/R-1/reports", { step: "one" });
  const address = /\/records\/R-1\/reports\/[^"?]+\?copy=1/.exec(
    (await at.app.inject({ url: "/records/R-1", headers: { host } })).body,
  )![0];
  const report = await textOf(at, address);
  for (const words of stated) {
    expect(benchPage).toMatch(words);
    expect(record).toMatch(words);
    expect(report).toMatch(words);
  }
});

test("without a rule the finding stands alone, and a piece without a claim has no limits to be compared with", async () => {
  await open("R-1");
  await weigh();
  expect(await textOf(at, "/")).not.toMatch(/decision rule agreed/);
  await at.post("/bench/record", {});
  await at.post("/settings/bench", bench({ rule: "simple" }));
  await at.post("/bench/piece", {
    ticket: "R-2",
    description: "a bar",
    method: "hung",
    claim: "",
    key: "R-2",
  });
  await weigh();
  expect(at.bench.evaluation).not.toHaveProperty("refused");
  expect(await textOf(at, "/")).not.toMatch(/decision rule agreed/);
});

test("Settings offer every rule with its risk, and refuse a guard band that is no width", async () => {
  const page = await textOf(at, "/settings");
  for (const words of [
    /no verdict/,
    /simple acceptance/,
    /up to half/,
    /guard band/,
    /at most 2\.3 %/,
    /Four answers/,
  ])
    expect(page).toMatch(words);
  const refused = await at.post("/settings/bench", bench({ rule: "guard-band", ruleMultiple: "9" }));
  expect(refused.statusCode).toBe(422);
  expect(refused.body).toMatch(/id="ruleMultiple-problem"/);
  expect(at.settings.now.decisionRule).toEqual({ kind: "none", multiple: "1" });
});

test("in German the verdict is German", async () => {
  await at.post("/settings/bench", bench({ rule: "pass-and-conditional" }));
  await open("R-1");
  await weigh();
  const { body } = await at.app.inject({
    url: "/",
    headers: { host, cookie: "underhook-look=auto.de.on" },
  });
  expect(wordsOf(body)).toMatch(/vereinbarten Entscheidungsregel Angenommen/);
  expect(wordsOf(body)).toMatch(/Risiko der Regel/);
});
