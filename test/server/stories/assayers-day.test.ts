import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { tell } from "../../../views/messages/tell.ts";
import { checksOn } from "../web/recorded.ts";
import { type Counter, linkTo, openCounter } from "./counter.ts";

let counter: Counter;
beforeEach(async () => {
  counter = await openCounter();
});
afterEach(() => counter.at.close());

/** Heading of what a weighing can tell, before anything gets wet. */
const forecast = tell({ code: "bench.fold.will-tell" }, "en");

// Band edges by the additive mixture law, common practice: 22 ct about 17.4 to 17.8, 21 ct about 16.7 to 17.2, 18 ct below 16.
describe("a small thin coin, its owner waiting", () => {
  it("is told apart from brass and 18 ct, not from 21 ct, before it gets wet", async () => {
    await counter.piece({ claim: "au-916" });
    expect(await counter.page()).not.toContain(forecast);
    await counter.types(["dry", "1.200"]);
    const page = await counter.page();
    expect(page).toContain(forecast);
    // 1.2 g of 17.9 g/cm³ displace 1.2 / 17.9 = 0.067 g (by hand)
    expect(page).toMatch(/The piece displaces about 0\.067 g; .*\([3-9]\.?\d* %\)/);
    const [, told = "", untold = ""] =
      /can tell gold 916.*? from (.*?) here, not from (.*?)\./.exec(page) ?? [];
    expect(told).toContain("brass");
    // 21 ct is 875, 18 ct is 750 parts per thousand
    expect(untold).toContain("gold 875");
    expect(untold).not.toContain("gold 750");
    expect(await counter.page("/", "de")).toContain("Das Stück verdrängt etwa 0,067 g");
    expect(await counter.page(await linkTo(counter.at, "/", "/plan\\?"))).toContain("can tell gold 916");
  });

  it("hears no forecast any more once it is wet, and none of a piece that nobody made a claim for", async () => {
    await counter.piece({ claim: "au-916" });
    await counter.types(["dry", "1.200"], ["immersed", "1.133"]);
    expect(await counter.page()).not.toContain(forecast);
    await counter.at.post("/bench/call-off", { reason: "the owner left" });
    await counter.piece({ key: "other" });
    await counter.types(["dry", "1.200"]);
    expect(await counter.page()).not.toContain(forecast);
  });
});

it("while repeats still climb there is no mean, only their order and the way on; two that agree bring it", async () => {
  await counter.piece({ claim: "ag-999" });
  // 31.1035 g at 10.21, 10.28 and 10.33 g/cm³: displaced 3.0366, 3.0159 and 3.0013 g (by hand)
  await counter.types(
    ["dry", "31.1035"],
    ["immersed", "28.0669"],
    ["immersed", "28.0876"],
    ["immersed", "28.1022"],
  );
  await counter.water("20");
  const climbing = await counter.page();
  expect(await checksOn(counter.at)).toContain("check.still-climbing");
  expect(climbing).toContain(tell({ code: "check.remedy.go-on" }, "en"));
  expect(climbing).not.toMatch(/\d ± [\d.]+ g\/cm³/);
  await counter.types(["immersed", "28.1023"]);
  expect(await counter.page()).toMatch(/\d ± [\d.]+ g\/cm³/);
  expect(await counter.kept()).toHaveLength(5);
});

describe("a cast bar with a shrink cavity", () => {
  // 100 g of fine silver at 10.49 displace 9.516 g in water of 20 °C; a void of 3 % of the volume makes it 9.802 (by hand)
  const bar = [
    ["dry", "100.000"],
    ["immersed", "90.198"],
    ["immersed", "90.199"],
    ["dry-after", "100.000"],
  ] as const;

  it("is low, tight and steady: a closed void or a lighter alloy, and other tests are named", async () => {
    await counter.piece({ claim: "ag-999" });
    await counter.types(...bar);
    await counter.water("20");
    const page = await counter.page();
    expect(page).toMatch(/A closed void of 2\.\d % or more/);
    expect(page).toContain(tell({ code: "check.remedy.ultrasound" }, "en"));
    expect(page).toContain(tell({ code: "check.remedy.drilled-sample" }, "en"));
    expect(page).not.toContain("one bubble of");
    expect(await counter.page("/", "de")).toContain("geschlossener Hohlraum");
  });

  it("is first a matter of bubbles as long as it was not weighed dry again, or when it drank", async () => {
    await counter.piece({ claim: "ag-999" });
    await counter.types(...bar.slice(0, 3));
    await counter.water("20");
    expect(await counter.page()).toContain(tell({ code: "check.remedy.lamp-and-brush" }, "en"));
    await counter.types(["dry-after", "100.310"]);
    const page = await counter.page();
    expect(page).toContain("Is there water inside");
    expect(page).not.toContain("a closed void");
  });
});

