import { Check, Csrf, Field, RadioCards } from "../forms.tsx";
import { Caution, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { toldValue } from "../words/told.ts";

export interface AskingView {
  /** the balance the request is kept with */
  balance: string;
  /** the line as typed, with escapes such as \r\n */
  request: string;
  when: string;
  everySeconds: string;
  consented: boolean;
  problem?: string;
  /** what is sent now, and what came back last */
  asking?: { request: string; lastAnswer: string };
  csrfToken: string;
}

/** For a balance that must be asked: its owner types the request from its own manual. Never sent before consent. */
export function Asking(view: AskingView) {
  const locale = useLocale();
  const say = useWords().balances;
  return (
    <>
      {view.problem !== undefined && (
        <div class="problems" role="alert">
          <p>
            <Told says={view.problem} />
          </p>
        </div>
      )}
      <p>{say.askingLead(toldValue(view.balance, locale))}</p>
      <Caution title={say.askCaution}>
        <p>{say.askCautionText}</p>
      </Caution>
      <form method="post" action="/balances/asking" class="sheet">
        <Csrf token={view.csrfToken} />
        <Field
          name="request"
          label={say.request}
          hint={say.requestHint}
          value={view.request}
          maxLength={200}
          required
        />
        <RadioCards
          name="when"
          legend={say.whenAsked}
          value={view.when}
          cards={[
            { value: "timer", label: say.askedSteadily, hint: say.askedSteadilyHint },
            { value: "capture", label: say.askedAtReading, hint: say.askedAtReadingHint },
          ]}
        />
        <Field
          kind="decimal"
          name="every"
          label={say.againAfter}
          hint={say.againAfterHint}
          after="s"
          value={view.everySeconds}
        />
        <Check name="consent" label={say.requestConfirmed} checked={view.consented} />
        <button type="submit">{say.keepAndAsk}</button>
      </form>
      {view.asking && (
        <Sheet id="sent" title={say.sentTitle}>
          <p>
            <code>{view.asking.request}</code>
          </p>
          <p>
            <Told says={view.asking.lastAnswer} />
          </p>
          <form method="post" action="/balances/asking/end">
            <Csrf token={view.csrfToken} />
            <button type="submit" class="plain">
              {say.stopAsking}
            </button>
          </form>
        </Sheet>
      )}
    </>
  );
}
