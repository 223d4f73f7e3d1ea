import { message } from "../../calibration/message.ts";
import type { LotCheck } from "./lot-check.ts";
import type { LotPiece } from "./lot-piece.ts";
import { weighedAgain } from "./weighed-again.ts";

/** Pieces that came back to the pan with another mass: water inside, something lost, or another piece. */
export function changedMasses(pieces: readonly LotPiece[], decimals: number): LotCheck[] {
  return pieces.flatMap((piece): LotCheck[] => {
    const found = weighedAgain(piece, pieces);
    const change_g = { decimal: Math.abs(found?.changeG ?? 0).toFixed(decimals) };
    const tickets = [piece.ticket];
    switch (found?.kind) {
      case "gained":
        return [
          {
            flag: "water inside",
            message: message("lot-check.mass-gained", { change_g }),
            remedy: message("lot-check.mass-gained-remedy"),
            tickets,
          },
        ];
      case "lost":
        return [
          {
            flag: "mass lost",
            message: message("lot-check.mass-lost", { change_g }),
            remedy: message("lot-check.mass-lost-remedy"),
            tickets,
          },
        ];
      case "other-piece":
        return [
          {
            flag: "other piece",
            message:
              found.changeG > 0
                ? message("lot-check.other-piece-heavier", { change_g })
                : message("lot-check.other-piece-lighter", { change_g }),
            remedy:
              found.like.length > 0
                ? message("lot-check.other-piece-like", { tickets: found.like })
                : message("lot-check.other-piece-remedy"),
            tickets,
          },
        ];
      default:
        return [];
    }
  });
}

/**
 * Pieces that do not weigh what their list said, two and two each what the other should: swapped. A list says the mass
 * to its own last digit, so within one step of it and of the display. Others that differ are told alone.
 */
export function unlikeTheList(pieces: readonly LotPiece[]): LotCheck[] {
  const differs = (piece: LotPiece, from: LotPiece) =>
    from.expected === undefined ||
    Math.abs(piece.dryG - from.expected.grams) > 2 * Math.hypot(piece.stepG, from.expected.stepG) + 1e-9;
  const unlike = pieces.filter((piece) => piece.expected && differs(piece, piece));
  return unlike.flatMap((piece, place): LotCheck[] => {
    const partner = unlike.find((one) => one !== piece && !differs(piece, one) && !differs(one, piece));
    if (partner && unlike.indexOf(partner) < place) return [];
    return [
      partner
        ? {
            flag: "swapped",
            message: message("lot-check.swapped"),
            remedy: message("lot-check.swapped-remedy"),
            tickets: [piece.ticket, partner.ticket],
          }
        : {
            flag: "other piece",
            message: message("lot-check.unlike-list", {
              dry_g: piece.dryG,
              listed_g: piece.expected?.grams ?? 0,
            }),
            remedy: message("lot-check.unlike-list-remedy"),
            tickets: [piece.ticket],
          },
    ];
  });
}
