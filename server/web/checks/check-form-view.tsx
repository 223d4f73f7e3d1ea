import { randomUUID } from "node:crypto";
import { massUnits } from "../../../calibration/units.ts";
import type { CheckFormView } from "../../../views/checks/form.tsx";
import { type CheckKind, guideOf } from "../../../views/checks/guides.ts";
import { LotBalance } from "../../../views/lots/balance.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import type { Bench } from "../../station/bench.ts";
import { chartsOf } from "../../station/check-charts.ts";
import { type CheckRepository, thermometerName } from "../../station/check-repository.ts";
import { type Manner, whenOf } from "../when.ts";
import { kindInLedger } from "./checks-view.ts";
import { plotOf } from "./control-chart-plot.ts";
import { lastTime } from "./last-time.ts";
import { isOfOtherMethod, readingsOf } from "./live-check.ts";

/** What was sent back, and what a page shows of a check that was just kept. */
interface Shown {
  problems?: CheckFormView["problems"];
  values?: Record<string, string>;
  kept?: string | undefined;
}

/** The form of one kind of check, with the outcome of the attempt that was kept last on this page. */
export function checkFormView(
  checks: CheckRepository,
  kind: CheckKind,
  { problems = [], values = {}, kept }: Shown,
  { locale, zone, csrfToken, bench, demo }: Manner & { csrfToken: string; bench: Bench; demo: boolean },
): CheckFormView {
  const outcome = checks.all.find(({ id }) => id === kept);
  const mine = checks.all.filter((check) => check.kind === kindInLedger(kind));
  const { method } = bench.preferences;
  const known =
    Object.keys(values).length === 0
      ? inLanguage({ by: checks.all.at(-1)?.by ?? "", ...lastTime(kind, mine.at(-1)) }, locale)
      : values;
  const names = readingsOf(kind, method);
  const toTake = names.findIndex((name) => (known[name] ?? "").trim() === "");
  const sensors = thermometersHeard(bench);
  const chart = chartsOf(checks, []).findLast(
    (one) => one.kind === (kind === "reference" ? "reference-density" : kind),
  );
  const passedBefore = mine.findLastIndex(({ passed }) => passed);
  return {
    kind,
    units: massUnits,
    unit: values.unit ?? "g",
    values: known,
    hidden: guideOf(kind)
      .perRow.filter((entry) => isOfOtherMethod(entry, method))
      .map(({ name }) => name),
    ...(bench.scale && toTake >= 0
      ? {
          take: {
            number: toTake + 1,
            of: names.length,
            live: (
              <LotBalance
                live={{ live: bench.live, waitingFor: bench.waitingFor }}
                {...(demo ? { demoToken: csrfToken } : {})}
              />
            ),
          },
        }
      : {}),
    ...(thermometerChecks.has(kind) && sensors.length > 0 && { sensors }),
    problems,
    attempt: mine.length - passedBefore,
    csrfToken,
    stepKey: values.step ?? randomUUID(),
    ...(outcome && { outcome: outcomeOf(outcome, { locale, zone }) }),
    ...(chart && { chart: plotOf(chart, 0, { locale, zone }) }),
  };
}

const thermometerChecks: ReadonlySet<CheckKind> = new Set(["thermometer", "ice-point"]);

/** The sensors in the liquid that show a temperature, by their address, with what each shows now. */
function thermometersHeard({ sensors }: Bench): { address: string; shows: string }[] {
  const { sensed = [] } = sensors ?? {};
  return sensed
    .filter(({ place, quantity }) => place === "liquid" && quantity === "temperature")
    .map(({ sensor, text, unit }) => ({ address: sensor, shows: `${text} ${unit}` }));
}

/** Decimal text with the mark of the page. */
function inLanguage(values: Record<string, string>, locale: Locale): Record<string, string> {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      /^\d+\.\d+$/.test(value) ? inLocale(value, locale) : value,
    ]),
  );
}

function outcomeOf(
  { says: message, passed, todo, of, by, at }: CheckRepository["all"][number],
  { locale, zone }: Manner,
): NonNullable<CheckFormView["outcome"]> {
  const t = tellerOf(locale);
  return {
    message,
    passed,
    todo,
    facts: [
      [t("check-form.of"), of === thermometerName ? t("checks-page.profile.thermometer") : of],
      [t("check-form.by"), by],
      [t("check-form.at"), whenOf(at, zone)],
    ],
  };
}
