import { Csrf } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Facts, Rows } from "../sheet.tsx";

export interface NowView {
  /** what brings the readings, or that nothing does */
  name: Sentence;
  /** heard, silent, refused, lost … */
  state: Sentence;
  /** the same as a whole sentence: what, since when, what to do */
  message: Sentence;
  /** how its lines are read */
  readBy: Sentence;
  /** undefined while readings are typed or simulated */
  choice?: { address: string; line?: string; asked?: string };
  /** what its answers, request and profile are bound to, and why */
  keptFor?: Sentence | undefined;
  /** what a person has to look at */
  checks: readonly { kind: string; message: Sentence }[];
  /** a number that may mean two things, asked once */
  commaAsked?: { raw: string };
  lines: readonly { at: string; raw: string; meaning: Sentence }[];
  csrfToken: string;
}

/** Fragment: the balance in use in words; renewed with every line, so nothing in it can be pressed. */
export function BalanceNow({ name, state, message, readBy, choice, keptFor }: NowView) {
  const t = useTell();
  return (
    <>
      <p>
        <strong>
          <Sentence message={state} />
        </strong>
        : <Sentence message={message} />
      </p>
      <Facts
        facts={[
          [t("balances.source"), <Sentence key="s" message={name} />],
          [t("balances.line"), choice?.line],
          [t("balances.read-by"), <Sentence key="r" message={readBy} />],
          [t("beside.kept-for"), keptFor && <Sentence key="k" message={keptFor} />],
          [t("balances.asked-with"), choice?.asked && <code>{choice.asked}</code>],
        ]}
      />
    </>
  );
}

/** Fragment: what a person has to look at or answer about the balance in use. */
export function BalanceAsks({ choice, checks, commaAsked, csrfToken }: NowView) {
  const t = useTell();
  return (
    <>
      {checks.map((check) => (
        <section key={check.kind} class="caution" aria-label={t("balances.look-at-balance")}>
          <p>
            <Sentence message={check.message} />
          </p>
          <form method="post" action="/balances/looked-at">
            <Csrf token={csrfToken} />
            <input type="hidden" name="kind" value={check.kind} />
            <button type="submit" class="plain">
              {t("balances.looked")}
            </button>
          </form>
        </section>
      ))}
      {commaAsked && (
        <form method="post" action="/balances/comma" class="caution">
          <Csrf token={csrfToken} />
          <p>
            {t("balances.comma-before")} <code>{commaAsked.raw}</code> {t("balances.comma-ask")}
          </p>
          <p class="row">
            <button type="submit" name="comma" value="decimal">
              {t("balances.comma-is-decimal")}
            </button>
            <button type="submit" name="comma" value="thousands" class="plain">
              {t("balances.comma-is-thousands")}
            </button>
          </p>
        </form>
      )}
      {choice && (
        <form method="post" action="/balances/typed">
          <Csrf token={csrfToken} />
          <p>
            <button type="submit" class="plain">
              {t("balances.close-and-type")}
            </button>
          </p>
        </form>
      )}
    </>
  );
}

/** Fragment: the lines as received, with what each was understood to mean. */
export function LastLines({ lines }: Pick<NowView, "lines">) {
  const t = useTell();
  return (
    <Rows
      caption={t("balances.last-lines-caption")}
      empty={t("balances.no-lines")}
      columns={[
        { head: t("balances.at") },
        { head: t("balances.as-received") },
        { head: t("balances.understood-as") },
      ]}
      rows={lines.map(({ at, raw, meaning }, index) => ({
        key: `${at} ${index}`,
        cells: [at, <code key="r">{raw}</code>, <Sentence key="m" message={meaning} />],
      }))}
    />
  );
}
