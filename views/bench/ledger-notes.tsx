import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import type { BenchView } from "./view.ts";

/** What the person at the bench must know of the ledger: that nothing can be stored now, and what was found on opening. */
export function LedgerNotes({ view: { notStored, found } }: { view: BenchView }) {
  const t = useTell();
  return (
    <>
      {notStored !== undefined && (
        <section class="problems" role="alert">
          <p class="result-value">
            <strong>{t("ledger-page.notes.nothing-stored")}</strong>
          </p>
          <p>{t("ledger-page.notes.goes-on")}</p>
          <p>
            <Sentence message={notStored} />
          </p>
        </section>
      )}
      {found.length > 0 && (
        <aside class="caution" aria-label={t("ledger-page.notes.opened")}>
          <p>
            <strong>{t("ledger-page.notes.opened")}</strong>
          </p>
          {found.map((message) => (
            <p key={typeof message === "string" ? message : message.code}>
              <Sentence message={message} />
            </p>
          ))}
        </aside>
      )}
    </>
  );
}
