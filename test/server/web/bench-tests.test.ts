import { afterEach, beforeEach, expect, test } from "vitest";
import { evidenceKinds } from "../../../server/conformity/evidence/evidence.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, textOf, wordsOf } from "./recorded.ts";

const t = tellerOf("en");

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
  await at.post("/bench/piece", {
    ticket: "bar-1",
    description: "a small bar",
    method: "hung",
    claim: "au-999",
    key: "bar-1",
  });
});
afterEach(() => at.close());

/** 31.1049 g displacing 1.6121 g: a density of fine gold, and of tungsten. */
async function weigh() {
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1049", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "29.4928", unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
}
const coil = (percent: string) => ({
  kind: "conductivity",
  "conductivity-percent": percent,
  "conductivity-within": "1",
  "conductivity-celsius": "21.5",
});
const kept = async () => (await at.ledger.entriesOf("bar-1")).filter(({ kind }) => kind === "evidence");

/** Every kind that was not made, as the page lists it. */
const notMade = (...made: string[]) =>
  t("other-tests.not-made", {
    names: evidenceKinds
      .filter((kind) => !made.includes(kind))
      .map((kind) => ({ code: `test.name.${kind}` })),
  });

test("before any weighing a magnet excludes, the tests not made are named, and the next step is said", async () => {
  expect(await textOf(at, "/")).toContain(notMade());
  expect((await at.post("/bench/tests", { kind: "magnet", "magnet-shows": "none" })).statusCode).toBe(303);
  const text = await textOf(at, "/");
  expect(text).toMatch(
    new RegExp(t("other-tests.excluded", { names: "carbon steel", more: 0 }).slice(0, -1)),
  );
  expect(text).toContain(notMade("magnet"));
  expect(text).toContain(t("answer.next.weigh"));
  expect(await kept()).toHaveLength(1);
});

test("a coil that reads tungsten excludes the claimed gold before and after the density", async () => {
  // programmed-instruction tables 9.1: tungsten 31.4, gold 70 % IACS
  await at.post("/bench/tests", coil("31.4"));
  const claim = { metal: "au-999" };
  expect(await textOf(at, "/")).toContain(t("answer.excluded-untold", { claim }));
  await weigh();
  const text = await textOf(at, "/");
  expect(text).toContain(t("state.excluded"));
  expect(text).toContain(t("answer.excluded-fits", { claim, others: "" }).split(":")[0]!);
});

test("with the density a coil that reads gold leaves the core, and the sound speed is the next test", async () => {
  await weigh();
  await at.post("/bench/tests", coil("74"));
  const text = await textOf(at, "/");
  expect(text).toContain(t("answer.next.sound"));
  expect(text).toContain(messageText("metal.w-pure"));
});

test("tests that cannot both be right are pointed out while the piece is on the bench", async () => {
  await weigh();
  await at.post("/bench/tests", { kind: "magnet", "magnet-shows": "strong" });
  const tests = [{ code: "test.name.density" }, { code: "test.name.magnet" }] as const;
  expect(await textOf(at, "/")).toContain(t("test.check.contradict", { tests }));
});

test("a test set aside stays visible with its reason, excludes nothing, and needs that reason", async () => {
  await weigh();
  await at.post("/bench/tests", { kind: "magnet", "magnet-shows": "strong" });
  const [entry] = await kept();
  const refused = await at.post(`/bench/tests/${entry?.id}/voiding`, { reason: " " });
  expect(refused.statusCode).toBe(422);
  expect(wordsOf(refused.body)).toContain("needs a reason");
  await at.post(`/bench/tests/${entry?.id}/voiding`, { reason: "it was the clasp" });
  const text = await textOf(at, "/");
  expect(text).toContain(t("evidence.excluded-with", { reason: "it was the clasp" }));
  expect(text).not.toContain(t("test.check.contradict", { tests: "" }).split(":")[0]!);
});

test("a refused entry keeps what was typed, names what would be right, and stores nothing", async () => {
  const answer = await at.post("/bench/tests", coil("314"));
  expect(answer.statusCode).toBe(422);
  expect(answer.body).toContain('value="314"');
  expect(wordsOf(answer.body)).toContain("0.1 to 115 % IACS");
  expect(await kept()).toEqual([]);
});

test("before a dry reading the size asks for the mass; after it the reading counts", async () => {
  const size = {
    kind: "size",
    "size-specification": "gb-sovereign",
    "size-diameter": "22.05",
    "size-within": "0.02",
  };
  expect((await at.post("/bench/tests", size)).statusCode).toBe(422);
  await at.post("/bench/tests", { ...size, "size-mass": "7.99", "size-mass-within": "0.01" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "7.9881", unit: "g" });
  await at.post("/bench/tests", size);
  // Coinage Act 1870, first schedule: 7.98805 g, remedy 0.01296 g
  const masses = (await kept()).map(({ body }) => (body as { lines?: unknown[] }).lines?.[0]);
  const compared = { what: "mass", unit: "g", low: 7.97509, high: 8.00101 };
  expect(masses).toMatchObject([
    { code: "specification.compared", params: { ...compared, measured: 7.99, state: "undecided" } },
    { code: "specification.compared", params: { ...compared, measured: 7.9881, state: "within" } },
  ]);
});

test("the same form sent twice stores once, and the record knows every test of the bench", async () => {
  const ring = { kind: "ring", "ring-heard": "clear", subject: "bar-1", version: `${at.bench.about.seen}` };
  await at.post("/bench/tests", ring);
  await at.post("/bench/tests", ring);
  expect(await kept()).toHaveLength(1);
  await weigh();
  await at.post("/bench/record", {});
  expect(await textOf(at, "/records/bar-1/evidence")).toMatch(/ring.*rings clear/);
});

test("a piece on the bench is found again after a restart with its tests", async () => {
  await at.post("/bench/tests", coil("31.4"));
  const { file } = at;
  await at.close();
  at = await buildTestBench(file);
  expect(await textOf(at, "/")).toContain("31.4 ± 1.2 % IACS");
});

test("with scripts the forms fill their own part of the page", async () => {
  const page = await at.app.inject({ url: "/", headers: { host } });
  expect(page.body).toMatch(/hx-post="\/bench\/tests" hx-target="#other-tests"/);
});
