import { normalQuantile } from "../../../calibration/normal.ts";
import type { Likelihood } from "../metal.ts";
import { type FineEnd, type FineParts, fineAt, type MeasuredPiece } from "./fine-parts.ts";
import type { RestCorner } from "./rest-corner.ts";

/** Ways to share out what is not the precious metal, and how often they are met. */
export interface FreeRest {
  corners: readonly RestCorner[];
  likelihood: Likelihood;
}

/** How a recipe counts in the mean over a family (common practice). */
const weights: Readonly<Record<Likelihood, number>> = { common: 1, possible: 0.1, rare: 0.01 };

/** What sums need of a piece, over rests of alloy that are left free. */
export function partsOver(
  rests: readonly FreeRest[],
  measured: MeasuredPiece,
  confidence: number,
): FineParts {
  const { massG, uMassG } = measured;
  const corners = rests.flatMap((rest) => rest.corners);
  const far = normalQuantile((1 + confidence) / 2);
  const least = extreme(corners, (corner) => {
    const end = fineAt(measured, corner, "less");
    return { end, at: end.middle_g - far * systematic(end) };
  });
  const most = extreme(corners, (corner) => {
    const end = fineAt(measured, corner, "more");
    return { end, at: -(end.middle_g + far * systematic(end)) };
  });
  return {
    low: least,
    high: most,
    expected: fineAt(measured, meanCorner(rests), "more"),
    freedom_g: Math.abs(most.middle_g - least.middle_g) / Math.sqrt(12),
    most_g: massG + far * uMassG,
  };
}

/** Ends are chosen without what each reading brings of its own: a chance choice of many pieces would shift their sum. */
const systematic = ({ common_g, law_g }: FineEnd) => Math.hypot(common_g, law_g);

function extreme(
  corners: readonly RestCorner[],
  of: (corner: RestCorner) => { end: FineEnd; at: number },
): FineEnd {
  return corners.map(of).reduce((best, one) => (one.at < best.at ? one : best)).end;
}

/** A rest whose volume hardly differs from that of the precious metal says nothing of its share, cm³/g. */
const tells = 0.006;

/** The mean over the corners of each recipe, recipes by how often they are met. */
function meanCorner(rests: readonly FreeRest[]): RestCorner {
  const all = rests.map(({ likelihood, corners }) => ({
    corner: meanOf(corners.filter(({ light }) => !light).map((corner) => ({ corner, weight: 1 }))),
    weight: weights[likelihood],
  }));
  const telling = all.filter(({ corner }) => corner.slope < -tells);
  return meanOf(telling.length > 0 ? telling : all);
}

function meanOf(weighted: readonly { corner: RestCorner; weight: number }[]): RestCorner {
  const all = weighted.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (corner: RestCorner) => number) =>
    weighted.reduce((sum, { corner, weight }) => sum + weight * of(corner), 0) / all;
  return {
    share: mean(({ share }) => share),
    cm3PerG: mean((corner) => corner.cm3PerG),
    uCm3PerG: mean((corner) => corner.uCm3PerG),
    slope: mean(({ slope }) => slope),
  };
}
