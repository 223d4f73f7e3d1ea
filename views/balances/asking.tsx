import { Check, Csrf, Field, RadioCards } from "../forms.tsx";
import { Caution, Sheet } from "../sheet.tsx";

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
  return (
    <>
      {view.problem !== undefined && (
        <div class="problems" role="alert">
          <p>{view.problem}</p>
        </div>
      )}
      <p>
        Some balances send a line only when asked. Type the request that your balance's own manual gives; it
        is kept with the choice of the {view.balance}.
      </p>
      <Caution title="Only ask, never command">
        <p>
          Do not enter a request that zeroes, tares, calibrates or prints a report. What stands here is sent
          again and again while the bench runs.
        </p>
      </Caution>
      <form method="post" action="/balances/asking" class="sheet">
        <Csrf token={view.csrfToken} />
        <Field
          name="request"
          label="Request"
          hint="as in the manual; \r and \n for the line end, \x02 for a byte by its number"
          value={view.request}
          maxLength={200}
          required
        />
        <RadioCards
          name="when"
          legend="When it is sent"
          value={view.when}
          cards={[
            { value: "timer", label: "Again and again", hint: "the live reading moves" },
            { value: "capture", label: "When a reading is taken", hint: "silent in between" },
          ]}
        />
        <Field
          kind="decimal"
          name="every"
          label="Again after"
          hint="0.1 to 60 s"
          after="s"
          value={view.everySeconds}
        />
        <Check
          name="consent"
          label="I took this from the manual of this balance. It asks for a weight and changes nothing."
          checked={view.consented}
        />
        <button type="submit">Keep and ask</button>
      </form>
      {view.asking && (
        <Sheet id="sent" title="What is sent">
          <p>
            <code>{view.asking.request}</code>
          </p>
          <p>{view.asking.lastAnswer}</p>
          <form method="post" action="/balances/asking/end">
            <Csrf token={view.csrfToken} />
            <button type="submit" class="plain">
              Ask no more
            </button>
          </form>
        </Sheet>
      )}
    </>
  );
}
