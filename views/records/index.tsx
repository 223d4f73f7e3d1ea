import { FindingState, type FindingStateName } from "../finding.tsx";
import { Field, Select } from "../forms.tsx";
import { Rows } from "../sheet.tsx";
import { type Locale, words } from "../words/index.ts";

/** One line of the list of records; all numbers already written out. */
export interface RecordRow {
  id: string;
  when: string;
  ticket: string;
  piece: string;
  /** "31.1035 g" */
  mass: string;
  /** "10.488 ± 0.014" */
  density: string;
  claimName: string;
  state?: FindingStateName;
  /** amended or voided later; the first entry stays readable */
  since?: "amended" | "voided";
}

/** What is asked for; the same names stand in the address, so that a search can be kept and sent on. */
export interface RecordFilters {
  q: string;
  state: string;
  claim: string;
  from: string;
  to: string;
}

export interface RecordsPage {
  filters: RecordFilters;
  claims: readonly { id: string; name: string }[];
  rows: readonly RecordRow[];
  /** how many fit the filters, over all pages */
  found: number;
  /** how many there are */
  all: number;
  /** address of the next page; left out on the last */
  next?: string;
  previous?: string;
  locale?: Locale;
}

/** The list of records: search as one types, filters in the address, works without scripts by its button. */
export function RecordsIndex(page: RecordsPage) {
  const { filters, claims, locale = "en" } = page;
  const say = words(locale);
  return (
    <>
      <search class="not-printed">
        <form
          method="get"
          action="/records"
          hx-get="/records"
          hx-trigger="input changed delay:250ms from:#q, change"
          hx-target="#found"
          hx-select="#found"
          hx-swap="outerHTML"
          hx-push-url="true"
          hx-sync="this:replace"
        >
          <Field
            kind="search"
            name="q"
            label="Search"
            hint="ticket, piece, note, photo name or part of a check sum"
            value={filters.q}
            shortcut="/"
          />
          <div class="row">
            <Select
              name="state"
              label="Finding"
              empty="any"
              value={filters.state}
              options={Object.entries(say.findings).map(([value, label]) => ({ value, label }))}
            />
            <Select
              name="claim"
              label="Said to be"
              empty="anything"
              value={filters.claim}
              options={claims.map(({ id, name }) => ({ value: id, label: name }))}
            />
            <Field kind="date" name="from" label="From" value={filters.from} />
            <Field kind="date" name="to" label="Until" value={filters.to} />
            <button type="submit">Search</button>
            <a class="button plain" href="/records">
              Clear
            </a>
          </div>
        </form>
      </search>
      <FoundRecords {...page} />
      <p class="not-printed">
        Take out: <a href="/records.csv">all records as CSV</a>,{" "}
        <a href="/records.jsonl">every entry as JSON Lines</a> (
        <a href="/records-schema.json">its JSON Schema</a>). One record as a file of its own is found on its
        page.
      </p>
    </>
  );
}

/** The part of the list that a search replaces. */
export function FoundRecords({ rows, found, all, next, previous, locale = "en" }: RecordsPage) {
  return (
    <div id="found">
      <p role="status">
        {found === all ? `${all} records` : `${found} of ${all} records`}
        {rows.length < found && `, ${rows.length} shown`}
      </p>
      <Rows
        caption="Records, newest first"
        empty="No record fits. Take a word out of the search, or clear the filters."
        columns={[
          { head: "Ticket" },
          { head: "When" },
          { head: "Piece" },
          { head: "Dry", number: true },
          { head: "Density, g/cm³", number: true },
          { head: "Said to be" },
          { head: "Finding" },
        ]}
        rows={rows.map((row) => ({
          key: row.id,
          voided: row.since === "voided",
          cells: [
            <a key="a" href={`/records/${row.id}`}>
              {row.ticket || `record ${row.id}`}
            </a>,
            row.when,
            row.piece,
            row.mass,
            row.density,
            row.claimName,
            <span key="s">
              {row.state && <FindingState state={row.state} locale={locale} />}
              {row.since && <span class="tag">{row.since}</span>}
            </span>,
          ],
        }))}
      />
      {(previous ?? next) !== undefined && (
        <nav aria-label="Pages of the list" class="row">
          {previous !== undefined && (
            <a href={previous} rel="prev">
              Newer
            </a>
          )}
          {next !== undefined && (
            <a href={next} rel="next">
              Older
            </a>
          )}
        </nav>
      )}
    </div>
  );
}
