import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clampLabel, lanes, spread } from "../../../views/plots/lanes.ts";

const extent = fc
  .tuple(fc.integer({ min: 0, max: 700 }), fc.integer({ min: 1, max: 300 }))
  .map(([left, width]) => ({ left, right: left + width }));

describe("labels in lanes", () => {
  it("never overlap on one lane", () => {
    fc.assert(
      fc.property(fc.array(extent, { maxLength: 40 }), (extents) => {
        const placed = lanes(extents);
        for (const [i, a] of extents.entries())
          for (const [j, b] of extents.entries())
            if (i < j && placed[i] === placed[j]) expect(a.right <= b.left || b.right <= a.left).toBe(true);
      }),
    );
  });

  it("share one lane when they stand apart", () => {
    expect(
      lanes([
        { left: 200, right: 260 },
        { left: 0, right: 100 },
      ]),
    ).toEqual([0, 0]);
  });

  it("stay inside the drawing", () => {
    expect(clampLabel(300, 80, 0, 320)).toBe(240);
    expect(clampLabel(-20, 80, 0, 320)).toBe(0);
  });
});

describe("labels above each other", () => {
  const heights = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { maxLength: 12 });

  it("keep their order and never touch", () => {
    fc.assert(
      fc.property(heights, (wanted) => {
        const order = wanted.map((_, index) => index).sort((a, b) => wanted[a]! - wanted[b]!);
        const placed = spread(wanted, 13);
        for (const [place, index] of order.slice(1).entries())
          expect(placed[index]! - placed[order[place]!]!).toBeGreaterThanOrEqual(13 - 1e-9);
      }),
    );
  });

  it("stay where they want to be while there is room", () => {
    expect(spread([100, 20, 60], 13)).toEqual([100, 20, 60]);
  });

  it("stand about their common middle where there is none", () => {
    expect(spread([50, 51, 49], 10)).toEqual([50, 60, 40]);
  });
});
