import { Field, Select } from "../forms.tsx";
import { fixed } from "../numbers.ts";
import { DensityAxis } from "../plots/density.tsx";
import { Rows } from "../sheet.tsx";
import type { Locale } from "../words/index.ts";

export interface MetalRow {
  id: string;
  name: string;
  family: string;
  low: number;
  nominal: number;
  high: number;
  /** seen in the source named; false: not yet checked, or from memory */
  verified: boolean;
}

export interface MetalsPage {
  q: string;
  family: string;
  families: readonly { id: string; name: string }[];
  /** density to look up, as typed */
  density: string;
  rows: readonly MetalRow[];
  all: number;
  libraryVersion: string;
  /** why the density could not be read */
  densityProblem?: string;
  locale?: Locale;
}

/** The library: what each metal's recipe leaves free on the density axis. */
export function MetalsIndex(page: MetalsPage) {
  const { q, family, families, density } = page;
  return (
    <>
      <search class="not-printed">
        <form
          method="get"
          action="/metals"
          hx-get="/metals"
          hx-trigger="input changed delay:250ms, change"
          hx-target="#found"
          hx-select="#found"
          hx-swap="outerHTML"
          hx-push-url="true"
          hx-sync="this:replace"
        >
          <div class="row">
            <Field kind="search" name="q" label="Search" value={q} shortcut="/" />
            <Select
              name="family"
              label="Family"
              empty="all"
              value={family}
              options={families.map(({ id, name }) => ({ value: id, label: name }))}
            />
            <Field kind="decimal" name="density" label="Near a density" after="g/cm³" value={density} />
            <button type="submit">Search</button>
          </div>
        </form>
      </search>
      <FoundMetals {...page} />
    </>
  );
}

/** The part that a search replaces: axis and table of what was found. */
export function FoundMetals({ rows, all, libraryVersion, densityProblem, locale = "en" }: MetalsPage) {
  const onAxis = rows.slice(0, 24);
  return (
    <div id="found">
      {densityProblem !== undefined && <p class="problem">{densityProblem}</p>}
      <p role="status">{rows.length === all ? `${all} metals` : `${rows.length} of ${all} metals`}</p>
      {onAxis.length > 0 && (
        <div class="sheet">
          <DensityAxis
            id="library"
            caption={
              onAxis.length < rows.length
                ? `The first ${onAxis.length} on the density axis`
                : "On the density axis"
            }
            bands={onAxis.map(({ id, name, low, high }) => ({ id, name, low, high }))}
            locale={locale}
          />
        </div>
      )}
      <Rows
        caption="Metals by density, at 20 °C"
        empty="No metal fits. Take a word out of the search, or choose all families."
        columns={[
          { head: "Metal" },
          { head: "Family" },
          { head: "from", number: true },
          { head: "usual", number: true },
          { head: "to g/cm³", number: true },
          { head: "Source" },
        ]}
        rows={rows.map((row) => ({
          key: row.id,
          cells: [
            <a key="a" href={`/metals/${row.id}`}>
              {row.name}
            </a>,
            row.family,
            fixed(row.low, 3, locale),
            fixed(row.nominal, 3, locale),
            fixed(row.high, 3, locale),
            row.verified ? "seen in its source" : "from memory",
          ],
        }))}
      />
      <p class="hint">
        Library {libraryVersion}. A band is the freedom of composition and of the sources, not an uncertainty.
        Every record keeps the version it was judged by. <a href="/metals/own">Metals of your own</a>
      </p>
    </div>
  );
}
