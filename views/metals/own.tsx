import { colours } from "../../server/metals/metal.ts";
import { TakeOver } from "../forms/take-over.tsx";
import { Csrf, errorsOf, Field, type FieldError, Problems, Select, TextArea } from "../forms.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";

export interface OwnMetalsPage {
  libraryVersion: string;
  metals: readonly { id: string; name: string; band: string; source: string }[];
  /** what looks odd without being wrong */
  doubts: readonly string[];
  problems: readonly { fieldId: string; error: FieldError }[];
  /** entries as typed, while they are refused */
  typed: Readonly<Record<string, string>>;
  kept: boolean;
  csrfToken: string;
}

/** The owner's own metals: what is held, one more by form, all of them as a file. */
export function OwnMetalsPage(page: OwnMetalsPage) {
  const { metals, doubts, problems, csrfToken, libraryVersion } = page;
  const { ownMetals: say, metals: list } = useWords();
  return (
    <>
      <Problems heading={say.problems} problems={problems} />
      {page.kept && (
        <p role="status">
          <strong>{say.kept(libraryVersion)}</strong>
        </p>
      )}
      <p>{say.lead}</p>
      <Rows
        caption={say.caption(libraryVersion)}
        empty={say.empty}
        columns={[{ head: list.metal }, { head: "g/cm³", number: true }, { head: list.source }, { head: "" }]}
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
              <button type="submit" class="plain" aria-label={say.takeOutNamed(name)}>
                {say.takeOut}
              </button>
            </form>,
          ],
        }))}
      />
      {doubts.length > 0 && (
        <Sheet id="doubts" title={say.doubts}>
          <ul>
            {doubts.map((one) => (
              <li key={one}>
                <Told says={one} />
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      <AddForm {...page} />
      <Sheet id="file" title={say.file}>
        <p>
          <a href="/metals/own.json" download>
            {say.download}
          </a>
        </p>
        <TakeOver
          action="/metals/own/import"
          csrfToken={csrfToken}
          words={{
            choose: say.takeOverJson,
            paste: say.takeOverPasted,
            hint: say.takeOverHint,
            takeOver: say.takeOver,
          }}
          pasted={page.typed.file ?? ""}
          {...fileError(problems)}
        />
      </Sheet>
    </>
  );
}

function fileError(problems: OwnMetalsPage["problems"]): { error?: FieldError } {
  const error = problems.find(({ fieldId }) => fieldId === "json-file")?.error;
  return error === undefined ? {} : { error };
}

function AddForm({ problems, typed, csrfToken }: OwnMetalsPage) {
  const { ownMetals: say, metal } = useWords();
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
  return (
    <form method="post" action="/metals/own" class="sheet">
      <h2>{say.oneMore}</h2>
      <Csrf token={csrfToken} />
      <div class="columns">
        <div>
          <Field name="name" label={say.name} required maxLength={80} {...errorOf("name")} />
          <TextArea
            name="composition"
            label={say.composition}
            hint={say.compositionHint}
            required
            {...errorOf("composition")}
          />
          {number("nominal", say.nominal, "g/cm³", undefined, true)}
          {number("low", say.low, "g/cm³", say.emptyUsual)}
          {number("high", say.high, "g/cm³", say.emptyUsual)}
          <Field
            name="source"
            label={say.source}
            hint={say.sourceHint}
            required
            maxLength={400}
            {...errorOf("source")}
          />
        </div>
        <div>
          <Select
            name="magnetism"
            label={say.magnet}
            value={typed.magnetism ?? "none"}
            options={[
              { value: "none", label: metal.magnets.none },
              { value: "weak", label: say.weak },
              { value: "strong", label: metal.magnets.strong },
            ]}
          />
          <Select
            name="colour"
            label={say.colour}
            value={typed.colour ?? "white"}
            options={colours.map((value) => ({ value, label: metal.colours[value] ?? value }))}
          />
          <Select
            name="likelihood"
            label={say.met}
            value={typed.likelihood ?? "common"}
            options={[
              { value: "common", label: metal.likelihoods.common },
              { value: "possible", label: metal.likelihoods.possible },
              { value: "rare", label: metal.likelihoods.rare },
            ]}
          />
          {number("conductivityLow", say.conductivityFrom, "% IACS", say.emptyUnknown)}
          {number("conductivityHigh", say.conductivityTo, "% IACS")}
          {number("sound", say.sound, "m/s", say.emptyUnknown)}
          {number("expansion", say.expansion, "10⁻⁶/K", say.emptyUnknown)}
          <Field name="notes" label={say.notes} maxLength={400} {...errorOf("notes")} />
        </div>
      </div>
      <button type="submit">{say.add}</button>
    </form>
  );
}
