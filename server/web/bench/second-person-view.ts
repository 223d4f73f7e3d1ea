import type { SecondPersonView, SecondReadingView } from "../../../views/bench/view.ts";
import type { EntryOf } from "../../ledger/entry.ts";
import type { Bench } from "../../station/bench.ts";
import { timeZoneOf } from "../../station/bench-settings.ts";
import { lastSecondReading } from "../../weighing/second-person.ts";
import { whenOf } from "../when.ts";

/** What a second person read, as pages show it. */
export function secondReadingView({ at, body }: EntryOf<"second-reading">, zone: string): SecondReadingView {
  const { by, typedBy, agrees, above, readings, temperature } = body;
  return {
    by,
    typedBy,
    when: whenOf(at, zone),
    agrees,
    above,
    readings: readings.map(({ what, reading, against_g, within_g, agrees }) => ({
      role: what,
      first: `${against_g} g`,
      second: `${reading.text} ${reading.unit}`,
      withinG: within_g,
      agrees,
    })),
    ...(temperature
      ? {
          temperature: {
            first: `${temperature.against} °C`,
            second: `${temperature.celsius} °C`,
            withinCelsius: temperature.within_celsius,
            agrees: temperature.agrees,
          },
        }
      : {}),
  };
}

/** How the piece on the bench stands with its second person; undefined when none is asked for. */
export function secondPersonView({
  item,
  secondPersonDue: due,
  preferences,
}: Bench): SecondPersonView | undefined {
  const last = item && lastSecondReading(item);
  if (due === undefined) {
    if (!last) return undefined;
    const { by, when } = secondReadingView(last, timeZoneOf(preferences));
    return { confirmed: { by, when } };
  }
  if (!last) return { due };
  const { by, readings, temperature } = last.body;
  const what = readings.filter(({ agrees }) => !agrees).map(({ what }) => what);
  return {
    due,
    unlike: { by, what: [...what, ...(temperature?.agrees === false ? ["temperature" as const] : [])] },
  };
}
