import type { RestCorner } from "./rest-corner.ts";

/** One end of the fine mass of a piece, g: where the measured density puts it, and the standard uncertainties around it. */
export interface FineEnd {
  middle_g: number;
  /** of scale, water, thermometer: the same for every piece weighed on that bench */
  common_g: number;
  /** drawn anew with every reading */
  own_g: number;
  /** of the mixture law: the same for every piece of that alloy */
  law_g: number;
}

/** What sums of fine mass need of a piece. Ends are not cut to 0 and to the piece: only a sum is, at its end. */
export interface FineParts {
  /** over the rest of the alloy that its family leaves free */
  low: FineEnd;
  high: FineEnd;
  /** the mean over that freedom */
  expected: FineEnd;
  /** what the piece holds if it is as its claim states it, g; left out where nothing states it */
  stated_g?: number;
  /** the least and the most it holds by its stamp, g; left out where nothing is stamped */
  stamped_g?: readonly [number, number];
  /** standard uncertainty from that freedom, g: pieces of one maker share it */
  freedom_g: number;
  /** the most the piece can weigh, g */
  most_g: number;
}

/** A piece as its fine mass is computed from it. */
export interface MeasuredPiece {
  massG: number;
  uMassG: number;
  /** specific volume at 20 °C, cm³/g */
  cm3PerG: number;
  /** standard uncertainties of it, cm³/g: towards less and towards more */
  uLess: number;
  uMore: number;
  /** share of its variance that every piece of the bench has in common, 0 to 1 */
  commonShare: number;
}

/** Below this slope (cm³/g per whole share) the density says nothing of the share. */
const flat = 2e-4;

/**
 * The fine mass where the rest is shared out as in a corner. It is straight in the measured volume, so that errors of
 * many small pieces do not shift their sum. `towards`: on which side of it the uncertainty is wanted.
 */
export function fineAt(piece: MeasuredPiece, corner: RestCorner, towards: "less" | "more"): FineEnd {
  const slope = Math.abs(corner.slope) < flat ? -flat : corner.slope;
  const share = corner.share + (piece.cm3PerG - corner.cm3PerG) / slope;
  // more volume is less of a metal that is denser than the rest
  const uVolume = (towards === "less") === slope < 0 ? piece.uMore : piece.uLess;
  const uMeasured = (piece.massG * uVolume) / Math.abs(slope);
  return {
    middle_g: piece.massG * share,
    common_g: Math.hypot(
      uMeasured * Math.sqrt(piece.commonShare),
      Math.min(1, Math.abs(share)) * piece.uMassG,
    ),
    own_g: uMeasured * Math.sqrt(1 - piece.commonShare),
    law_g: (piece.massG * corner.uCm3PerG) / Math.abs(slope),
  };
}

/** Standard uncertainty of an end of one piece, g. */
export const uOfEnd = ({ common_g, own_g, law_g }: FineEnd): number => Math.hypot(common_g, own_g, law_g);
