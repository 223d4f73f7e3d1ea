import { message } from "../../calibration/message.ts";
import type { LotCheck } from "./lot-check.ts";
import type { LotItem } from "./lot-item.ts";
import { weighedAgain } from "./weighed-again.ts";

/** Pieces that came back to the pan with another mass: water inside, something lost, or another piece. */
export function changedMasses(items: readonly LotItem[], decimals: number): LotCheck[] {
  return items.flatMap((item): LotCheck[] => {
    const found = weighedAgain(item, items);
    const change_g = { decimal: Math.abs(found?.changeG ?? 0).toFixed(decimals) };
    const tickets = [item.ticket];
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
export function unlikeTheList(items: readonly LotItem[]): LotCheck[] {
  const differs = (item: LotItem, from: LotItem) =>
    from.expected === undefined ||
    Math.abs(item.dryG - from.expected.grams) > 2 * Math.hypot(item.stepG, from.expected.stepG) + 1e-9;
  const unlike = items.filter((item) => item.expected && differs(item, item));
  return unlike.flatMap((item, place): LotCheck[] => {
    const partner = unlike.find((one) => one !== item && !differs(item, one) && !differs(one, item));
    if (partner && unlike.indexOf(partner) < place) return [];
    return [
      partner
        ? {
            flag: "swapped",
            message: message("lot-check.swapped"),
            remedy: message("lot-check.swapped-remedy"),
            tickets: [item.ticket, partner.ticket],
          }
        : {
            flag: "other piece",
            message: message("lot-check.unlike-list", {
              dry_g: item.dryG,
              listed_g: item.expected?.grams ?? 0,
            }),
            remedy: message("lot-check.unlike-list-remedy"),
            tickets: [item.ticket],
          },
    ];
  });
}
