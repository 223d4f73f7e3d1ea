import { type StateName, StateWord, stateNames } from "../finding.tsx";
import { Field, Select } from "../forms.tsx";
import { Rows } from "../sheet.tsx";
import { useTell, useWords } from "../words/spoken.ts";

/** One line of the list of records; all numbers already written out. */
export interface RecordRow {
  id: string;
  when: string;
  ticket: string;
  piece: string;
  /** "31.1035 g" */
  mass: string;
  /** who brought it, in the house's own words */
  broughtBy?: string;
  photos: number;
  /** "10.488 ± 0.014" */
  density: string;
  claimName: string;
  state?: StateName;
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
  /** what the balance showed dry: "31.1", "31.1 ± 0.2", "30 to 32", g */
  mass: string;
  /** "with", "without" or empty */
  photo: string;
}

export interface RecordsPage {
  filters: RecordFilters;
  claims: readonly { id: string; name: string }[];
  rows: readonly RecordRow[];
  /** how many fit the filters, over all pages */
  found: number;
  /** how many there are */
  all: number;
  /** something is asked for */
  narrowed: boolean;
  /** the mass as it was typed, when it could not be read and so narrows nothing */
  massUnread?: string;
  /** set where counting stopped: there are more */
  countedTo?: { found: boolean; all: boolean };
  /** address of the next page; left out on the last */
  next?: string;
  previous?: string;
}

/** The list of records: search as one types, filters in the address, works without scripts by its button. */
export function RecordsIndex(page: RecordsPage) {
  const { filters, claims } = page;
  const { records: say } = useWords();
  const t = useTell();
  return (
    <>
      <search class="not-printed">
        <form
          method="get"
          action="/records"
          hx-get="/records"
          hx-trigger="input changed delay:250ms from:#q, input changed delay:250ms from:#mass, change"
          hx-target="#found"
          hx-select="#found"
          hx-swap="outerHTML"
          hx-push-url="true"
          hx-sync="this:replace"
        >
          <div class="row">
            <Field
              kind="search"
              name="q"
              scan
              label={say.search}
              hint={say.searchHint}
              value={filters.q}
              shortcut="/"
            />
            <Field name="mass" label={say.mass} hint={say.massHint} value={filters.mass} maxLength={40} />
          </div>
          <div class="row">
            <Select
              name="state"
              label={say.finding}
              empty={say.anyState}
              value={filters.state}
              options={stateNames.map((value) => ({ value, label: t(`state.${value}`) }))}
            />
            <Select
              name="claim"
              label={say.claim}
              empty={say.anyClaim}
              value={filters.claim}
              options={claims.map(({ id, name }) => ({ value: id, label: name }))}
            />
            <Select
              name="photo"
              label={say.photo}
              empty={say.anyPhoto}
              value={filters.photo}
              options={[
                { value: "with", label: say.withPhoto },
                { value: "without", label: say.withoutPhoto },
              ]}
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
export function FoundRecords(page: RecordsPage) {
  const { rows, found, all, countedTo, narrowed, massUnread, next, previous } = page;
  const say = useWords().records;
  const counted = (count: number, floor?: boolean) => (floor ? say.moreThan(count) : `${count}`);
  return (
    <div id="found">
      <p role="status">
        {narrowed
          ? say.countOf(counted(found, countedTo?.found), counted(all, countedTo?.all))
          : say.count(counted(all, countedTo?.all))}
        {rows.length < found && `, ${say.shown(rows.length)}`}
        {massUnread !== undefined && (
          <>
            <br />
            <strong>{say.massUnread(massUnread)}</strong>
          </>
        )}
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
            <a key="a" class="ticket" href={`/records/${row.id}`}>
              {row.ticket || say.unnamed(row.id)}
            </a>,
            row.when,
            <span key="p">
              {row.piece}
              {row.broughtBy !== undefined && (
                <>
                  {row.piece !== "" && <br />}
                  <small>{say.broughtBy(row.broughtBy)}</small>
                </>
              )}
              {row.photos > 0 && <small class="tag">{say.photos(row.photos)}</small>}
            </span>,
            row.mass,
            row.density,
            row.claimName,
            <span key="s">
              {row.state && <StateWord state={row.state} />}
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
