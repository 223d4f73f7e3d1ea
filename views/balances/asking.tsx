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
      <Caution title={say.onlyAskNeverCommand}>
        <p>{say.doNotEnterRequest}</p>
      </Caution>
      <form method="post" action="/balances/asking" class="sheet">
        <Csrf token={view.csrfToken} />
        <Field
          name="request"
          label={say.request}
          hint={say.asInManualR}
          value={view.request}
          maxLength={200}
          required
        />
        <RadioCards
          name="when"
          legend={say.whenSent}
          value={view.when}
          cards={[
            { value: "timer", label: say.againAndAgain, hint: say.liveReadingMoves },
            { value: "capture", label: say.whenReadingTaken, hint: say.silentInBetween },
          ]}
        />
        <Field
          kind="decimal"
          name="every"
          label={say.againAfter}
          hint={say.n0160S}
          after="s"
          value={view.everySeconds}
        />
        <Check name="consent" label={say.iTookThisFrom} checked={view.consented} />
        <button type="submit">{say.keepAndAsk}</button>
      </form>
      {view.asking && (
        <Sheet id="sent" title={say.whatSent}>
          <p>
            <code>{view.asking.request}</code>
          </p>
          <p>
            <Told says={view.asking.lastAnswer} />
          </p>
          <form method="post" action="/balances/asking/end">
            <Csrf token={view.csrfToken} />
            <button type="submit" class="plain">
              {say.askNoMore}
            </button>
          </form>
        </Sheet>
      )}
    </>
  );
}
