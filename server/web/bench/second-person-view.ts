import type { SecondPersonView, SecondReadingView } from "../../../views/bench/view.ts";
import type { EntryOf } from "../../ledger/entry.ts";
import type { Bench } from "../../station/bench.ts";
import { lastSecondReading } from "../../weighing/second-person.ts";

/** What a second person read, as pages show it. */
export function secondReadingView({ at, body }: EntryOf<"second-reading">): SecondReadingView {
  const { by, typedBy, agrees, above, readings } = body;
  return {
    by,
    typedBy,
    when: `${at.slice(0, 10)} ${at.slice(11, 19)} UTC`,
    agrees,
    above,
    readings: readings.map(({ what, reading, against_g, within_g, agrees }) => ({
      role: what,
      first: `${against_g} g`,
      second: `${reading.text} ${reading.unit}`,
      withinG: within_g,
      agrees,
    })),
  };
}

/** How the piece on the bench stands with its second person; undefined when none is asked for. */
export function secondPersonView({ item, secondPersonDue: due }: Bench): SecondPersonView | undefined {
  const last = item && lastSecondReading(item);
  if (due === undefined) {
    if (!last) return undefined;
    const { by, when } = secondReadingView(last);
    return { confirmed: { by, when } };
  }
  if (!last) return { due };
  const { by, readings } = last.body;
  return { due, unlike: { by, roles: readings.filter(({ agrees }) => !agrees).map(({ what }) => what) } };
}
