import { describe, expect, it } from "vitest";
import { normalQuantile } from "../../../../calibration/normal.ts";
import { seededRandom } from "../../../../calibration/random.ts";
import { silverShare } from "../../../../server/metals/fineness/silver-share.ts";
import { mixtureDensity } from "../../../../server/metals/mixture.ts";
import { publishedPairs } from "../../../../server/metals/published-pairs.ts";

describe("silver's share of the rest", () => {
  const binary = publishedPairs.filter(
    ({ fractions: { Au = 0, Ag = 0, Cu = 0 } }) => Au > 0 && Au + Ag + Cu > 0.995 && Ag * Cu === 0,
  );

  it.each(binary.map((pair) => [JSON.stringify(pair.fractions), pair] as const))(
    "of %s is what was melted",
    (_, pair) => {
      const { fractions, gPerCm3, printedWithin } = pair;
      // the source's own scatter, as it stands beside the pair, taken as two standard uncertainties
      const found = silverShare({
        gold: fractions.Au!,
        uGold: 0.0005,
        gPerCm3,
        uGPerCm3: (gPerCm3 * printedWithin) / 2,
      });
      expect(Math.abs(found.share - (fractions.Ag ? 1 : 0))).toBeLessThanOrEqual(2 * found.u);
    },
  );

  it("is found among published pairs of both kinds", () => {
    expect(binary.filter(({ fractions }) => fractions.Ag).length).toBeGreaterThan(3);
    expect(binary.filter(({ fractions }) => fractions.Cu).length).toBeGreaterThan(3);
  });

  it("reproduces the density when it is put back into the law, at every fineness and split", () => {
    for (const gold of [0.2, 0.417, 0.585, 0.9])
      for (const silver of [0, 0.17, 0.5, 0.83, 1]) {
        const rest = 1 - gold;
        const gPerCm3 = mixtureDensity({
          Au: gold,
          Ag: rest * silver,
          Cu: rest * (1 - silver),
        }).correctedGPerCm3;
        const { share } = silverShare({ gold, uGold: 0, gPerCm3, uGPerCm3: 0.001 });
        expect(share, `${gold} ${silver}`).toBeCloseTo(silver, 9);
      }
  });

  it("lies below nought for a bar with pores and above one for a rest with platinum", () => {
    const at = (gPerCm3: number) => silverShare({ gold: 0.5, uGold: 0, gPerCm3, uGPerCm3: 0.01 });
    const porous = at(0.97 * mixtureDensity({ Au: 0.5, Cu: 0.5 }).correctedGPerCm3);
    expect(porous.share).toBeLessThan(-2 * porous.u);
    const heavy = at(mixtureDensity({ Au: 0.5, Ag: 0.35, Pt: 0.15 }).correctedGPerCm3);
    expect(heavy.share).toBeGreaterThan(1 + 2 * heavy.u);
  });

  it("has the uncertainty that drawing density and assay at random gives (JCGM 101)", () => {
    const random = seededRandom(7);
    const normal = () => normalQuantile((random() + 0.5) / 2 ** 32);
    const melt = { gold: 0.5, uGold: 0.004, gPerCm3: 12.9, uGPerCm3: 0.08 };
    const drawn = Array.from({ length: 4000 }, () => {
      const gold = melt.gold + melt.uGold * normal();
      return silverShare({ ...melt, gold, gPerCm3: melt.gPerCm3 + melt.uGPerCm3 * normal() }).share;
    });
    const mean = drawn.reduce((sum, one) => sum + one, 0) / drawn.length;
    const s = Math.sqrt(drawn.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (drawn.length - 1));
    // the mixture law adds its own in squares; what is left is drawn to within 1/√8000, four of them
    const law = silverShare({ ...melt, uGold: 0, uGPerCm3: 1e-9 }).u;
    const ofInputs = Math.sqrt(silverShare(melt).u ** 2 - law ** 2);
    expect(Math.abs(ofInputs / s - 1)).toBeLessThan(0.045);
  });

  it("is refused for fine gold, which has no rest", () => {
    expect(() => silverShare({ gold: 1, uGold: 0, gPerCm3: 19.3, uGPerCm3: 0.01 })).toThrow(
      "above 0 and below 1",
    );
  });
});
