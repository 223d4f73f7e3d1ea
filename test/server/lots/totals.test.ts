import { expect, test } from "vitest";
import { type FlagEntry, flagsOf } from "../../../server/lots/flags.ts";
import type { LotFine } from "../../../server/lots/lot-fine.ts";
import type { LotItem } from "../../../server/lots/lot-item.ts";
import { lotSums } from "../../../server/lots/totals.ts";

/** One end of a fine mass whose measurement is common to all pieces; the rest of the alloy is free by far more than that. */
const end = (middle: number, u: number) => ({ middle_g: middle, common_g: u, own_g: 0, law_g: 0 });
/** Ends far apart are each widened by the one-sided 95.45 % quantile of the normal distribution. */
const oneSided = 1.6901;

function fineOf(dryG: number): LotFine {
  return {
    metal: "gold",
    lowG: dryG * (0.5 - oneSided * 0.01),
    highG: dryG * (0.6 + oneSided * 0.01),
    permille: { low: 483.1, high: 616.9 },
    parts: {
      low: end(0.5 * dryG, 0.01 * dryG),
      high: end(0.6 * dryG, 0.01 * dryG),
      expected: end(0.55 * dryG, 0.01 * dryG),
      freedom_g: 0.03 * dryG,
      most_g: dryG,
    },
    confidence: 0.9545,
  };
}

function piece(ticket: string, dryG: number, changes: Partial<LotItem> = {}): LotItem {
  return {
    id: ticket,
    ticket,
    claim: "au-585",
    state: "consistent-not-unique",
    dryG,
    stepG: 0.01,
    dryReadings: [`${dryG}`],
    massG: dryG,
    changedSeq: 1,
    assays: [],
    shown: { text: `${dryG}`, unit: "g" },
    density: { value: 13.4, expanded: 0.1 },
    typed: false,
    voided: false,
    counts: true,
    metal: "gold",
    weighed: null,
    fine: fineOf(dryG),
    ...changes,
  };
}

/** A lot with its gross mass in g and its counted pieces, as far as they are known. */
function lot({ gross, count }: { gross?: string; count?: number } = {}): Parameters<typeof lotSums>[0] {
  return {
    flags: [],
    ...(gross === undefined ? {} : { gross: { text: gross, unit: "g", grams: gross } }),
    ...(count === undefined ? {} : { count }),
  };
}

test("what is common to all pieces is added end by end", () => {
  const { fine, sumG } = lotSums(lot(), [piece("1", 10), piece("2", 20)]);
  expect(sumG).toBe(30);
  expect(fine.gold!.lowG).toBeCloseTo(15 - oneSided * 0.3, 4);
  expect(fine.gold!.highG).toBeCloseTo(18 + oneSided * 0.3, 4);
});

test("a voided piece counts nowhere, and a piece that disagrees brings no fine metal", () => {
  const { pieces, fine } = lotSums(lot(), [
    piece("1", 10),
    piece("2", 20, { voided: true, counts: false }),
    piece("3", 5, { state: "excluded", fine: null }),
  ]);
  expect(pieces).toBe(2);
  expect(fine.gold!.highG).toBeCloseTo(6 + oneSided * 0.1, 4);
});

test("two tickets of one mass that make the sum too heavy by just that mass are named", () => {
  const pieces = [piece("30", 12.9), piece("31", 1.84), piece("32", 1.84), piece("33", 7.15)];
  const { checks, missingG } = lotSums(lot({ gross: "21.89" }), pieces);
  expect(missingG).toBeCloseTo(-1.84, 9);
  expect(checks[0]).toMatchObject({ tickets: ["31", "32"] });
  expect(checks[0]?.message).toMatchObject({
    code: "lot-check.same-mass-in-excess",
    params: { mass_g: 1.84 },
  });
});

test("the same mass with densities that do not go together is no doubt", () => {
  const { checks } = lotSums(lot(), [
    piece("31", 1.84),
    piece("32", 1.84, { density: { value: 10.5, expanded: 0.1 } }),
    piece("33", 7.15),
  ]);
  expect(checks).toEqual([]);
});

