import { useTell } from "../messages/spoken.ts";
import { StateWord } from "../result.tsx";
import { Fold } from "../sheet.tsx";
import type { LotView } from "./view.ts";

/** The trays by finding. */
export function Trays({ trays }: Pick<LotView, "trays">) {
  const t = useTell();
  return (
    <Fold title={t("lots.trays")} remember="lot-trays">
      <section id="trays" aria-label={t("lots.trays")} class="trays">
        {trays.map(({ state, pieces, mass, tickets }) => (
          <section class="sheet" key={state} aria-label={t(`state.${state}`)}>
            <StateWord state={state} />
            <p class="result-value">{pieces}</p>
            <p>{mass}</p>
            <p class="hint">{tickets.join(", ")}</p>
          </section>
        ))}
      </section>
    </Fold>
  );
}
