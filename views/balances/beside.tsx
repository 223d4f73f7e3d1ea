import { Csrf } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { Rows } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { toldValue } from "../words/told.ts";

/** A balance that is open although the bench takes from another one. */
export interface BesideView {
  address: string;
  name: string;
  /** heard, silent, refused, gone … */
  state: string;
  /** the same as a whole sentence */
  says: string;
  doubts: readonly { kind: string; says: string }[];
}

/** Fragment: every balance beside the one in use in words; renewed with every line, so nothing in it can be pressed. */
export function BesideNow({ beside }: { beside: readonly BesideView[] }) {
  const locale = useLocale();
  const t = useTell();
  if (beside.length === 0) return <p class="hint">{t("beside.none")}</p>;
  return (
    <Rows
      caption={t("beside.caption")}
      empty={t("beside.none")}
      columns={[{ head: t("beside.balance") }, { head: t("beside.now") }, { head: t("beside.in-words") }]}
      rows={beside.map(({ address, name, state, says, doubts }) => ({
        key: address,
        cells: [
          toldValue(name, locale),
          <strong key="s">{state}</strong>,
          <span key="w">
            <Told says={says} />
            {doubts.map((doubt) => (
              <small key={doubt.kind}>
                {" "}
                <Told says={doubt.says} />
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
  const locale = useLocale();
  const t = useTell();
  return (
    <>
      {beside.map(({ address, name }) => (
        <form key={address} method="post" action="/balances/beside/take" class="row">
          <Csrf token={csrfToken} />
          <input type="hidden" name="port" value={address} />
          <button type="submit">{t("beside.take", { balance: toldValue(name, locale) })}</button>
          <button type="submit" class="plain" formAction="/balances/beside/end">
            {t("beside.end", { balance: toldValue(name, locale) })}
          </button>
        </form>
      ))}
    </>
  );
}
