import { Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Fineness, type FinenessPlot } from "../plots/fineness.tsx";
import { Sentence } from "../sentence.tsx";
import { Facts, Fold } from "../sheet.tsx";

/** The fineness that a density leaves open, and the fine mass that follows. */
export interface FinenessAnswer {
  message: Sentence;
  /** left out when no alloy of the kind has this density */
  plot?: Omit<FinenessPlot, "id">;
  facts: readonly (readonly [name: string, value: string])[];
  /** what this house's assayed melts say beside it, one sentence each; left out where they say nothing */
  melts?: readonly string[];
}

export interface FinenessSheetView {
  action: string;
  /** the page that multiplies the fine mass by a price */
  priceHref: string;
  metal: string;
  colour: string;
  colours: readonly { value: string; label: string }[];
  answer: FinenessAnswer;
  /** true once it was asked for a metal or a colour */
  open: boolean;
}

/** Fineness of the recorded piece if it is sound gold or silver alloy. */
export function FinenessSheet(view: FinenessSheetView) {
  const t = useTell();
  const { action, priceHref, metal, colour, colours, answer } = view;
  return (
    <Fold id="fineness" title={t("evidence.fineness-title")} open={view.open}>
      <p>
        <Sentence message={answer.message} />
      </p>
      {answer.plot && <Fineness id="fineness-plot" {...answer.plot} />}
      <Facts facts={answer.facts} />
      <AssayedMelts message={answer.melts} />
      <p class="not-printed">
        <a href={priceHref}>{t("metal-price.link")}</a>
      </p>
      <form method="get" action={`${action}#fineness-heading`} class="row not-printed">
        <Select
          name="metal"
          label={t("evidence.if-it-is")}
          value={metal}
          options={[
            { value: "gold", label: t("evidence.gold") },
            { value: "silver", label: t("evidence.silver") },
          ]}
        />
        <Select name="colour" label={t("evidence.gold-colour")} value={colour} options={colours} />
        <button type="submit">{t("evidence.show")}</button>
      </form>
      <p class="hint">{t("evidence.colour-is-a-range")}</p>
    </Fold>
  );
}

/** What the melts of this house add to the interval; they never take its place. */
export function AssayedMelts({ message }: { message: FinenessAnswer["melts"] }) {
  const t = useTell();
  if (message === undefined) return null;
  return (
    <>
      <h3>{t("assay.own-melts.heading")}</h3>
      {message.map((one) => (
        <p key={one}>{one}</p>
      ))}
    </>
  );
}
