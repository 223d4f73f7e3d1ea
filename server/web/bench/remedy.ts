import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { type Role, rolesOf } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import type { Offer } from "../../weighing/checks/check.ts";
import type { WeighingCommandContent } from "../../weighing/commands.ts";
import { type Capture, type Item, standing } from "../../weighing/item.ts";
import type { Seen } from "../about.ts";
import type { Entries } from "../forms/form.ts";
import { isUnmovedSince } from "../lots/second-press.ts";

/** Which remedy of which check; without a place, to take the reading again. */
export const remedyForm = ({ typed }: Entries) => z.object({ check: typed(), place: typed() });

/**
 * Does one remedy of a check of the piece on the bench: each step a command of its own, a reading that goes is excluded with
 * the remedy as its reason and stays visible. Without a place the last reading in the water is excluded and taken again.
 * Throws Refusal when the check does not stand any more or offers nothing.
 */
export async function doRemedy(
  bench: Bench,
  about: Seen,
  { check, place }: z.output<ReturnType<typeof remedyForm>>,
): Promise<void> {
  const { open, checks, scale } = bench;
  const found = checks.find(({ code }) => code === check);
  const remedy = place === "" ? undefined : found?.remedies[Number(place)];
  if (!open || !found) throw new Refusal("weighing.check.gone", {});
  const { code, params } = remedy ?? found;
  const reason = message(code, params);
  const offer = remedy?.offer ?? { do: "repeat", role: "wet", instead: true };
  // a load that nobody has moved since is what was just excluded: it is not taken once more
  const [last] = open.captures.filter(({ takenBy }) => takenBy !== "typed").slice(-1);
  const isMoved = scale !== undefined && !(last && isUnmovedSince(scale.live(), last));
  const steps = stepsOf(open, offer, { reason, live: isMoved });
  if (steps.length === 0 && scale !== undefined)
    throw new Refusal("lot.load-unmoved", { ticket: open.ticket });
  if (steps.length === 0) throw new Refusal("weighing.check.gone", {});
  let seen: number | "now" = about.seen;
  for (const step of steps) {
    await bench.station.do({ ...step, subject: about.subject, seen });
    seen = "now";
  }
}

function stepsOf(
  item: Item,
  offer: Offer,
  { reason, live }: { reason: Message; live: boolean },
): WeighingCommandContent[] {
  const excluded = (captures: readonly (Capture | undefined)[]) =>
    captures.flatMap((capture) =>
      capture ? [{ do: "exclude-reading" as const, entry: capture.id, reason }] : [],
    );
  switch (offer.do) {
    case "swap-dry-and-wet":
      return [{ do: "swap-readings" }];
    case "exclude": {
      const readings = standing(item, roleOf(item, offer.role));
      return excluded(offer.places.map((at) => readings[at]));
    }
    case "repeat": {
      const role = roleOf(item, offer.role);
      const again = live ? [{ do: "request-reading" as const, role }] : [];
      return [...(offer.instead ? excluded([standing(item, role).at(-1)]) : []), ...again];
    }
    default:
      return [];
  }
}

/** The role of this method's own reading in the water. */
function roleOf({ method }: Item, role: "dry" | "wet" | "zero"): Role {
  return role === "wet" ? rolesOf(method).at(-1)! : role;
}
