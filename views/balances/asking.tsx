import { Check, Csrf, Field, RadioCards } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Caution, Sheet } from "../sheet.tsx";

export interface AskingView {
  /** the balance the request is kept with */
  balance: Sentence;
  /** the line as typed, with escapes such as \r\n */
  request: string;
  when: string;
  everySeconds: string;
  consented: boolean;
  problem?: Sentence;
  /** what is sent now, and what came back last */
  asking?: { request: string; lastAnswer: Sentence };
  csrfToken: string;
}

/** For a balance that must be asked: its owner types the request from its own manual. Never sent before consent. */
export function Asking(view: AskingView) {
  const t = useTell();
  return (
    <>
      {view.problem !== undefined && (
        <div class="problems" role="alert">
          <p>
            <Sentence message={view.problem} />
          </p>
        </div>
      )}
      <p>{t("balances.asking-lead", { balance: view.balance })}</p>
      <Caution title={t("balances.ask-caution")}>
        <p>{t("balances.ask-caution-text")}</p>
      </Caution>
      <form method="post" action="/balances/asking" class="sheet">
        <Csrf token={view.csrfToken} />
        <Field
          name="request"
          label={t("balances.request")}
          hint={t("balances.request-hint")}
          value={view.request}
          maxLength={200}
          required
        />
        <RadioCards
          name="when"
          legend={t("balances.when-asked")}
          value={view.when}
          cards={[
            { value: "timer", label: t("balances.asked-steadily"), hint: t("balances.asked-steadily-hint") },
            {
              value: "capture",
              label: t("balances.asked-at-reading"),
              hint: t("balances.asked-at-reading-hint"),
            },
          ]}
        />
        <Field
          kind="decimal"
          name="every"
          label={t("balances.again-after")}
          hint={t("balances.again-after-hint")}
          after="s"
          value={view.everySeconds}
        />
        <Check name="consent" label={t("balances.request-confirmed")} checked={view.consented} />
        <button type="submit">{t("balances.keep-and-ask")}</button>
      </form>
      {view.asking && (
        <Sheet id="sent" title={t("balances.sent-title")}>
          <p>
            <code>{view.asking.request}</code>
          </p>
          <p>
            <Sentence message={view.asking.lastAnswer} />
          </p>
          <form method="post" action="/balances/asking/end">
            <Csrf token={view.csrfToken} />
            <button type="submit" class="plain">
              {t("balances.stop-asking")}
            </button>
          </form>
        </Sheet>
      )}
    </>
  );
}
