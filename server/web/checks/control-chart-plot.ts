import type { ControlChartPlot } from "../../../views/plots/control-chart.tsx";
import { sentenceText } from "../../../views/sentence.tsx";
import { chartView } from "../../checks/charts/chart-view.ts";
import type { ControlChart } from "../../checks/charts/control-chart.ts";
import { type Manner, whenOf } from "../when.ts";

const states = {
  "no-limits": "no-limits",
  "in-control": "inside",
  warning: "warning",
  action: "action",
} as const;

/** A control chart as it is drawn; `place` tells the charts of a page apart. */
export function plotOf(chart: ControlChart, place: number, { locale, zone }: Manner): ControlChartPlot {
  const view = chartView(chart);
  const inGrams = view.unit === "g";
  const shown = (value: number) => (inGrams ? value * 1000 : value);
  const allowed = view.points.at(-1)?.allowed;
  return {
    id: `chart-${place + 1}`,
    caption: sentenceText(view.title, locale),
    points: view.points.map(({ at, value, attempt, state, message, fits, allowed }) => ({
      when: whenOf(at, zone),
      value: shown(value),
      attempt,
      outcome: allowed && fits === false ? "failed" : states[state],
      ...(state === "no-limits" ? {} : { note: sentenceText(message, locale) }),
    })),
    epochs: view.limits.map(({ firstPoint, mean, s, message, from }) => ({
      from: firstPoint,
      mean: shown(mean),
      s: shown(s),
      because: sentenceText(message, locale),
      since: whenOf(from, zone),
    })),
    ...(allowed && { allowed: allowed.map(shown) }),
    unit: inGrams ? "mg" : view.unit,
    decimals: inGrams ? 2 : 4,
    locale,
  };
}
