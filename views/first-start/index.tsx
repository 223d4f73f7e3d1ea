import { MethodDrawing } from "../drawings.tsx";
import { Csrf, RadioCards } from "../forms.tsx";
import type { Locale } from "../words/index.ts";

export interface FirstStartView {
  csrfToken: string;
  /** what the piece is mostly; ids of the library's families or claims */
  metals: readonly { id: string; name: string; hint?: string }[];
  locale?: Locale;
}

/** Three questions that set a new bench up; every answer can be changed later. */
export function FirstStart({ csrfToken, metals, locale = "en" }: FirstStartView) {
  return (
    <form method="post" action="/first-start">
      <Csrf token={csrfToken} />
      <p>Three questions, then the first piece. Everything can be changed under Settings.</p>
      <RadioCards
        name="method"
        legend="1. Where does the water stand?"
        value="displaced"
        cards={[
          {
            value: "displaced",
            label: "On the scale",
            hint: "any scale will do: the piece hangs from a stand, the scale shows the rise",
            drawing: <MethodDrawing method="displaced" locale={locale} />,
          },
          {
            value: "hung",
            label: "Beside or under it",
            hint: "the piece hangs from the balance: a hook below the pan, or a frame on it",
            drawing: <MethodDrawing method="hung" locale={locale} />,
          },
          {
            value: "flask",
            label: "In a flask with the piece",
            hint: "filings, grains and small scrap",
            drawing: <MethodDrawing method="flask" locale={locale} />,
          },
        ]}
      />
      <RadioCards
        name="source"
        legend="2. How does the reading get here?"
        value="typed"
        cards={[
          { value: "typed", label: "I type it", hint: "comma or point, any unit" },
          {
            value: "cable",
            label: "By cable or network",
            hint: "serial, USB or TCP; the bench learns its lines",
          },
          {
            value: "simulated",
            label: "Just let me try",
            hint: "a simulated balance and invented pieces, marked as such",
          },
        ]}
      />
      <RadioCards
        name="metal"
        legend="3. Which metal do you mostly see?"
        value={metals[0]?.id ?? ""}
        cards={metals.map(({ id, name, hint }) => ({
          value: id,
          label: name,
          ...(hint === undefined ? {} : { hint }),
        }))}
      />
      <button type="submit" class="large">
        Set up the bench
      </button>
    </form>
  );
}
