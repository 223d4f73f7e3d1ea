import { MethodDrawing } from "../drawings.tsx";
import { Csrf, RadioCards } from "../forms.tsx";
import { type Locale, words } from "../words/index.ts";

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
  const say = words(locale).firstStart;
  return (
    <form method="post" action="/first-start">
      <Csrf token={csrfToken} />
      <p>{say.lead}</p>
      <RadioCards
        name="method"
        legend={say.water}
        value={answers?.method ?? "displaced"}
        cards={[
          {
            value: "displaced",
            label: say.onScale,
            hint: say.onScaleHint,
            drawing: <MethodDrawing method="displaced" />,
          },
          {
            value: "hung",
            label: say.beside,
            hint: say.besideHint,
            drawing: <MethodDrawing method="hung" />,
          },
          {
            value: "flask",
            label: say.inFlask,
            hint: say.inFlaskHint,
            drawing: <MethodDrawing method="flask" />,
          },
        ]}
      />
      <RadioCards
        name="source"
        legend={say.source}
        value={answers?.source ?? "typed"}
        cards={[
          { value: "typed", label: say.typed, hint: say.typedHint },
          {
            value: "cable",
            label: say.cable,
            hint: say.cableHint,
          },
          ...(canTry ? [{ value: "simulated", label: say.simulated, hint: say.simulatedHint }] : []),
        ]}
      />
      <RadioCards
        name="metal"
        legend={say.metal}
        value={answers?.metal ?? metals[0]?.id ?? ""}
        cards={metals.map(({ id, name, hint }) => ({
          value: id,
          label: name,
          ...(hint === undefined ? {} : { hint }),
        }))}
      />
      <button type="submit" class="large">
        {say.go}
      </button>
    </form>
  );
}
