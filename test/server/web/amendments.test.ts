import { afterEach, beforeEach, expect, test } from "vitest";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { recorded, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
  await recorded(at, { id: "bar-1", claim: "ag-999", dry: "31.1035", immersed: "28.1435" });
});
afterEach(() => at.close());

const amend = (fields: Record<string, string>) =>
  at.post("/records/bar-1/amendments", { by: "KR", reason: "read off the wrong thermometer", ...fields });

test("a water temperature typed wrongly is amended: the new result leads, and what it replaces stands beside it", async () => {
  const before = await textOf(at, "/records/bar-1");
  const [, first] = /([\d.]+) ± [\d.]+ g\/cm³/.exec(before) ?? [];
  expect((await amend({ celsius: "11.4" })).statusCode).toBe(303);
  const after = await textOf(at, "/records/bar-1");
  const [, second] = /([\d.]+) ± [\d.]+ g\/cm³/.exec(after) ?? [];
  // Tanaka 2001: water 0.997904 g/cm³ at 21.4 °C and 0.999564 at 11.4 °C; the density follows the water's
  expect(Number(second) / Number(first)).toBeCloseTo(0.999564 / 0.997904, 4);
  expect(after).toMatch(/Amended .* by KR; what it replaces stands below/);
  const replaced = (await at.ledger.entriesOf("bar-1")).find(({ kind }) => kind === "result");
  expect(after).toContain(`It replaces the result of entry ${replaced?.seq}, which stays in the ledger.`);
  expect(after).toMatch(new RegExp(`Density: ${first} ± [\\d.]+ g/cm³ → ${second}`));
  expect(after).toContain("Water temperature: 21.4 °C → 11.4 °C");
});

test("the decision rule and the other inputs of an amended result are those of the first", async () => {
  await amend({ celsius: "21.9" });
  const entries = await at.ledger.entriesOf("bar-1");
  const first = entries.find((entry) => entry.kind === "result");
  const amended = entries.find((entry) => entry.kind === "amendment");
  const { liquid, ...rest } = amended?.body.result?.request ?? {};
  const { liquid: before, ...same } = first?.body.request ?? {};
  expect(rest).toEqual(same);
  expect(liquid).toEqual({ ...(before as object), temperature_c: 21.9 });
});

test("an amendment of the ticket alone leaves the result and says nothing of one", async () => {
  await amend({ ticket: "bar-2" });
  const text = await textOf(at, "/records/bar-1");
  expect(text).toContain("Ticket: bar-1 → bar-2");
  expect(text).not.toContain("It replaces the result");
});

test("a temperature that no water has is refused, and nothing is amended", async () => {
  const refused = await amend({ celsius: "71" });
  expect(refused.statusCode).toBe(422);
  expect(wordsOf(refused.body)).toContain(
    messageText("form.number.fahrenheit", {
      typed: { decimal: "71" },
      celsius: { decimal: "21.7" },
      from: 0,
      to: 40,
    }),
  );
  expect((await at.ledger.entriesOf("bar-1")).some(({ kind }) => kind === "amendment")).toBe(false);
});
