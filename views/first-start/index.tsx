import { Csrf, RadioCards } from "../forms.tsx";
import type { Locale } from "../messages/language.ts";
import { tellerOf } from "../messages/tell.ts";
import { MethodDrawing } from "../methods/drawing.tsx";
import { methodNames } from "../methods/index.ts";
import { Fold } from "../sheet.tsx";

export interface FirstStartView {
  csrfToken: string;
  /** what the piece is mostly; ids of the library's families or claims */
  metals: readonly { id: string; name: string; hint?: string }[];
  /** what was answered before, when the questions are asked again */
  answers?: { method?: string; source?: string; metal?: string; water?: string };
  /** whether the demonstration can be begun from here */
  canTry?: boolean;
  locale?: Locale;
}

/** The waters asked about; the others of Settings are seldom. */
const waters = ["tap", "distilled"] as const;

/** Three questions that set a new bench up; every answer can be changed later. */
export function FirstStart({ csrfToken, metals, answers, canTry = true, locale = "en" }: FirstStartView) {
  const t = tellerOf(locale);
  return (
    <form method="post" action="/first-start">
      <Csrf token={csrfToken} />
      <p class="lead">{t("first-start.lead")}</p>
      <div class="three">
        <RadioCards
          name="method"
          legend={t("first-start.water")}
          value={answers?.method ?? methodNames[0] ?? ""}
          cards={methodNames.map((method) => ({
            value: method,
            label: t(`method.${method}.first-start`),
            hint: t(`method.${method}.first-start-hint`),
            drawing: <MethodDrawing method={method} />,
          }))}
        />
        <RadioCards
          name="source"
          legend={t("first-start.source")}
          value={answers?.source ?? "typed"}
          cards={(["typed", "cable", ...(canTry ? (["simulated"] as const) : [])] as const).map((source) => ({
            value: source,
            label: t(`first-start.${source}`),
            hint: t(`first-start.${source}-hint`),
          }))}
        />
        <RadioCards
          name="water"
          legend={t("first-start.which-water")}
          value={answers?.water ?? "tap"}
          cards={waters.map((water) => ({
            value: water,
            label: t(`settings.waters.${water}`),
            hint: t(`first-start.${water}-hint`),
          }))}
        />
      </div>
      <button type="submit" class="next" data-key="Enter">
        {t("first-start.go")} <kbd>Enter</kbd>
      </button>
      <Fold title={t("first-start.metal")}>
        <RadioCards
          name="metal"
          legend={t("first-start.metal-first")}
          value={answers?.metal ?? "any"}
          cards={metals.map(({ id, name, hint }) => ({
            value: id,
            label: name,
            ...(hint === undefined ? {} : { hint }),
          }))}
        />
      </Fold>
    </form>
  );
}
