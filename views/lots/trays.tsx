import { FindingState } from "../finding.tsx";
import { useWords } from "../words/spoken.ts";
import type { LotView } from "./view.ts";

/** The trays by finding. */
export function Trays({ trays }: Pick<LotView, "trays">) {
  const { lots, findings } = useWords();
  return (
    <section id="trays" aria-label={lots.trays} class="trays">
      {trays.map(({ state, pieces, mass, tickets }) => (
        <section class="sheet" key={state} aria-label={findings[state]}>
          <FindingState state={state} />
          <p class="result-value">{pieces}</p>
          <p>{mass}</p>
          <p class="hint">{tickets.join(", ")}</p>
        </section>
      ))}
    </section>
  );
}
