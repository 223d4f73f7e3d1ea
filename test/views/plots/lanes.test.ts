import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clampLabel, lanes } from "../../../views/plots/lanes.ts";

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
