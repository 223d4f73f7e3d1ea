import { afterEach, beforeEach, expect, test } from "vitest";
import type { Message } from "../../../calibration/message.ts";
import { evidenceKinds, marking } from "../../../server/conformity/evidence/evidence.ts";
import { statedBy } from "../../../server/reports/stated.ts";
import { tell, tellerOf } from "../../../views/messages/tell.ts";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, recorded, textOf, wordsOf } from "./recorded.ts";

const t = tellerOf("en");

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const page = "/records/bar-1/evidence";
const statementOf = async (subject: string) => statedBy(await at.ledger.entriesOf(subject)).statement;
/** 31.1049 g displacing 1.6121 g: a density of fine gold, and of tungsten. */
const fineGold = { id: "bar-1", claim: "au-999", dry: "31.1049", immersed: "29.4928" };
const coil = (percent: string) => ({
  kind: "conductivity",
  "conductivity-percent": percent,
  "conductivity-within": "1",
  "conductivity-celsius": "21,5",
});

test("before any test the page repeats the result of the record and shows every test as a hole", async () => {
  await recorded(at, fineGold);
  const text = await textOf(at, page);
  expect(text).toContain("Gold 999");
  expect(text).toContain("Tungsten");
  for (const kind of evidenceKinds.filter((one) => !marking.has(one)))
    expect(text).toContain(`${t(`test.name.${kind}`)} ${t("evidence.not-made")}`);
});

test("a coil that reads 31 % IACS is kept as an entry and contradicts fine gold with the physics", async () => {
  await recorded(at, fineGold);
  // programmed-instruction tables 9.1, as in the tests of the evidence itself: tungsten 31.4, gold 70 % IACS
  expect((await at.post(page, coil("31,4"))).statusCode).toBe(303);
  const entry = (await at.ledger.entriesOf("bar-1")).findLast(({ kind }) => kind === "evidence");
  expect(entry?.body).toMatchObject({
    test: "conductivity",
    evidence: { kind: "conductivity", percentIacs: 31.4, celsius: 21.5 },
  });
  const text = await textOf(at, page);
  expect(text).toContain("excluded");
  const restated = (await statementOf("bar-1")).excluded_by_tests?.find(({ id }) => id === "au-999");
  expect(restated).toMatchObject({ by: "conductivity", says: { params: { percent_iacs: 31.4 } } });
  expect(text).toContain(tell(restated?.says as Message, "en"));
  // ± 2u of ± 1 as rectangular; 58 MS/m is 100 % IACS (IEC 60028)
  expect(text).toContain("31.4 ± 1.2 % IACS (18.2 MS/m) at 21.5 °C");
});

test("a conductivity in MS/m is the same as in % IACS", async () => {
  await recorded(at, fineGold);
  // 45.2 MS/m of gold is 78 % IACS, where copper's 58 MS/m is 100 % (IEC 60028)
  await at.post(page, { ...coil("45,2"), "conductivity-unit": "ms-per-m" });
  const entry = (await at.ledger.entriesOf("bar-1")).findLast(({ kind }) => kind === "evidence");
  expect(entry?.body).toMatchObject({ evidence: { percentIacs: expect.closeTo(77.93, 2) } });
});

test("a coil that reads gold leaves the core, and the next test is the sound speed", async () => {
  await recorded(at, fineGold);
  await at.post(page, coil("74"));
  const text = await textOf(at, page);
  const { next_tests, excluded_by_tests, not_excluded } = await statementOf("bar-1");
  expect(next_tests?.[0]?.test).toBe("sound");
  expect(text).toContain(t("answer.next.sound"));
  expect(excluded_by_tests?.map(({ id }) => id)).toContain("w-pure");
  expect(not_excluded.map(({ id }) => id)).toContain("w-core-au");
});

test("tests that cannot both be right are pointed out and not averaged", async () => {
  await recorded(at, fineGold);
  await at.post(page, { kind: "magnet", "magnet-shows": "strong" });
  const text = await textOf(at, page);
  const tests = [{ code: "test.name.density" }, { code: "test.name.magnet" }] as const;
  expect(text).toContain(t("test.check.contradict", { tests }));
  expect(text).toContain(t("state.inconclusive"));
});

test("a test set aside stays visible with its reason and excludes nothing any more", async () => {
  await recorded(at, fineGold);
  await at.post(page, { kind: "magnet", "magnet-shows": "strong" });
  const entry = (await at.ledger.entriesOf("bar-1")).findLast(({ kind }) => kind === "evidence");
  expect((await at.post(`${page}/${entry?.id}/voiding`, { reason: " " })).statusCode).toBe(422);
  await at.post(`${page}/${entry?.id}/voiding`, { reason: "it was the clasp" });
  const text = await textOf(at, page);
  expect(text).toContain(t("evidence.excluded-with", { reason: "it was the clasp" }));
  expect((await statementOf("bar-1")).checks).not.toContainEqual(
    expect.objectContaining({ code: "test.check.contradict" }),
  );
});

