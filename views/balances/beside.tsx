import { Csrf } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Rows } from "../sheet.tsx";

/** A balance that is open although the bench takes from another one. */
export interface BesideView {
  address: string;
  name: Sentence;
  /** heard, silent, refused, lost … */
  state: Sentence;
  /** the same as a whole sentence */
  message: Sentence;
  /** what a person has to look at */
  checks: readonly { kind: string; message: Sentence }[];
}

/** Fragment: every balance beside the one in use in words; renewed with every line, so nothing in it can be pressed. */
export function BesideNow({ beside }: { beside: readonly BesideView[] }) {
  const t = useTell();
  if (beside.length === 0) return <p class="hint">{t("beside.none")}</p>;
  return (
    <Rows
      caption={t("beside.caption")}
      empty={t("beside.none")}
      columns={[{ head: t("beside.balance") }, { head: t("beside.now") }, { head: t("beside.in-words") }]}
      rows={beside.map(({ address, name, state, message, checks }) => ({
        key: address,
        cells: [
          <Sentence key="n" message={name} />,
          <strong key="s">
            <Sentence message={state} />
          </strong>,
          <span key="w">
            <Sentence message={message} />
            {checks.map((check) => (
              <small key={check.kind}>
                {" "}
                <Sentence message={check.message} />
              </small>
            ))}
          </span>,
        ],
      }))}
    />
  );
}

/** Fragment: what can be done with each of them. */
export function BesideAsks({
  beside,
  csrfToken,
}: {
  beside: readonly Pick<BesideView, "address" | "name">[];
  csrfToken: string;
}) {
  const t = useTell();
  return (
    <>
      {beside.map(({ address, name }) => (
        <form key={address} method="post" action="/balances/beside/take" class="row">
          <Csrf token={csrfToken} />
          <input type="hidden" name="port" value={address} />
          <button type="submit">{t("beside.take", { balance: name })}</button>
          <button type="submit" class="plain" formAction="/balances/beside/end">
            {t("beside.end", { balance: name })}
          </button>
        </form>
      ))}
    </>
  );
}
