import { Csrf } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { Facts, Rows } from "../sheet.tsx";
import { Told } from "../told.tsx";
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
  const t = useTell();
  return (
    <>
      <p>
        <strong>{toldValue(state, locale)}</strong>: <Told says={says} />
      </p>
      <Facts
        facts={[
          [t("balances.source"), toldValue(name, locale)],
          [t("balances.line"), choice?.line],
          [t("balances.read-by"), toldValue(readBy, locale)],
          [t("beside.kept-for"), keptFor && <Told says={keptFor} />],
          [t("balances.asked-with"), choice?.asked && <code>{choice.asked}</code>],
        ]}
      />
    </>
  );
}

/** Fragment: what a person has to look at or answer about the balance in use. */
export function BalanceAsks({ choice, doubts, commaAsked, csrfToken }: NowView) {
  const t = useTell();
  return (
    <>
      {doubts.map((doubt) => (
        <section key={doubt.kind} class="caution" aria-label={t("balances.look-at-balance")}>
          <p>
            <Told says={doubt.says} />
          </p>
          <form method="post" action="/balances/looked-at">
            <Csrf token={csrfToken} />
            <input type="hidden" name="kind" value={doubt.kind} />
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
          <button type="submit" class="plain">
            {t("balances.close-and-type")}
          </button>
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
        cells: [at, <code key="r">{raw}</code>, <Told key="m" says={meaning} />],
      }))}
    />
  );
}
