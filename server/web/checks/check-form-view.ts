import { randomUUID } from "node:crypto";
import { massUnits } from "../../../calibration/units.ts";
import type { CheckFormView } from "../../../views/checks/form.tsx";
import type { CheckKind } from "../../../views/checks/guides.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { type CheckRepository, thermometerName } from "../../station/check-repository.ts";
import { kindInLedger } from "./checks-view.ts";

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
  { locale, csrfToken }: { locale: Locale; csrfToken: string },
): CheckFormView {
  const outcome = checks.all.find(({ id }) => id === kept);
  const mine = checks.all.filter((check) => check.kind === kindInLedger(kind));
  const passedBefore = mine.findLastIndex(({ passed }) => passed);
  return {
    kind,
    units: massUnits,
    unit: values.unit ?? "g",
    values,
    problems,
    attempt: mine.length - passedBefore,
    csrfToken,
    stepKey: values.step ?? randomUUID(),
    ...(outcome && { outcome: outcomeOf(outcome, locale) }),
  };
}

function outcomeOf(
  { says, passed, todo, of, by, at }: CheckRepository["all"][number],
  locale: Locale,
): NonNullable<CheckFormView["outcome"]> {
  const t = tellerOf(locale);
  return {
    says,
    passed,
    todo,
    facts: [
      [t("check-form.of"), of === thermometerName ? t("checks-page.profile.thermometer") : of],
      [t("check-form.by"), by],
      [t("check-form.at"), `${at.slice(0, 16).replace("T", " ")} UTC`],
    ],
  };
}
