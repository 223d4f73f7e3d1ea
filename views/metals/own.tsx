import { Csrf, Field, type FieldError, Problems, Select, TextArea } from "../forms.tsx";
import { Rows, Sheet } from "../sheet.tsx";

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

const colours = [
  "white",
  "grey",
  "yellow",
  "greenish-yellow",
  "reddish-yellow",
  "pink",
  "red",
  "reddish-grey",
];
const asOptions = (values: readonly string[]) => values.map((value) => ({ value, label: value }));

/** The owner's own metals: what is held, one more by form, all of them as a file. */
export function OwnMetalsPage(page: OwnMetalsPage) {
  const { metals, doubts, problems, csrfToken, libraryVersion } = page;
  return (
    <>
      <Problems heading="Nothing was taken over; these entries need another look" problems={problems} />
      {page.kept && (
        <p role="status">
          <strong>Kept. Findings use library {libraryVersion} from now on.</strong>
        </p>
      )}
      <p>
        Metals of your own stand beside those of the library in every finding. Each change is a new version,
        and every record keeps the version it was judged by.
      </p>
      <Rows
        caption={`Your own metals, library ${libraryVersion}`}
        empty="No metal of your own yet."
        columns={[{ head: "Metal" }, { head: "g/cm³", number: true }, { head: "Source" }, { head: "" }]}
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
              <button type="submit" class="plain" aria-label={`Take ${name} out`}>
                Take out
              </button>
            </form>,
          ],
        }))}
      />
      {doubts.length > 0 && (
        <Sheet id="doubts" title="Look again at these">
          <ul>
            {doubts.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </Sheet>
      )}
      <AddForm {...page} />
      <Sheet id="file" title="As a file">
        <p>
          <a href="/metals/own.json" download>
            All of them as JSON
          </a>
        </p>
        <form method="post" action="/metals/own/import">
          <Csrf token={csrfToken} />
          <TextArea
            name="file"
            label="Take over from JSON"
            hint="the whole text of such a file; its version must be higher than the one held here"
            rows={6}
            required
            value={page.typed.file ?? ""}
          />
          <button type="submit">Take over</button>
        </form>
      </Sheet>
    </>
  );
}

function AddForm({ problems, typed, csrfToken }: OwnMetalsPage) {
  const errorOf = (name: string) => {
    const error = problems.find((one) => one.fieldId === name)?.error;
    return { value: typed[name] ?? "", ...(error === undefined ? {} : { error }) };
  };
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
      <h2>One more</h2>
      <Csrf token={csrfToken} />
      <div class="columns">
        <div>
          <Field name="name" label="Name" required maxLength={80} {...errorOf("name")} />
          <TextArea
            name="composition"
            label="Composition"
            hint="one component a line, percent of the mass: Ag 92.5, or with limits Ag 92.5 92.4-93"
            required
            {...errorOf("composition")}
          />
          {number("nominal", "Usual density at 20 °C", "g/cm³", undefined, true)}
          {number("low", "Lowest density", "g/cm³", "empty: the usual one")}
          {number("high", "Highest density", "g/cm³", "empty: the usual one")}
          <Field
            name="source"
            label="Where this comes from"
            hint="a standard, a data sheet, your own weighings"
            required
            maxLength={400}
            {...errorOf("source")}
          />
        </div>
        <div>
          <Select
            name="magnetism"
            label="Magnet"
            value={typed.magnetism ?? "none"}
            options={[
              { value: "none", label: "not pulled" },
              { value: "weak", label: "a hung piece may drift" },
              { value: "strong", label: "pulled" },
            ]}
          />
          <Select name="colour" label="Colour" value={typed.colour ?? "white"} options={asOptions(colours)} />
          <Select
            name="likelihood"
            label="Met here"
            value={typed.likelihood ?? "common"}
            options={[
              { value: "common", label: "often" },
              { value: "possible", label: "now and then" },
              { value: "rare", label: "hardly ever" },
            ]}
          />
          {number("conductivityLow", "Conductivity from", "% IACS", "empty: not known")}
          {number("conductivityHigh", "Conductivity to", "% IACS")}
          {number("sound", "Speed of sound, longitudinal", "m/s", "empty: not known")}
          {number("expansion", "Expansion in length", "10⁻⁶/K", "empty: not known")}
          <Field name="notes" label="Notes" maxLength={400} {...errorOf("notes")} />
        </div>
      </div>
      <button type="submit">Add to the library</button>
    </form>
  );
}
