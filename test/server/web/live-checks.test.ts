import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { codesIn } from "../page-fields.ts";
import { host } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench(undefined, { demo: true });
});
afterEach(() => at.close());

/** The fields that the page gives back, as a browser would send them again. */
const fieldsOn = (body: string) =>
  Object.fromEntries(
    [...body.matchAll(/<input[^>]*name="([^"_][^"]*)"[^>]*>/g)].flatMap(([tag, name = ""]) => {
      const [, value] = /value="([^"]*)"/.exec(tag) ?? [];
      return value === undefined ? [] : [[name, value]];
    }),
  );

test("readings are taken from the balance one by one; the same load is not taken twice, and nothing is kept yet", async () => {
  const first = await at.post("/checks/zero-return/readings", { by: "K" });
  const taken = fieldsOn(first.body);
  expect(taken["before-1"]).toMatch(/^-?\d+\.\d+$/);
  expect(taken["after-1"] ?? "").toBe("");
  const again = await at.post("/checks/zero-return/readings", taken);
  expect([again.statusCode, codesIn(again.body)]).toEqual([422, ["bench-check.entry.not-moved"]]);
  expect(fieldsOn(again.body)["before-1"]).toBe(taken["before-1"]);
  expect(await at.ledger.entries({ kind: "check" })).toHaveLength(0);
});

test("the details of the check before stand in the form; its readings do not", async () => {
  const weight = { class: "E2", stated: "50", "reading-1": "50.0001", unit: "g", by: "K. R." };
  expect((await at.post("/checks/check-weight", weight)).statusCode).toBe(303);
  const { body } = await at.app.inject({ url: "/checks/check-weight", headers: { host } });
  expect(fieldsOn(body)).toMatchObject({ class: "E2", stated: "50", by: "K. R." });
  expect(fieldsOn(body)["reading-1"] ?? "").toBe("");
});
