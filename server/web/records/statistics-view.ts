import { keyed } from "../../../calibration/keyed.ts";
import { dayRange } from "../../../calibration/local-time.ts";
import { tell, tellerOf } from "../../../views/messages/tell.ts";
import type { CountBar } from "../../../views/plots/count-bars.tsx";
import type { StatisticsPage } from "../../../views/statistics/index.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { type Counted, type CountedGroup, type Grouping, groupings } from "../../ledger/statistics.ts";
import type { Library } from "../../metals/library.ts";
import { balanceLabel } from "../../station/balance-label.ts";
import { loadScatter } from "../../weighing/load-scatter.ts";
import { nameShown } from "../names.ts";
import { dayOf, type Manner } from "../when.ts";
import { nameIn } from "./record-view.ts";
import { type Stretch, stretchesOf } from "./stretches.ts";

/** The scatter is worked out from so many records at most, shared among the stretches: a page must not read a million. */
const mostLookedAt = 2000;

/** So many groups have a row of their own in the data of a plot. */
const mostBars = 500;

/** What was measured between two days as the page tells it; without days the month that runs and the eleven before it. */
export async function statisticsOf(
  ledger: Ledger,
  asked: { from?: string | undefined; to?: string | undefined },
  { library, manner, now }: { library: Library; manner: Manner; now: Date },
): Promise<StatisticsPage> {
  const today = dayOf(now.toISOString(), manner.zone);
  const isDay = (day: string | undefined): day is string =>
    day !== undefined && dayRange(day, manner.zone) !== undefined;
  const to = isDay(asked.to) ? asked.to : today;
  const from = isDay(asked.from) && asked.from <= to ? asked.from : yearBefore(to);
  const stretches = stretchesOf(from, to, manner.zone);
  const range = { from: stretches[0]?.from ?? "", until: stretches.at(-1)?.until ?? "" };
  const lookedAt = Math.ceil(mostLookedAt / Math.max(1, stretches.length));
  const inTime: CountedStretch[] = [];
  for (const stretch of stretches) inTime.push({ stretch, counted: await ledger.countedIn(stretch) });
  const sum = (of: "records" | "voided") => inTime.reduce((total, { counted }) => total + counted[of], 0);
  const records = sum("records");
  const lots = await lotNames(ledger);
  const counts: StatisticsPage["counts"][number][] = [];
  if (records > 0) {
    counts.push({ by: "time", bars: inTime.map(({ stretch, counted }) => barOf(stretch.name, counted)) });
    for (const by of groupings) {
      const groups = (await ledger.countedBy(range, by)).filter(({ records }) => records > 0);
      // one bar of nothing stated tells nothing
      if (groups.some(({ key }) => key !== null && key !== ""))
        counts.push({
          by,
          bars: barsOf(groups, (group) => nameOf(by, group, { lots, library, manner }), manner),
        });
    }
  }
  return {
    from,
    to,
    records,
    voided: sum("voided"),
    counts,
    stretches: stretches.map(({ name }) => name),
    scatter: records > 0 ? await scatterOf(ledger, { stretches, lookedAt }, manner) : [],
    lookedAt,
  };
}

/** The first of the month eleven months before a day. */
function yearBefore(day: string): string {
  const [year = 0, month = 1] = day.split("-").map(Number);
  return new Date(Date.UTC(year, month - 12, 1)).toISOString().slice(0, 10);
}

interface CountedStretch {
  stretch: Stretch;
  counted: Counted;
}

function barOf(name: string, { states, mass_g, relativeExpanded, records }: Counted): CountBar {
  const { consistent, "consistent-not-unique": notUnique, excluded } = states;
  return {
    ...{ name, consistent, notUnique, excluded, mass_g, relativeExpanded },
    // an imported weighing states nothing of its claim
    undecided: records - consistent - notUnique - excluded,
  };
}

/** The largest groups, and what is left in one. */
function barsOf(
  groups: readonly CountedGroup[],
  name: (group: CountedGroup) => string,
  { locale }: Manner,
): CountBar[] {
  const bars = groups.map((group) => barOf(name(group), group));
  const rest = bars.splice(mostBars);
  const sum = (of: "consistent" | "notUnique" | "excluded" | "undecided" | "mass_g") =>
    rest.reduce((total, bar) => total + bar[of], 0);
  if (rest.length > 0)
    bars.push({
      name: tellerOf(locale)("statistics.others", { count: rest.length }),
      ...keyed(["consistent", "notUnique", "excluded", "undecided", "mass_g"], sum),
      relativeExpanded: null,
    });
  return bars;
}

interface Named {
  lots: ReadonlyMap<string, string>;
  library: Library;
  manner: Manner;
}

function nameOf(by: Grouping, { key }: CountedGroup, { lots, library, manner: { locale } }: Named): string {
  if (key === null || key === "") return tellerOf(locale)("statistics.not-stated");
  if (by === "claim") return nameIn(library, key, locale);
  if (by === "lot") return lots.get(key) ?? key;
  return by === "customer" ? nameShown(key, locale) : key;
}

async function lotNames(ledger: Ledger): Promise<Map<string, string>> {
  const opened = await ledger.entries({ kind: "lot-opened" });
  return new Map(
    opened.flatMap((entry) => (entry.kind === "lot-opened" ? [[entry.subject, entry.body.name]] : [])),
  );
}

async function scatterOf(
  ledger: Ledger,
  { stretches, lookedAt }: { stretches: readonly Stretch[]; lookedAt: number },
  { locale }: Manner,
): Promise<StatisticsPage["scatter"]> {
  const balances = new Map<string, StatisticsPage["scatter"][number]["points"][number][]>();
  for (const [place, stretch] of stretches.entries())
    for (const { balance, load, s_g, dof } of loadScatter(await ledger.readingsWithin(stretch, lookedAt))) {
      const points = balances.get(balance) ?? [];
      points.push({ place, load, s_mg: 1000 * s_g, dof });
      balances.set(balance, points);
    }
  return [...balances].map(([balance, points]) => {
    const label = balanceLabel(balance);
    return { balance: typeof label === "string" ? label : tell(label, locale), points };
  });
}