test("one piece weighed on two displays, in grams and in carats, is told by its nearest mass", () => {
  // 50.00 ct are 10.000 g
  const carats = piece("61", 10, { stepG: 0.002, density: { value: 13.42, expanded: 0.02 } });
  const between = piece("62", 10.4);
  const { checks } = lotSums(lot(), [piece("60", 10.01), between, carats, piece("63", 25.3)]);
  expect(checks).toMatchObject([{ flag: "same mass", tickets: ["61", "60"] }]);
});

test("a piece that lies in another lot of the day too is told with that lot", () => {
  const other = {
    ticket: "B-7",
    elsewhere: { lot: "afternoon" },
    dryG: 12.9,
    stepG: 0.01,
    density: { value: 13.4, expanded: 0.1 },
  };
  const { checks } = lotSums(lot(), [piece("1", 12.91), piece("2", 20)], [other]);
  expect(checks).toMatchObject([
    {
      tickets: ["1"],
      message: { code: "lot-check.same-mass-elsewhere", params: { other: "B-7", lot: "afternoon" } },
    },
  ]);
});

test("on a coarse scale a pair of one mass is chance and is not told", () => {
  const pieces = Array.from({ length: 30 }, (_, i) => piece(`${i}`, 1 + (i % 10) / 10, { stepG: 0.1 }));
  expect(lotSums(lot(), pieces).checks).toEqual([]);
});

test("when all counted pieces are weighed and mass is missing, the page says how much", () => {
  const { checks } = lotSums(lot({ gross: "31.84", count: 2 }), [piece("1", 10), piece("2", 20)]);
  expect(checks[0]?.message).toEqual({
    code: "lot-check.gross-missing",
    params: { pieces: 2, missing_g: { decimal: "1.84" } },
  });
});

test("a piece that drank, one that is another, and two that were swapped against their list are told", () => {
  const chain = piece("40", 12.9, { again: { grams: 13.21, stepG: 0.01, reading: "13.21" } });
  expect(lotSums(lot(), [chain]).checks[0]).toMatchObject({
    flag: "water inside",
    message: { code: "lot-check.mass-gained", params: { change_g: { decimal: "0.31" } } },
  });
  const other = piece("41", 12.9, { again: { grams: 7.15, stepG: 0.01, reading: "7.15" } });
  const { checks } = lotSums(lot(), [other, piece("42", 7.15)]);
  expect(checks[0]).toMatchObject({ flag: "other piece", tickets: ["41"] });
  expect(checks[0]?.remedy).toMatchObject({
    code: "lot-check.other-piece-like",
    params: { tickets: ["42"] },
  });
  const listed = (ticket: string, dryG: number, grams: number) =>
    piece(ticket, dryG, { expected: { grams, stepG: 0.01 } });
  expect(
    lotSums(lot(), [listed("50", 12.9, 7.15), listed("51", 7.15, 12.9), listed("52", 3.2, 3.21)]).checks,
  ).toMatchObject([{ flag: "swapped", tickets: ["50", "51"] }]);
});

test("a dry mass that returns within the display is no doubt", () => {
  expect(
    lotSums(lot(), [piece("40", 12.9, { again: { grams: 12.92, stepG: 0.01, reading: "12.92" } })]).checks,
  ).toEqual([]);
});

test("a doubt that was cleared for one weighing is raised by the next, and what a person set stays", () => {
  const again = { grams: 13.21, stepG: 0.01, reading: "13.21" };
  const said = (flag: string, seq: number, set: boolean): FlagEntry => ({
    ...({} as FlagEntry),
    seq,
    body: { piece: "40", flag, set, reason: "looked" },
  });
  const flags = [said("water inside", 5, false), said("clasp", 5, true)];
  const weighed = (changedSeq: number) => piece("40", 12.9, { again, changedSeq });
  const names = (item: LotItem) => {
    const { checks } = lotSums({ flags }, [item]);
    return { checks: checks.length, flags: flagsOf(item, checks, flags) };
  };
  expect(names(weighed(4))).toEqual({
    checks: 0,
    flags: [
      { flag: "water inside", cleared: "looked" },
      { flag: "clasp", reason: "looked" },
    ],
  });
  expect(names(weighed(6))).toEqual({
    checks: 1,
    flags: [{ flag: "water inside" }, { flag: "clasp", reason: "looked" }],
  });
});
