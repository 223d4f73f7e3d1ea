import { Select } from "../forms.tsx";
import { Fineness, type FinenessPlot } from "../plots/fineness.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import type { Locale } from "../words/index.ts";

/** The fineness that a density leaves open, and the fine mass that follows. */
export interface FinenessAnswer {
  says: string;
  /** left out when no alloy of the kind has this density */
  plot?: Omit<FinenessPlot, "id">;
  facts: readonly (readonly [name: string, value: string])[];
}

export interface FinenessSheetView {
  action: string;
  metal: string;
  colour: string;
  colours: readonly { value: string; label: string }[];
  answer: FinenessAnswer;
}

export const preciousMetals = [
  { value: "gold", label: "gold" },
  { value: "silver", label: "silver" },
];

/** Fineness of the recorded piece if it is sound gold or silver alloy. */
export function FinenessSheet(view: FinenessSheetView & { locale: Locale }) {
  const { action, metal, colour, colours, answer, locale } = view;
  return (
    <Sheet id="fineness" title="Fineness and fine mass">
      <p>{answer.says}</p>
      {answer.plot && <Fineness id="fineness-plot" {...answer.plot} locale={locale} />}
      <Facts facts={answer.facts} />
      <form method="get" action={`${action}#fineness-heading`} class="row not-printed">
        <Select name="metal" label="If it is" value={metal} options={preciousMetals} />
        <Select name="colour" label="Colour, if gold" value={colour} options={colours} />
        <button type="submit">Show</button>
      </form>
      <p class="hint">
        A colour is a range of recipes, never one. Density is evidence, not an assay: fineness for settlement
        is found by a licensed laboratory (gold ISO 11426, silver ISO 11427).
      </p>
    </Sheet>
  );
}
