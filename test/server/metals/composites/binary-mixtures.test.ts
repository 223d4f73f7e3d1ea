import { expect, test } from "vitest";
import {
  binaryMixtures,
  knownMixtures,
  shareAt,
} from "../../../../server/metals/composites/binary-mixtures.ts";
import { substitutes } from "../../../../server/metals/composites/substitutes.ts";
import { metal } from "../../../../server/metals/library.ts";
import { mixtureDensity } from "../../../../server/metals/mixture.ts";

const within = (g: number, relative: number) => [g * (1 - relative), g * (1 + relative)] as const;

test("lead and tin reach fine silver's 10.50 with 85 % lead, as the casters' formula says", () => {
  // tmtpages.com: % Sn = 2076.803/ρ − 183.059, so 14.73 % at 10.50; its ends differ from ours by 0.6 % in tin
  const tin = 2076.803 / 10.5 - 183.059;
  expect(Math.abs(100 * (1 - shareAt("Pb", "Sn", 10.5)) - tin)).toBeLessThan(0.6);
});

test("64 % of the volume in lead, the rest copper, weighs like silver", () => {
  // common practice: 69 % by mass reads as fine silver
  const share = shareAt("Pb", "Cu", 10.49);
  expect(share).toBeCloseTo(0.69, 1);
  expect(mixtureDensity({ Pb: share, Cu: 1 - share }).correctedGPerCm3).toBeCloseTo(10.49, 9);
});

test("the share of a pair with an excess term solves the corrected law exactly", () => {
  for (const [a, b, density] of [
    ["Au", "Cu", 15],
    ["Cu", "Zn", 8.4],
    ["Au", "Ag", 14],
  ] as const) {
    const w = shareAt(a, b, density);
    expect(mixtureDensity({ [a]: w, [b]: 1 - w }).correctedGPerCm3).toBeCloseTo(density, 9);
  }
});

test("the blind spots of each target are found with their shares", () => {
  // shares by an independent computation of the plain law, ±0.5 % of the target; rounded there to 1 %
  const spots = [
    [10.5, "mix-pb-sn", 0.846, 0.866],
    [10.5, "mix-w-cu", 0.27, 0.285],
    [10.5, "mix-ta-cu", 0.31, 0.33],
    [15.5, "mix-w-cu", 0.785, 0.796],
    [17.7, "mix-w-cu", 0.92, 0.938],
  ] as const;
  for (const [target, id, low, high] of spots) {
    const found = binaryMixtures(within(target, 0.005)).find((m) => m.id === id);
    expect(found, `${id} at ${target}`).toBeDefined();
    expect(Math.abs(found!.share[0] - low)).toBeLessThan(0.012);
    expect(Math.abs(found!.share[1] - high)).toBeLessThan(0.012);
  }
});

test("a density between two components is always reached, and one beyond both never", () => {
  expect(binaryMixtures([23, 23.1])).toEqual([]);
  expect(binaryMixtures([10.5, 10.5]).every(({ share: [low, high] }) => low <= high)).toBe(true);
});

test("mixtures worth making for silver hold lead or tungsten, and none that costs more than silver", () => {
  const ids = substitutes(within(10.5, 0.005), metal("ag-999")).map((s) => s.as.id);
  expect(ids).toEqual(expect.arrayContaining(["mix-pb-sn", "mix-w-cu"]));
  expect(ids).not.toContain("mix-au-cu");
});

test("tungsten in copper keeps a conductivity that grows with the copper", () => {
  const at = (density: number) => knownMixtures(within(density, 0.001)).find((m) => m.id === "mix-w-cu")!;
  const middle = at(10.5);
  const heavy = at(15.4);
  expect(middle.known!.conductivityIacsPercent(middle.share[0])[0]).toBeGreaterThan(60);
  // the printed table's minimum at 80 % tungsten is 34 % IACS
  expect(heavy.known!.conductivityIacsPercent(heavy.share[0])[0]).toBeCloseTo(34, -1);
});
