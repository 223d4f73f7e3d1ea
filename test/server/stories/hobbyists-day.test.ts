import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { isMessage } from "../../../calibration/message.ts";
import { methods } from "../../../server/methods/index.ts";
import { tell } from "../../../views/messages/tell.ts";
import { messageText } from "../../message-text.ts";
import { checksOn, host } from "../web/recorded.ts";
import { type Counter, linkTo, openCounter } from "./counter.ts";

let counter: Counter;
beforeEach(async () => {
  counter = await openCounter();
});
afterEach(() => counter.at.close());

it("who does not know which way the scale weighs is asked where the water stands, with a drawing of each", async () => {
  const { body } = await counter.at.app.inject({ url: "/first-start", headers: { host } });
  expect(body).toMatch(/water/i);
  expect([...body.matchAll(/name="method"/g)]).toHaveLength(Object.keys(methods).length);
  expect([...body.matchAll(/<svg/g)].length).toBeGreaterThanOrEqual(Object.keys(methods).length);
});

describe("31.1 and 29.5 in each other's boxes", () => {
  it("are changed over at one press, and what was first typed stays", async () => {
    await counter.piece();
    await counter.types(["dry", "29.5"], ["immersed", "31.1"]);
    await counter.water("20");
    expect(await checksOn(counter.at)).toContain("check.boxes-swapped");
    expect((await counter.at.post("/bench/changed-over", {})).statusCode).toBe(303);
    const page = await counter.page();
    expect(await checksOn(counter.at)).not.toContain("check.boxes-swapped");
    expect(page).toContain("changed over");
    // 31.1 over 1.6 (by hand)
    expect(page).toMatch(/Dry over displaced, uncorrected: 19\.43/);
    expect(await counter.kept()).toEqual(["dry 29.5", "immersed 31.1", "immersed 29.5", "dry 31.1"]);
    await counter.at.post("/bench/record", {});
    expect(await counter.page("/records/story")).toContain("entered in the other box");
  });

  it("excluded by the button of a check, the reason is the remedy's code, told in each reader's language", async () => {
    await counter.piece();
    await counter.types(["dry", "29.5"], ["immersed", "31.1"]);
    await counter.water("20");
    const pressed = await counter.at.post("/bench/remedy", { check: "check.boxes-swapped", place: "" });
    expect(pressed.statusCode).toBe(303);
    const [reason] = (await counter.at.ledger.entriesOf("story")).flatMap((entry) =>
      entry.kind === "voiding" ? [entry.body.reason] : [],
    );
    if (!isMessage(reason)) throw new Error("The reason is a sentence.");
    expect(reason.code).toBe("check.boxes-swapped");
    for (const language of ["en", "de", "es"] as const)
      expect(await counter.page("/", language)).toContain(tell(reason, language));
  });

  it("with one of the two missing there is nothing to change over", async () => {
    await counter.piece();
    await counter.types(["dry", "29.5"]);
    expect((await counter.at.post("/bench/changed-over", {})).statusCode).toBe(422);
    expect(await counter.kept()).toEqual(["dry 29.5"]);
  });
});

describe("tap water from the refrigerator", () => {
  it("of 8 °C is fine as stated, but bubbles will grow", async () => {
    await counter.piece({ claim: "ag-999" });
    await counter.types(["dry", "31.10"], ["immersed", "28.14"]);
    await counter.water("8");
    const page = await counter.page();
    expect(await checksOn(counter.at)).toContain("check.water-unlike-room");
    expect(page).toMatch(/10\.49 ± /);
  });
});

describe("readings that differ on a scale whose scatter nobody stated", () => {
  const start = async (...readings: [string, string][]) => {
    await counter.piece({ method: "displaced", claim: "ag-900" });
    await counter.types(...readings);
    await counter.water("20");
    return checksOn(counter.at);
  };

  it("by three steps are told, and a third one is one press away", async () => {
    expect(await start(["dry", "25.0"], ["rise", "2.4"], ["rise", "2.1"])).toContain(
      "check.scatter-above-assumed",
    );
    const check = counter.at.bench.checks.find(({ code }) => code === "check.scatter-above-assumed");
    expect(check?.params).toMatchObject({ role: "rise", count: 2, side: "pair" });
    expect(check?.remedies.map(({ offer }) => offer)).toContainEqual({ do: "repeat", role: "wet" });
    // s/√2 = 0.15 g of 2.25 g, and 3.31 for three degrees of freedom (JCGM 100:2008, table G.2), as a share of 11.1
    const evaluation = counter.at.bench.evaluation;
    if (!evaluation || !("statement" in evaluation)) throw new Error("no evaluation");
    const { expanded_g_cm3, density_g_cm3 } = evaluation.statement;
    expect(expanded_g_cm3! / density_g_cm3!).toBeGreaterThan((3.31 * 0.15) / 2.25);
  });

  it("dry are told before the piece is wet", async () => {
    expect(await start(["dry", "25.0"], ["dry", "25.3"])).toContain("check.scatter-above-assumed");
  });

  it("by one step are not told", async () => {
    const checks = await start(["dry", "25.0"], ["dry", "25.1"], ["rise", "2.4"], ["rise", "2.5"]);
    expect(checks).not.toContain("check.scatter-above-assumed");
  });
});

