import { Csrf } from "../forms.tsx";
import { Facts, Rows } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { toldValue } from "../words/told.ts";

export interface NowView {
  /** what brings the readings: "balance on …", or words that nothing does */
  name: string;
  /** heard, silent, refused, gone … */
  state: string;
  /** the same as a whole sentence: what, since when, what to do */
  says: string;
  /** how its lines are read */
  readBy: string;
  /** undefined while readings are typed or simulated */
  choice?: { address: string; line?: string; asked?: string };
  /** what its answers, request and profile are bound to, and why */
  keptFor?: string | undefined;
  doubts: readonly { kind: string; says: string }[];
  /** a number that may mean two things, asked once */
  commaAsked?: { raw: string };
  lines: readonly { at: string; raw: string; meaning: string }[];
  csrfToken: string;
}

/** Fragment: the balance in use in words; renewed with every line, so nothing in it can be pressed. */
export function BalanceNow({ name, state, says, readBy, choice, keptFor }: NowView) {
  const locale = useLocale();
  const { balances: say, beside } = useWords();
  return (
    <>
      <p>
        <strong>{toldValue(state, locale)}</strong>: <Told says={says} />
      </p>
      <Facts
        facts={[
          [say.source, toldValue(name, locale)],
          [say.line, choice?.line],
          [say.readBy, toldValue(readBy, locale)],
          [beside.keptFor, keptFor && <Told says={keptFor} />],
          [say.askedWith, choice?.asked && <code>{choice.asked}</code>],
        ]}
      />
    </>
  );
}

/** Fragment: what a person has to look at or answer about the balance in use. */
export function BalanceAsks({ choice, doubts, commaAsked, csrfToken }: NowView) {
  const say = useWords().balances;
  return (
    <>
      {doubts.map((doubt) => (
        <section key={doubt.kind} class="caution" aria-label={say.lookAtBalance}>
          <p>
            <Told says={doubt.says} />
          </p>
          <form method="post" action="/balances/looked-at">
            <Csrf token={csrfToken} />
            <input type="hidden" name="kind" value={doubt.kind} />
            <button type="submit" class="plain">
              {say.looked}
            </button>
          </form>
        </section>
      ))}
      {commaAsked && (
        <form method="post" action="/balances/comma" class="caution">
          <Csrf token={csrfToken} />
          <p>
            {say.commaBefore} <code>{commaAsked.raw}</code> {say.commaAsk}
          </p>
          <p class="row">
            <button type="submit" name="comma" value="decimal">
              {say.commaIsDecimal}
            </button>
            <button type="submit" name="comma" value="thousands" class="plain">
              {say.commaIsThousands}
            </button>
          </p>
        </form>
      )}
      {choice && (
        <form method="post" action="/balances/typed">
          <Csrf token={csrfToken} />
          <button type="submit" class="plain">
            {say.closeAndType}
          </button>
        </form>
      )}
    </>
  );
}

/** Fragment: the lines as received, with what each was understood to mean. */
export function LastLines({ lines }: Pick<NowView, "lines">) {
  const say = useWords().balances;
  return (
    <Rows
      caption={say.lastLinesCaption}
      empty={say.noLines}
      columns={[{ head: say.at }, { head: say.asReceived }, { head: say.understoodAs }]}
      rows={lines.map(({ at, raw, meaning }, index) => ({
        key: `${at} ${index}`,
        cells: [at, <code key="r">{raw}</code>, <Told key="m" says={meaning} />],
      }))}
    />
  );
}
