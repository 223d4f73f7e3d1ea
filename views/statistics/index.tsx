import { Field } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { type CountBar, CountBars } from "../plots/count-bars.tsx";
import { ScatterOverTime, type ScatterPoint } from "../plots/scatter-over-time.tsx";
import { Sheet } from "../sheet.tsx";

/** What is counted by. */
export const countedBy = ["time", "operator", "claim", "customer", "lot"] as const;

export interface StatisticsPage {
  /** days of the calendar, both counted */
  from: string;
  to: string;
  records: number;
  voided: number;
  counts: readonly { by: (typeof countedBy)[number]; bars: readonly CountBar[] }[];
  /** the stretches of time, oldest first */
  stretches: readonly string[];
  scatter: readonly { balance: string; points: readonly ScatterPoint[] }[];
  /** of each stretch at most so many records were looked at for the scatter */
  lookedAt: number;
}

/** What was measured in a stretch of time, counted and drawn; every plot can be taken out. */
export function StatisticsIndex({
  from,
  to,
  records,
  voided,
  counts,
  stretches,
  scatter,
  lookedAt,
}: StatisticsPage) {
  const t = useTell();
  return (
    <>
      <search class="not-printed">
        <form method="get" action="/records/statistics" class="row">
          <Field kind="date" name="from" label={t("records.from")} value={from} />
          <Field kind="date" name="to" label={t("records.until")} value={to} />
          <button type="submit">{t("statistics.show")}</button>
        </form>
      </search>
      <p role="status">{t("statistics.count", { count: records, voided })}</p>
      {counts.map(({ by, bars }) => (
        <Sheet key={by} id={`by-${by}`} title={t(`statistics.by-${by}`)}>
          <CountBars
            id={`count-by-${by}`}
            caption={t(`statistics.by-${by}`)}
            of={t(`statistics.${by}`)}
            bars={bars}
            {...(by === "time" ? { most: bars.length } : {})}
          />
        </Sheet>
      ))}
      <Sheet id="scatter" title={t("statistics.scatter")}>
        {scatter.length === 0 && <p>{t("statistics.no-repeats")}</p>}
        {scatter.map(({ balance, points }, place) => (
          <ScatterOverTime
            key={balance}
            id={`scatter-${place + 1}`}
            caption={balance}
            stretches={stretches}
            points={points}
          />
        ))}
        {scatter.length > 0 && <p class="note">{t("statistics.looked-at", { count: lookedAt })}</p>}
      </Sheet>
      <p class="not-printed">
        <a href="/records">{t("records.title")}</a>
      </p>
    </>
  );
}