test("a thickness and an echo time give the sound speed with its uncertainty, and both stay in the entry", async () => {
  await recorded(at, fineGold);
  const echo = {
    kind: "sound",
    "sound-thickness": "2,00",
    "sound-thickness-within": "0,02",
    "sound-time": "0,733",
    "sound-time-within": "0,01",
    "sound-paths": "2",
  };
  await at.post(page, echo);
  const entry = (await at.ledger.entriesOf("bar-1")).findLast(({ kind }) => kind === "evidence");
  // 2 · 2.00 mm / 0.733 µs; limits as rectangular, u = a/√3 (JCGM 100, 4.3.7)
  expect(entry?.body).toMatchObject({
    evidence: { mPerS: expect.closeTo(5457, 0), echo: { thicknessMm: 2, microseconds: 0.733, paths: 2 } },
  });
  const text = await textOf(at, page);
  // ± 2u = 2 · 5457 · √((0.01/√3)² + (0.01364/√3)²)
  expect(text).toContain("5457 ± 110 m/s, from 2 mm crossed 2 times in 0.733 µs");
  // ASTM E494 Table X3.1: gold 3240 m/s
  expect((await statementOf("bar-1")).excluded_by_tests).toContainEqual({
    id: "au-999",
    by: "sound",
    says: expect.objectContaining({
      params: expect.objectContaining({
        speed: { code: "separation.speed", params: { speed_m_s: 3240 } },
        measured_m_s: expect.closeTo(5457, 0),
      }),
    }),
  });
  for (const [change, message] of [
    [{ "sound-speed": "3240" }, "they need not agree"],
    [{ "sound-paths": "" }, "how often it crossed the thickness"],
    [{ "sound-time": "73.3" }, "which no metal carries"],
  ] as const) {
    const refused = await at.post(page, { ...echo, ...change });
    expect(refused.statusCode).toBe(422);
    expect(wordsOf(refused.body)).toContain(message);
  }
});

test("refused entries keep what was typed and say what would be right", async () => {
  await recorded(at, fineGold);
  const answer = await at.post(page, { ...coil("314"), "conductivity-celsius": "warm" });
  expect(answer.statusCode).toBe(422);
  expect(answer.body).toContain('value="314"');
  expect(answer.body).toContain('value="warm"');
  const text = wordsOf(answer.body);
  expect(text).toContain("0.1 to 115 % IACS");
  expect(text).toContain(messageText("form.number.not-a-number", { typed: "warm" }));
  expect((await at.ledger.entriesOf("bar-1")).some(({ kind }) => kind === "evidence")).toBe(false);
});

test("a touch needs a trained person and the owner's consent, and shows its cautions", async () => {
  await recorded(at, fineGold);
  expect(await textOf(at, page)).toMatch(/acids burn eyes, hands and lungs/);
  const touch = { kind: "touch", "touch-metal": "gold", "touch-low": "740", "touch-high": "760" };
  const refused = wordsOf((await at.post(page, touch)).body);
  expect(refused).toContain("a trained person");
  expect(refused).toContain("the owner agreed");
  await at.post(page, { ...touch, "touch-by": "bench 2", "touch-agreed": "yes" });
  expect(await textOf(at, page)).toMatch(/reads like gold, 740 to 760 ‰ \(bench 2\)/);
});

test("the same form sent twice stores once", async () => {
  await recorded(at, fineGold);
  const form = {
    kind: "ring",
    "ring-heard": "clear",
    version: `${(await at.ledger.entriesOf("bar-1")).length}`,
  };
  await at.post(page, form);
  await at.post(page, form);
  const made = (await at.ledger.entriesOf("bar-1")).filter(({ kind }) => kind === "evidence");
  expect(made).toHaveLength(1);
});

test("a sovereign's mass and size are held against the Coinage Act 1870, and its outline against the water", async () => {
  // 7.9881 g of 22 ct gold, 17.5 g/cm³ displaces 0.4554 g of water at 21.4 °C; invented readings
  await recorded(at, { id: "bar-1", claim: "au-916", dry: "7.9881", immersed: "7.5327" });
  await at.post(page, {
    kind: "size",
    "size-specification": "gb-sovereign",
    "size-diameter": "22.05",
    "size-thickness": "1.52",
    "size-within": "0.02",
  });
  const text = await textOf(at, page);
  // π/4 · 22.05² · 1.52 mm³; ±2u of 0.02 mm rectangular on both
  // Coinage Act 1870, first schedule: 7.98805 g, remedy 0.01296 g
  expect(text).toMatch(/7\.9881 g .*7\.97509 .* 8\.00101 g/);
  expect(text).toContain("Coinage Act 1870");
  expect(text).toMatch(/in an outline of 0.5804 ± 0.0089 cm³/);
});

test("a piece of gold 916 shows its fineness interval and its fine mass", async () => {
  await recorded(at, { id: "bar-1", claim: "au-916", dry: "7.9881", immersed: "7.5327" });
  const text = await textOf(at, `${page}?metal=gold&colour=red`);
  const [, low, high] = /its fineness lies between (\d+) and (\d+) ‰/.exec(text) ?? [];
  // volume-additive table for gold and copper, 17.5 g/cm³: 911 ‰ (computed by hand from Au 19.30, Cu 8.96)
  expect(Number(low)).toBeLessThan(911);
  expect(Number(high)).toBeGreaterThan(911);
  expect(text).toMatch(/Fine gold, if so [\d.]+ to [\d.]+ g/);
});

test("a piece without a record is refused by name", async () => {
  const answer = await at.app.inject({ url: "/records/nobody/evidence", headers: { host } });
  expect(answer.statusCode).toBe(404);
  expect(answer.body).toContain("nobody");
});
