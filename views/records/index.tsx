import { FindingState, type FindingStateName } from "../finding.tsx";
import { Field, Select } from "../forms.tsx";
import { Rows } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

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
  /** set where counting stopped: there are more */
  countedTo?: { found: boolean; all: boolean };
  /** address of the next page; left out on the last */
  next?: string;
  previous?: string;
}

/** The list of records: search as one types, filters in the address, works without scripts by its button. */
export function RecordsIndex(page: RecordsPage) {
  const { filters, claims } = page;
  const { records: say, findings } = useWords();
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
            scan
            label={say.search}
            hint={say.searchHint}
            value={filters.q}
            shortcut="/"
          />
          <div class="row">
            <Select
              name="state"
              label={say.finding}
              empty={say.anyState}
              value={filters.state}
              options={Object.entries(findings).map(([value, label]) => ({ value, label }))}
            />
            <Select
              name="claim"
              label={say.claim}
              empty={say.anyClaim}
              value={filters.claim}
              options={claims.map(({ id, name }) => ({ value: id, label: name }))}
            />
            <Field kind="date" name="from" label={say.from} value={filters.from} />
            <Field kind="date" name="to" label={say.until} value={filters.to} />
            <button type="submit">{say.search}</button>
            <a class="button plain" href="/records">
              {say.clear}
            </a>
          </div>
        </form>
      </search>
      <FoundRecords {...page} />
      <p class="not-printed">
        {say.takeOut} <a href="/records.csv">{say.csv}</a>, <a href="/records.jsonl">{say.jsonl}</a> (
        <a href="/records-schema.json">{say.schema}</a>). {say.oneFile}
      </p>
    </>
  );
}

/** The part of the list that a search replaces. */
export function FoundRecords({ rows, found, all, countedTo, next, previous }: RecordsPage) {
  const say = useWords().records;
  return (
    <div id="found">
      <p role="status">
        {say.count(
          countedTo?.found ? say.moreThan(found) : `${found}`,
          countedTo?.all ? say.moreThan(all) : `${all}`,
        )}
        {rows.length < found && `, ${say.shown(rows.length)}`}
      </p>
      <Rows
        caption={say.caption}
        empty={say.empty}
        columns={[
          { head: say.ticket },
          { head: say.when },
          { head: say.piece },
          { head: say.dry, number: true },
          { head: say.density, number: true },
          { head: say.claim },
          { head: say.finding },
        ]}
        rows={rows.map((row) => ({
          key: row.id,
          voided: row.since === "voided",
          cells: [
            <a key="a" href={`/records/${row.id}`}>
              {row.ticket || say.unnamed(row.id)}
            </a>,
            row.when,
            row.piece,
            row.mass,
            row.density,
            row.claimName,
            <span key="s">
              {row.state && <FindingState state={row.state} />}
              {row.since && <span class="tag">{say.since[row.since]}</span>}
            </span>,
          ],
        }))}
      />
      {(previous ?? next) !== undefined && (
        <nav aria-label={say.pages} class="row">
          {previous !== undefined && (
            <a href={previous} rel="prev">
              {say.newer}
            </a>
          )}
          {next !== undefined && (
            <a href={next} rel="next">
              {say.older}
            </a>
          )}
        </nav>
      )}
    </div>
  );
}
