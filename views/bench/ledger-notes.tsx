import type { BenchView } from "../../server/station/view.ts";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";

/** What the person at the bench must know of the ledger: that nothing can be stored now, and what was found on opening. */
export function LedgerNotes({ view: { notStored, found } }: { view: BenchView }) {
  const say = useWords().ledger.notes;
  return (
    <>
      {notStored !== undefined && (
        <section class="problems" role="alert">
          <p class="result-value">
            <strong>{say.nothingStored}</strong>
          </p>
          <p>{say.goesOn}</p>
          <p>
            <Told says={notStored} />
          </p>
        </section>
      )}
      {found.length > 0 && (
        <aside class="caution" aria-label={say.opened}>
          <p>
            <strong>{say.opened}</strong>
          </p>
          {found.map((says) => (
            <p key={says}>
              <Told says={says} />
            </p>
          ))}
        </aside>
      )}
    </>
  );
}
