import { type CheckKind, checkKinds } from "../../../views/checks/guides.ts";
import type { CheckRow, ChecksPage } from "../../../views/checks/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { type Sentence, sentenceText } from "../../../views/sentence.tsx";
import { closesBench } from "../../checks/bench-closed.ts";
import { chartView } from "../../checks/charts/chart-view.ts";
import type { ControlChart, Epoch } from "../../checks/charts/control-chart.ts";
import { basisOf, pointsForLimits, withEpoch } from "../../checks/charts/epoch.ts";
import type { CheckKind as LedgerKind } from "../../checks/check.ts";
import { holdsUntil } from "../../checks/holds-until.ts";
import { lastGood, toLookAt } from "../../checks/look-back.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { AdjustmentRepository } from "../../station/adjustment-repository.ts";
import { balanceLabel } from "../../station/balance-label.ts";
import type { Bench } from "../../station/bench.ts";
import { chartsOf } from "../../station/check-charts.ts";
import type { CheckRepository } from "../../station/check-repository.ts";
import { thermometerName } from "../../station/check-repository.ts";
import type { StoredCheck } from "../../station/stored-check.ts";
import type { WeighingPointRepository } from "../../station/weighing-point-repository.ts";
import { type Manner, whenOf } from "../when.ts";
import { balanceChecked } from "./checks-made.ts";
import { profileLines } from "./checks-profile.ts";
import { plotOf } from "./control-chart-plot.ts";

/** The name a guided check has in the ledger. */
export function kindInLedger(kind: CheckKind): LedgerKind {
  return kind === "reference" ? "reference-piece" : kind;
}

/** records read from the ledger at once while looking back */
const recordsAtOnce = 100;
/** How every check of the balance in use stands at a time, its charts, and what to look back at. */
export async function checksView(parts: {
  bench: Bench;
  checks: CheckRepository;
  adjustments: AdjustmentRepository;
  weighed: WeighingPointRepository;
  ledger: Ledger;
  at: string;
  manner: Manner;
}): Promise<Omit<ChecksPage, "csrfToken" | "problems" | "typed">> {
  const { bench, checks, adjustments, weighed, ledger, at, manner } = parts;
  const { zone } = manner;
  const balance = balanceChecked(bench);
  const mine = checks.all.filter(({ of }) => of === balance || of === thermometerName);
  const { points, olderAreLeftOut } = await weighed.now();
  const closed = checks.closed(balance, at);
  const { adjusted } = bench;
  const charts = chartsOf(checks, points);
  const out = new Set(
    charts.flatMap((chart) =>
      chartView(chart).points.flatMap((one) => (one.state === "action" ? one.at : [])),
    ),
  );
  const good = mine.filter(({ passed, at: made }) => passed && !out.has(made));
  return {
    ...(closed && { closed: { message: closed.says, todo: closed.todo, since: whenOf(closed.since, zone) } }),
    adjusted: adjustments.allOpen.map(({ of, since, notice }) => ({
      of,
      name: balanceLabel(of),
      inUse: of === balance,
      since: whenOf(since, zone),
      message: notice,
    })),
    checks: checkKinds.map((kind) => {
      const stopped = closed?.kinds.includes(kindInLedger(kind)) ?? false;
      const row = rowOf(kind, mine, stopped, at, manner);
      const due = adjusted !== undefined && kind === "reference" && row.standing === "in order";
      return due ? { ...row, standing: "due" } : row;
    }),
    // only what checks found is shown, so that no readability is needed for what is assumed
    profile: profileLines(checks.profileOf(balance, 0), manner),
    charts: charts.map((chart, place) => ({
      id: `${chart.kind} ${chart.of}`,
      plot: plotOf(chart, place, manner),
      standing: chartView(chart).standing,
      limits: chart.epochs.map((epoch, index) => ({
        from: whenOf(epoch.from, zone),
        message: chartView(chart).limits[index]?.message ?? "",
        ...entryOf(epoch, ledger),
      })),
      ...proposedLimits(chart, at),
      olderAreLeftOut: olderAreLeftOut && (chart.kind === "zero-after-lift" || chart.kind === "dry-after"),
    })),
    lookBack: await lookedBackAt(closed?.kinds ?? [], good, ledger, zone),
  };
}

/** The limits that a signature of this moment would set; none while there are too few points for any. */
function proposedLimits(chart: ControlChart, at: string): { proposed?: Sentence } {
  const basis = basisOf(chart);
  if (basis.length < pointsForLimits.provisional) return {};
  const signed = withEpoch(chart, { from: at, by: "–", why: "–", basis });
  const message = chartView(signed).limits.at(-1)?.message;
  return message === undefined ? {} : { proposed: message };
}

function rowOf(
  kind: CheckKind,
  mine: readonly StoredCheck[],
  stopped: boolean,
  at: string,
  { locale, zone }: Manner,
): CheckRow {
  const t = tellerOf(locale);
  const last = mine.findLast((check) => check.kind === kindInLedger(kind));
  if (!last) return { kind, standing: "never made" };
  const lastSays = `${whenOf(last.at, zone)}: ${sentenceText(last.says, locale)}`;
  if (!closesBench(last)) return { kind, standing: last.passed ? "in order" : "warning", last: lastSays };
  const until = holdsUntil(last);
  const over = until < Date.parse(at);
  return {
    kind,
    standing: stopped ? "stopped" : over ? "due" : "in order",
    last: lastSays,
    due: stopped
      ? t("checks-page.now")
      : t(over ? "checks-page.since" : "checks-page.holds-until", {
          when: whenOf(new Date(until).toISOString(), zone),
        }),
  };
}

/** Where a limit stands in the ledger, when its chain is signed there. */
function entryOf({ seq }: Epoch, ledger: Ledger) {
  return seq === undefined || ledger.key === null ? {} : { entry: seq };
}

/** Records since the last good one of each kind of check that closes the bench, each once, oldest first; however many. */
async function lookedBackAt(
  failed: readonly LedgerKind[],
  good: readonly StoredCheck[],
  ledger: Ledger,
  zone: string,
) {
  const found = new Map<string, { id: string; ticket: string; at: string }>();
  for (const failedKind of new Set(failed)) {
    const since = lastGood(good.filter(({ kind }) => kind === failedKind));
    const filters = since === undefined ? {} : { from: since };
    let before: number | undefined;
    do {
      const { records, next } = await ledger.records({
        filters,
        page: { size: recordsAtOnce, ...(before === undefined ? {} : { before }) },
      });
      for (const { subject, ticket, at } of toLookAt(since, records))
        found.set(subject, { id: subject, ticket: ticket ?? subject, at });
      before = next ?? undefined;
    } while (before !== undefined);
  }
  return [...found.values()]
    .sort((a, b) => a.at.localeCompare(b.at))
    .map(({ at, ...record }) => ({ ...record, when: whenOf(at, zone) }));
}
