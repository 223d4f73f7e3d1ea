import { afterEach, beforeEach, expect, test } from "vitest";
import { tellerOf } from "../../../views/messages/tell.ts";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { checksOn, textOf, wordsOf } from "./recorded.ts";

const t = tellerOf("en");

/** Each slip through the forms of the bench: named, asked about on the page, and every reading kept as it was typed. */
let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const open = (method: string, claim = "") =>
  at.post("/bench/piece", { ticket: "P-1", description: "a coin", method, claim, key: "P-1" });
const reading = (role: string, text: string, unit = "g") =>
  at.post("/bench/typed-readings", { role, reading: text, unit });
const kept = () => at.bench.item?.captures.map(({ text, unit }) => `${text} ${unit}`);

test.each([
  {
    slip: "repeats that climb: bubbles leaving",
    method: "hung",
    claim: "",
    readings: [
      ["dry", "1.2345"],
      ["immersed", "1.1135"],
      ["immersed", "1.1144"],
      ["immersed", "1.1150"],
    ],
    code: "check.still-climbing",
  },
  {
    slip: "resting on the bottom of the beaker",
    method: "displaced",
    claim: "",
    readings: [
      ["dry", "31.10"],
      ["rise", "31.08"],
    ],
    code: "check.rests-on-bottom",
  },
  {
    slip: "not covered",
    method: "hung",
    claim: "",
    readings: [
      ["dry", "31.10"],
      ["immersed", "30.10"],
    ],
    code: "check.not-covered",
  },
  {
    slip: "hanger in the dry reading",
    method: "hung",
    claim: "ag-999",
    // 31.10 g of silver at 10.49 displaces 2.96 g; 1.95 g of hanger lay on the pan and was zeroed in the water
    readings: [
      ["dry", "33.05"],
      ["immersed", "28.14"],
    ],
    code: "check.lower-than-claim",
  },
  {
    slip: "swapped boxes",
    method: "hung",
    claim: "",
    readings: [
      ["dry", "28.14"],
      ["immersed", "31.10"],
    ],
    code: "check.boxes-swapped",
  },
  {
    slip: "other decimals in mid-run",
    method: "hung",
    claim: "",
    readings: [
      ["dry", "31.1035"],
      ["immersed", "28.14"],
    ],
    code: "check.decimals-changed",
  },
])("$slip", async ({ method, claim, readings, code }) => {
  await open(method, claim);
  for (const [role = "", text = ""] of readings) expect((await reading(role, text)).statusCode).toBe(303);
  expect(await checksOn(at)).toContain(code);
  expect(kept()).toEqual(readings.map(([, text]) => `${text} g`));
});

test("unit changed in mid-run", async () => {
  await open("hung");
  await reading("dry", "31.10");
  await reading("immersed", "0.9047", "ozt");
  expect(await checksOn(at)).toContain("check.units-mixed");
  expect(kept()).toEqual(["31.10 g", "0.9047 ozt"]);
});

test("a hanger stated as weighed in although the balance was zeroed with it", async () => {
  await open("hung", "ag-999");
  // 31.10 g of silver read 28.14 with the hanger zeroed; its 1.95 g would be taken off a second time
  await reading("dry", "31.10");
  await reading("immersed", "28.14");
  await at.post("/bench/details", { "hanger-in-liquid": "1.95" });
  expect(await checksOn(at)).toContain("check.hanger-in-immersed");
  expect(kept()).toEqual(["31.10 g", "28.14 g"]);
});

test("a hanger weighed in is no slip", async () => {
  await open("hung", "ag-999");
  await reading("dry", "31.10");
  await reading("immersed", "30.09");
  await at.post("/bench/details", { "hanger-in-liquid": "1.95" });
  expect(await textOf(at, "/")).not.toContain(t("bench.steps.doubts"));
});

test("°F typed for °C is asked about with what it would be, the entry stays in its field and in the ledger", async () => {
  await open("hung");
  await reading("dry", "31.10");
  await reading("immersed", "28.14");
  const answer = await at.post("/bench/water", { celsius: "70.5" });
  expect(answer.statusCode).toBe(422);
  expect(wordsOf(answer.body)).toContain(
    messageText("form.number.fahrenheit", {
      typed: { decimal: "70.5" },
      celsius: { decimal: "21.39" },
      from: 0,
      to: 40,
    }),
  );
  expect(answer.body).toContain('value="70.5"');
  expect(at.bench.item?.waterCelsius).toBeUndefined();
  const notes = (await at.ledger.entriesOf("P-1")).filter(({ kind }) => kind === "note");
  expect(notes.map(({ body }) => body)).toEqual([
    { message: { code: "weighing.note.typed-temperature", params: { typed: "70.5 °C" } } },
  ]);
});
