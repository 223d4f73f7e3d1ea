import { TakeOver } from "../forms/take-over.tsx";
import { Csrf, errorsOf, Field, type FieldProblem, Problems, Select, TextArea } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Rows, Sheet } from "../sheet.tsx";

/** Colours of the clean metal. */
export type ColourName =
  | "white"
  | "grey"
  | "yellow"
  | "greenish-yellow"
  | "reddish-yellow"
  | "pink"
  | "red"
  | "reddish-grey";

export interface OwnMetalsPage {
  libraryVersion: string;
  metals: readonly { id: string; name: string; band: string; source: string }[];
  /** what looks odd without being wrong */
  warnings: readonly Sentence[];
  problems: readonly FieldProblem[];
  /** entries as typed, while they are refused */
  typed: Readonly<Record<string, string>>;
  kept: boolean;
  /** colours to choose from, by their ids */
  colours: readonly ColourName[];
  csrfToken: string;
}

/** The owner's own metals: what is held, one more by form, all of them as a file. */
export function OwnMetalsPage(page: OwnMetalsPage) {
  const { warnings: doubts, problems, libraryVersion } = page;
  const t = useTell();
  return (
    <>
      <Problems heading={t("own-metals.problems")} problems={problems} />
      {page.kept && (
        <p role="status">
          <strong>{t("own-metals.kept", { version: libraryVersion })}</strong>
        </p>
      )}
      <p>{t("own-metals.lead")}</p>
      <Held {...page} />
      {doubts.length > 0 && (
        <Sheet id="doubts" title={t("own-metals.doubts")}>
          <ul>
            {doubts.map((one) => (
              <li key={JSON.stringify(one)}>
                <Sentence message={one} />
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      <AddForm {...page} />
      <AsFile {...page} />
    </>
  );
}

function Held({ metals, libraryVersion, csrfToken }: OwnMetalsPage) {
  const t = useTell();
  return (
    <Rows
      caption={t("own-metals.caption", { version: libraryVersion })}
      empty={t("own-metals.empty")}
      columns={[
        { head: t("metals.metal") },
        { head: "g/cm³", number: true },
        { head: t("metals.source") },
        { head: "" },
      ]}
      rows={metals.map(({ id, name, band, source }) => ({
        key: id,
        cells: [
          <a key="a" href={`/metals/${id}`}>
            {name}
          </a>,
          band,
          source,
          <form key="f" method="post" action={`/metals/own/${id}/removal`}>
            <Csrf token={csrfToken} />
            <button type="submit" class="plain" aria-label={t("own-metals.take-out-named", { name })}>
              {t("own-metals.take-out")}
            </button>
          </form>,
        ],
      }))}
    />
  );
}

function AsFile({ problems, typed, csrfToken }: OwnMetalsPage) {
  const t = useTell();
  return (
    <Sheet id="file" title={t("own-metals.file")}>
      <p>
        <a href="/metals/own.json" download>
          {t("own-metals.download")}
        </a>
      </p>
      <TakeOver
        action="/metals/own/import"
        csrfToken={csrfToken}
        words={{
          choose: t("own-metals.take-over-json"),
          paste: t("own-metals.take-over-pasted"),
          hint: t("own-metals.take-over-hint"),
          takeOver: t("own-metals.take-over"),
        }}
        pasted={typed.file ?? ""}
        {...fileError(problems)}
      />
    </Sheet>
  );
}

function fileError(problems: OwnMetalsPage["problems"]): { error?: Sentence } {
  const error = problems.find(({ fieldId }) => fieldId === "json-file")?.error;
  return error === undefined ? {} : { error };
}

function AddForm(page: OwnMetalsPage) {
  const t = useTell();
  const fields = fieldsOf(page);
  return (
    <form method="post" action="/metals/own" class="sheet">
      <h2>{t("own-metals.one-more")}</h2>
      <Csrf token={page.csrfToken} />
      <div class="columns">
        <NameAndBand {...fields} />
        <OtherFigures {...fields} typed={page.typed} colours={page.colours} />
      </div>
      <button type="submit">{t("own-metals.add")}</button>
    </form>
  );
}

/** Fields that hold what was typed and say what was refused of it. */
function fieldsOf({ problems, typed }: Pick<OwnMetalsPage, "problems" | "typed">) {
  const refused = errorsOf(problems);
  const errorOf = (name: string) => ({ value: typed[name] ?? "", ...refused(name) });
  const number = (name: string, label: string, after: string, hint?: string, required = false) => (
    <Field
      kind="decimal"
      name={name}
      label={label}
      after={after}
      required={required}
      {...(hint === undefined ? {} : { hint })}
      {...errorOf(name)}
    />
  );
  return { errorOf, number };
}

type Fields = ReturnType<typeof fieldsOf>;

/** What every metal has: a name, what it holds, a band with a width, where it is from. */
function NameAndBand({ errorOf, number }: Fields) {
  const t = useTell();
  return (
    <div>
      <Field name="name" label={t("own-metals.name")} required maxLength={80} {...errorOf("name")} />
      <TextArea
        name="composition"
        label={t("own-metals.composition")}
        hint={t("own-metals.composition-hint")}
        required
        {...errorOf("composition")}
      />
      {number("nominal", t("own-metals.nominal"), "g/cm³", undefined, true)}
      {number("low", t("own-metals.low"), "g/cm³", t("own-metals.empty-usual"), true)}
      {number("high", t("own-metals.high"), "g/cm³", t("own-metals.empty-usual"), true)}
      <Field
        name="source"
        label={t("own-metals.source")}
        hint={t("own-metals.source-hint")}
        required
        maxLength={400}
        {...errorOf("source")}
      />
    </div>
  );
}

/** What other tests would show of it. */
function OtherFigures({
  errorOf,
  number,
  typed,
  colours,
}: Fields & Pick<OwnMetalsPage, "typed" | "colours">) {
  const t = useTell();
  return (
    <div>
      <Select
        name="magnetism"
        label={t("own-metals.magnet")}
        value={typed.magnetism ?? "none"}
        options={[
          { value: "none", label: t("metal-page.magnets.none") },
          { value: "weak", label: t("own-metals.weak") },
          { value: "strong", label: t("metal-page.magnets.strong") },
        ]}
      />
      <Select
        name="colour"
        label={t("own-metals.colour")}
        value={typed.colour ?? "white"}
        options={colours.map((value) => ({ value, label: t(`metal-page.colours.${value}`) }))}
      />
      <Select
        name="likelihood"
        label={t("own-metals.met")}
        value={typed.likelihood ?? "common"}
        options={[
          { value: "common", label: t("metal-page.likelihoods.common") },
          { value: "possible", label: t("metal-page.likelihoods.possible") },
          { value: "rare", label: t("metal-page.likelihoods.rare") },
        ]}
      />
      {number("conductivityLow", t("own-metals.conductivity-from"), "% IACS", t("own-metals.empty-unknown"))}
      {number("conductivityHigh", t("own-metals.conductivity-to"), "% IACS")}
      {number("sound", t("own-metals.sound"), "m/s", t("own-metals.empty-unknown"))}
      {number("expansion", t("own-metals.expansion"), "10⁻⁶/K", t("own-metals.empty-unknown"))}
      <Field name="notes" label={t("own-metals.notes")} maxLength={400} {...errorOf("notes")} />
    </div>
  );
}
