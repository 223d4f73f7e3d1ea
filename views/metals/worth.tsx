import { Csrf, errorsOf, Field, type FieldProblem, Problems, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import type { OccurrenceName } from "../result.tsx";
import { Fold, Rows } from "../sheet.tsx";

/** How often the owner says a metal is met. */
export type LikelihoodName = "common" | "possible" | "rare";

export interface WorthPage {
  /** worth of a gram by element, in units of a base metal; `own` where it is the owner's figure */
  worths: readonly { symbol: string; name: string; value: string; own: boolean }[];
  /** of a thousand pieces offered as one metal, so many are something else of this occurrence */
  inThousand: readonly { occurrence: OccurrenceName; value: string; own: boolean }[];
  /** metals by how often they are met */
  met: readonly {
    likelihood: LikelihoodName;
    metals: readonly { id: string; name: string; worth: string; own: boolean }[];
  }[];
  values: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
  kept: boolean;
  csrfToken: string;
}

/** What a gram is worth, how often something else is met, and which metals are met how often: read and changed here. */
export function WorthTablePage(page: WorthPage) {
  const { problems, kept, csrfToken, worths, inThousand, met } = page;
  const t = useTell();
  return (
    <>
      <Problems heading={t("worth.problems")} problems={problems} />
      {kept && <p role="status">{t("worth.kept")}</p>}
      <p>{t("worth.lead")}</p>
      <form method="post" action="/worth" class="two">
        <Csrf token={csrfToken} />
        <div>
          <h2>{t("worth.of-a-gram")}</h2>
          <p class="hint">{t("worth.base-is-one")}</p>
          {worths.map(({ symbol, name, value, own }) => (
            <Figure key={symbol} page={page} name={`worth-${symbol}`} label={name} value={value} own={own} />
          ))}
          <button type="submit">{t("worth.keep")}</button>
        </div>
        <div>
          <h2>{t("worth.in-thousand")}</h2>
          <p class="hint">{t("worth.in-thousand-hint")}</p>
          {inThousand.map(({ occurrence, value, own }) => (
            <Figure
              key={occurrence}
              page={page}
              name={`offered-${occurrence}`}
              label={t(`result.occurrence.${occurrence}`)}
              value={value}
              own={own}
            />
          ))}
        </div>
      </form>
      <h2>{t("worth.met")}</h2>
      <Occurrence page={page} />
      <Met met={met} />
    </>
  );
}

/** The metals by how often they are met. */
function Met({ met }: Pick<WorthPage, "met">) {
  const t = useTell();
  return (
    <>
      {met.map(({ likelihood, metals }) => (
        <Fold key={likelihood} title={t(`metal-page.likelihoods.${likelihood}`)} note={metals.length}>
          <Rows
            caption={t("worth.met-caption")}
            empty={t("worth.met-none")}
            columns={[
              { head: t("metals.metal") },
              { head: t("worth.per-gram"), number: true },
              { head: t("metals.source") },
            ]}
            rows={metals.map(({ id, name, worth, own }) => ({
              key: id,
              cells: [
                <a key="a" href={`/metals/${id}`}>
                  {name}
                </a>,
                worth,
                t(own ? "metal.from.stated" : "metal.from.from-memory"),
              ],
            }))}
          />
        </Fold>
      ))}
    </>
  );
}

function Figure({
  page: { values, problems },
  name,
  label,
  value,
  own,
}: {
  page: WorthPage;
  name: string;
  label: string;
  value: string;
  own: boolean;
}) {
  const t = useTell();
  return (
    <Field
      kind="decimal"
      name={name}
      label={label}
      value={values[name] ?? value}
      after={t(own ? "metal.from.stated" : "metal.from.from-memory")}
      {...errorsOf(problems)(name)}
    />
  );
}

/** One metal told to be met more or less often than the library says. */
function Occurrence({ page: { met, values, csrfToken } }: { page: WorthPage }) {
  const t = useTell();
  const all = met.flatMap(({ metals }) => metals).sort((a, b) => a.name.localeCompare(b.name));
  return (
    <form method="post" action="/worth/occurrence" class="row">
      <Csrf token={csrfToken} />
      <Select
        name="metal"
        label={t("metals.metal")}
        value={values.metal ?? ""}
        empty={t("specifications.choose")}
        options={all.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <Select
        name="likelihood"
        label={t("own-metals.met")}
        value={values.likelihood ?? "common"}
        options={met.map(({ likelihood }) => ({
          value: likelihood,
          label: t(`metal-page.likelihoods.${likelihood}`),
        }))}
      />
      <button type="submit">{t("worth.keep-occurrence")}</button>
    </form>
  );
}
