import { Csrf, RadioCards } from "../forms.tsx";
import type { Locale } from "../messages/language.ts";
import { tellerOf } from "../messages/tell.ts";
import { MethodDrawing } from "../methods/drawing.tsx";
import { methodNames } from "../methods/index.ts";

export interface FirstStartView {
  csrfToken: string;
  /** what the piece is mostly; ids of the library's families or claims */
  metals: readonly { id: string; name: string; hint?: string }[];
  /** what was answered before, when the questions are asked again */
  answers?: { method?: string; source?: string; metal?: string };
  /** whether the demonstration can be begun from here */
  canTry?: boolean;
  locale?: Locale;
}

/** Three questions that set a new bench up; every answer can be changed later. */
export function FirstStart({ csrfToken, metals, answers, canTry = true, locale = "en" }: FirstStartView) {
  const t = tellerOf(locale);
  return (
    <form method="post" action="/first-start">
      <Csrf token={csrfToken} />
      <p>{t("first-start.lead")}</p>
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
        cards={[
          { value: "typed", label: t("first-start.typed"), hint: t("first-start.typed-hint") },
          {
            value: "cable",
            label: t("first-start.cable"),
            hint: t("first-start.cable-hint"),
          },
          ...(canTry
            ? [
                {
                  value: "simulated",
                  label: t("first-start.simulated"),
                  hint: t("first-start.simulated-hint"),
                },
              ]
            : []),
        ]}
      />
      <RadioCards
        name="metal"
        legend={t("first-start.metal")}
        value={answers?.metal ?? metals[0]?.id ?? ""}
        cards={metals.map(({ id, name, hint }) => ({
          value: id,
          label: name,
          ...(hint === undefined ? {} : { hint }),
        }))}
      />
      <button type="submit" class="large">
        {t("first-start.go")}
      </button>
    </form>
  );
}
