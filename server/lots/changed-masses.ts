import type { LotDoubt } from "./lot-doubt.ts";
import type { LotPiece } from "./lot-piece.ts";
import { weighedAgain } from "./weighed-again.ts";

/** Pieces that came back to the pan with another mass: water inside, something lost, or another piece. */
export function changedMasses(pieces: readonly LotPiece[], decimals: number): LotDoubt[] {
  return pieces.flatMap((piece): LotDoubt[] => {
    const found = weighedAgain(piece, pieces);
    const grams = Math.abs(found?.changeG ?? 0).toFixed(decimals);
    const tickets = [piece.ticket];
    switch (found?.kind) {
      case "gained":
        return [
          {
            flag: "water inside",
            says: `Mass gained ${grams} g since dry: water inside.`,
            todo: "Dry it before paying by weight; what it weighed dry at first still counts.",
            tickets,
          },
        ];
      case "lost":
        return [
          {
            flag: "mass lost",
            says: `Mass lost ${grams} g since the first weighing.`,
            todo: "Look for a stone or a part that came off, or for water that was in it at first.",
            tickets,
          },
        ];
      case "other-piece":
        return [
          {
            flag: "other piece",
            says: `What came back weighs ${grams} g ${found.changeG > 0 ? "more" : "less"} than this ticket did: it is another piece.`,
            todo:
              found.like.length > 0
                ? `It weighs what ticket ${found.like.join(" and ")} weighs: swapped?`
                : "Hold it against the photo and the ticket before it goes back.",
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
export function unlikeTheList(pieces: readonly LotPiece[]): LotDoubt[] {
  const differs = (piece: LotPiece, from: LotPiece) =>
    from.expected === undefined ||
    Math.abs(piece.dryG - from.expected.grams) > 2 * Math.hypot(piece.stepG, from.expected.stepG) + 1e-9;
  const unlike = pieces.filter((piece) => piece.expected && differs(piece, piece));
  return unlike.flatMap((piece, place): LotDoubt[] => {
    const partner = unlike.find((one) => one !== piece && !differs(piece, one) && !differs(one, piece));
    if (partner && unlike.indexOf(partner) < place) return [];
    return [
      partner
        ? {
            flag: "swapped",
            says: "Two pieces weigh each what the list says of the other: swapped.",
            todo: "Put the tickets right, void both records and weigh them again.",
            tickets: [piece.ticket, partner.ticket],
          }
        : {
            flag: "other piece",
            says: `It weighs ${piece.dryG} g, and the list says ${piece.expected?.grams} g.`,
            todo: "Is it the piece of this ticket? Look at the photo and the marks.",
            tickets: [piece.ticket],
          },
    ];
  });
}
