import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type Cable, createCable } from "../../drivers/pty.ts";
import { until } from "../../until.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { textOf } from "./recorded.ts";

let at: TestBench;
let cable: Cable;
beforeEach(async () => {
  // the wall clock alone is set by hand, so that a minute of lines needs no minute; waiting and the cable are real
  vi.useFakeTimers({ toFake: ["Date"], now: new Date("2026-03-02T09:00:00Z") });
  cable = createCable();
  at = await buildTestBench();
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  // what comes before the first line end is dropped, so the first line may be sent more than once
  await until(() => {
    cable.send("  0.0000 g\r\n");
    return at.bench.scale?.live().state === "reading";
  }, "the balance");
});
afterEach(async () => {
  vi.useRealTimers();
  await at.close();
  cable.unplug();
});

/** Sends one line a second of the wall clock and waits until each is heard. */
async function lines(texts: readonly string[]): Promise<void> {
  for (const text of texts) {
    vi.setSystemTime(new Date(Date.now() + 1000));
    cable.send(`  ${text} g\r\n`);
    await until(() => {
      const live = at.bench.scale?.live();
      return live?.state === "reading" && live.text === text;
    }, `the line ${text}`);
  }
}

/** An opened piece, typed dry, whose reading in the water is asked for. */
async function waitingFor(method: "hung" | "displaced") {
  await at.post("/bench/piece", { ticket: "L-1", method, claim: "", key: "L-1" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  for (const { kind } of at.bench.scale?.checks() ?? []) await at.post("/bench/balance-looked-at", { kind });
  await at.post("/bench/captures", { role: method === "hung" ? "immersed" : "rise" });
  expect(at.bench.waitingFor).toBeDefined();
}

test("a beaker that loses water while the piece hangs in it is named on the page, and nothing is taken for it", async () => {
  await waitingFor("displaced");
  expect(at.bench.checks.map(({ code }) => code)).not.toContain("check.drift-immersed");
  // 0.5 mg a second is 30 mg a minute
  await lines(Array.from({ length: 15 }, (_, second) => (2.96 - 0.0005 * second).toFixed(4)));
  const drift = at.bench.checks.find(({ code }) => code === "check.drift-immersed");
  expect(drift?.params).toMatchObject({ moves: expect.any(String) });
  expect(Number(drift?.params.g_per_minute)).toBeCloseTo(0.03, 3);
  expect(at.bench.item?.captures.map(({ text }) => text)).toEqual(["31.1035"]);
});

test("hanging the piece is a step, no drift", async () => {
  await waitingFor("hung");
  await lines(["0.0001", "0.0002", "0.0001", ...Array.from({ length: 12 }, (_, n) => `28.143${n % 2}`)]);
  expect(at.bench.checks.map(({ code }) => code)).not.toContain("check.drift-immersed");
});

test("the zero key pressed while the piece hangs is asked about", async () => {
  await waitingFor("hung");
  await lines(["28.1430", "28.1434", "0.0002", "0.0001"]);
  const page = await textOf(at, "/");
  expect(page).toContain("Was the zero or tare key pressed during the immersion?");
});

test("a display that shows the same line from one capture to the next is asked about on the page, and both stay", async () => {
  await at.post("/bench/piece", { ticket: "L-2", method: "hung", claim: "", key: "L-2" });
  for (const { kind } of at.bench.scale?.checks() ?? []) await at.post("/bench/balance-looked-at", { kind });
  const take = async (count: number) => {
    await at.post("/bench/captures", { role: "dry" });
    await until(() => {
      cable.send("    31.1035 g   stable\r\n");
      return at.bench.item?.captures.length === count;
    }, `capture ${count}`);
  };
  await take(1);
  expect(await textOf(at, "/")).not.toContain("without the least change");
  await take(2);
  expect(await textOf(at, "/")).toMatch(
    /stood at 31\.1035 g without the least change since the reading before\..*Was the piece lifted off/s,
  );
  expect(at.bench.item?.captures.map(({ text, unmoved }) => [text, unmoved])).toEqual([
    ["31.1035", undefined],
    ["31.1035", true],
  ]);
});
