import { decimalsShown } from "../../../calibration/decimal.ts";
import type { OtherItemView } from "../../../views/bench/view.ts";
import type { Bench } from "../../station/bench.ts";
import { timeZoneOf } from "../../station/bench-settings.ts";
import { photoView } from "../photos/photo-view.ts";

/** The stop as pages show it; undefined while the piece weighs what was announced, or nothing was. */
export function otherItemView({ item, otherMass, preferences }: Bench): OtherItemView | undefined {
  if (!item || !otherMass) return undefined;
  const { announced, shown, apartG, withinG, ask } = otherMass;
  const decimals = (text: string) => decimalsShown(text.split(" ")[0] ?? "0");
  return {
    ticket: item.ticket,
    from: announced.from,
    announced: announced.shown,
    weighed: shown,
    apartG,
    withinG,
    decimals: Math.max(1, Math.min(4, Math.max(decimals(announced.shown), decimals(shown)))),
    ...(ask === undefined ? {} : { ask }),
    photos: [...announced.photos, ...item.photos].map((entry) =>
      photoView(entry, item.ticket, timeZoneOf(preferences)),
    ),
  };
}