describe("a medal set with a stone, sent in by post", () => {
  it("leads with its measured values to the metal alone, with its interval", async () => {
    await counter.piece({ claim: "au-750" });
    // 3.000 g of 18 ct at 15.5 with 0.100 g of diamond at 3.52 displace 2.9/15.5 + 0.1/3.52 cm³ (a standing example of the trade)
    const displaced = (2.9 / 15.5 + 0.1 / 3.52) * 0.997;
    await counter.types(["dry", "3.0000"], ["immersed", (3 - displaced).toFixed(4)]);
    await counter.water("20");
    const href = await linkTo(counter.at, "/", "/plan/two-bodies");
    const asked = new URL(href, "http://localhost").searchParams;
    expect(Number(asked.get("massG"))).toBeCloseTo(3, 2);
    expect(Number(asked.get("density"))).toBeCloseTo(13.92, 1);
    const stone = "&knownMassG=0.100&knownDensity=3.52&uKnownDensity=0.005";
    const page = await counter.page(href + stone);
    const [, value, u] = /The other body has a density of ([\d.]+) ± ([\d.]+) g\/cm³/.exec(page) ?? [];
    expect(Math.abs(Number(value) - 15.5)).toBeLessThan(Number(u));
  });
});

it("an old result keeps the liquid it was weighed in when the bench goes over to another", async () => {
  await counter.piece({ claim: "ag-999" });
  await counter.at.post("/bench/details", {
    liquid: "stated",
    "liquid-name": "spirit",
    "liquid-lot": "B7",
    "liquid-density": "0.8000",
    "liquid-density-u": "0.0002",
    "liquid-stated-at": "20",
    "liquid-expansion": "0.0011",
  });
  await counter.types(["dry", "20.0000"], ["immersed", "18.4750"]);
  await counter.water("20");
  await counter.at.post("/bench/record", {});
  const before = await counter.page("/records/story");
  expect(before).toContain("spirit, lot B7");
  await counter.piece({ key: "next" });
  await counter.types(["dry", "20.0000"], ["immersed", "18.0900"]);
  await counter.water("20");
  await counter.at.post("/bench/record", {});
  expect(await counter.page("/records/next")).not.toContain("spirit");
  expect(await counter.page("/records/story")).toBe(before);
});

it("a disputed result of last spring is opened with all that was read, and issued again as an amendment", async () => {
  await counter.piece({ claim: "ag-999", operator: "bench hand 2" });
  await counter.types(["dry", "31.1035"], ["immersed", "28.1435"]);
  await counter.water("21.4");
  await counter.at.post("/bench/record", {});
  const first = (await counter.at.post("/records/story/reports", { step: "1" })).headers.location ?? "";
  const record = await counter.page("/records/story");
  for (const part of ["31.1035", "28.1435", "21.4", "typed"]) expect(record).toContain(part);
  await counter.at.post("/records/story/amendments", {
    celsius: "24.1",
    by: "bench hand 1",
    reason: "misread",
  });
  const again = (await counter.at.post("/records/story/reports", { step: "2" })).headers.location ?? "";
  expect(await counter.page(again)).toMatch(/Amendment to report R-.*Reason: misread/);
  expect(await counter.page(first)).toContain("21.4");
  expect(await counter.kept()).toEqual(["dry 31.1035", "immersed 28.1435"]);
});