it("a gold coin that reads 18.9 and should be 17.6 hears the few causes that make a piece too dense", async () => {
  await counter.piece({ claim: "au-916" });
  // 7.99 g of 18.9 g/cm³ displace 7.99 · 0.997 / 18.9 = 0.4215 g (by hand)
  await counter.types(["dry", "7.9900"], ["immersed", "7.5685"]);
  await counter.water("20");
  const check = counter.at.bench.checks.find(({ code }) => code === "check.higher-than-claim");
  expect(check?.remedies.map(({ code }) => code)).toEqual([
    "check.remedy.cover",
    "check.remedy.bare-dry",
    "check.remedy.denser-inside",
  ]);
});

describe("a number as people type it", () => {
  const notes = async () =>
    (await counter.at.ledger.entriesOf("story")).flatMap(({ kind, body }) =>
      kind === "note" && "message" in body ? [body.message] : [],
    );
  const type = (reading: string, language = "en") =>
    counter.at.post(
      "/bench/typed-readings",
      { role: "dry", reading, unit: "g" },
      { "accept-language": language },
    );

  it("with a decimal comma is a number in either language", async () => {
    await counter.piece();
    await type("2,97");
    await type("2,98", "de");
    expect(await counter.kept()).toEqual(["dry 2.97", "dry 2.98"]);
  });

  it("1,234 is asked about where a comma can group, and is 1.234 where the comma is the decimal mark", async () => {
    await counter.piece();
    const english = await type("1,234");
    expect(english.statusCode).toBe(422);
    expect(english.body).toContain('data-code="form.number.two-meanings"');
    expect(english.body).toContain('value="1,234"');
    expect((await type("1,234", "de")).statusCode).toBe(303);
    expect(await counter.kept()).toEqual(["dry 1.234"]);
    expect(await notes()).toMatchObject([
      { code: "weighing.note.typed-reading", params: { typed: "1,234 g" } },
    ]);
  });

  it.each([
    ["1.234,5", "en"],
    ["1.234,5", "de"],
    ["1,234.5", "de"],
  ])("%s can only mean 1234.5, on a page in %s", async (typed, language) => {
    await counter.piece();
    expect((await type(typed, language)).statusCode).toBe(303);
    expect(await counter.kept()).toEqual(["dry 1234.5"]);
  });
});

describe("an inherited ring with a stone nobody can take out", () => {
  it("has a lower bound for its metal and the reason for it, and no bound where a stone may be denser", async () => {
    await counter.piece({ claim: "au-585" });
    // 4.00 g that displace 0.333 g: 12.0 g/cm³ (by hand)
    await counter.types(["dry", "4.000"], ["immersed", "3.667"]);
    await counter.water("20");
    const page = await counter.page(await linkTo(counter.at, "/", "/plan/two-bodies"));
    const bound = /at least (\d+\.\d+) g\/cm³: no stone of the list is denser than 6\.0/.exec(page)?.[1];
    expect(Number(bound)).toBeGreaterThan(11.5);
    expect(Number(bound)).toBeLessThan(12);
    expect(await counter.page("/plan/two-bodies?question=rest&massG=4&density=5.1&uDensity=0.05")).toContain(
      "No lower bound: stones of the list reach 6.0 g/cm³",
    );
  });

  it("is kept dry when the stone drinks", async () => {
    for (const url of ["/", "/plan/two-bodies"]) {
      const page = await counter.page(url);
      for (const stone of ["pearl", "opal", "turquoise", "amber"]) expect(page).toContain(stone);
    }
  });
});

it("a piece that floats is measured with a sinker below it", async () => {
  await counter.piece();
  // Wood of 10.0 N, 14.0 N with a piece of metal below it in the water, 2.00 N once both are in the water: 12.0 N displaced,
  // 0.83 of water's density (Schaum's Outline of College Physics, chapter on fluids at rest; from memory). A gram stands
  // for a newton here, and the metal alone in the water weighs 14.0 - 10.0 = 4.00.
  await counter.types(["dry", "10.00"], ["immersed", "2.00"]);
  await counter.at.post("/bench/details", { "hanger-in-liquid": "4.00" });
  await counter.water("4");
  const page = await counter.page();
  expect(page).not.toContain("Does it float");
  expect(page).toMatch(/Dry over displaced, uncorrected: 0\.8333/);
  expect(page).toContain(messageText("budget.load.hanger-in-liquid"));
  expect(await counter.kept()).toEqual(["dry 10.00", "immersed 2.00"]);
});

it("cork without a sinker is asked about, and the way with a sinker is told in both languages", async () => {
  await counter.piece({ method: "displaced" });
  await counter.types(["dry", "10.00"], ["rise", "12.00"]);
  expect(await checksOn(counter.at)).toContain("check.floats");
  expect(await counter.kept()).toEqual(["dry 10.00", "rise 12.00"]);
});
