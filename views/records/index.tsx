import { Field, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { type StateName, StateWord, stateNames } from "../result.tsx";
import { Rows } from "../sheet.tsx";

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
              label={t("records.search")}
              hint={t("records.search-hint")}
              value={filters.q}
              shortcut="/"
            />
            <Field
              name="mass"
              label={t("records.mass")}
              hint={t("records.mass-hint")}
              value={filters.mass}
              maxLength={40}
            />
          </div>
          <div class="row">
            <Select
              name="state"
              label={t("records.finding")}
              empty={t("records.any-state")}
              value={filters.state}
              options={stateNames.map((value) => ({ value, label: t(`state.${value}`) }))}
            />
            <Select
              name="claim"
              label={t("records.claim")}
              empty={t("records.any-claim")}
              value={filters.claim}
              options={claims.map(({ id, name }) => ({ value: id, label: name }))}
            />
            <Select
              name="photo"
              label={t("records.photo")}
              empty={t("records.any-photo")}
              value={filters.photo}
              options={[
                { value: "with", label: t("records.with-photo") },
                { value: "without", label: t("records.without-photo") },
              ]}
            />
            <Field kind="date" name="from" label={t("records.from")} value={filters.from} />
            <Field kind="date" name="to" label={t("records.until")} value={filters.to} />
            <button type="submit">{t("records.search")}</button>
            <a class="button plain" href="/records">
              {t("records.clear")}
            </a>
          </div>
        </form>
      </search>
      <FoundRecords {...page} />
      <p class="not-printed">
        <a href="/records/statistics">{t("statistics.title")}</a>
      </p>
      <p class="not-printed">
        {t("records.take-out")} <a href="/records.csv">{t("records.csv")}</a>,{" "}
        <a href="/records.parquet">{t("records.parquet")}</a>,{" "}
        <a href="/records.jsonl">{t("records.jsonl")}</a> (
        <a href="/records-schema.json">{t("records.schema")}</a>). {t("records.one-file")}
      </p>
    </>
  );
}

/** The part of the list that a search replaces. */
export function FoundRecords(page: RecordsPage) {
  const { rows, found, all, countedTo, narrowed, massUnread, next, previous } = page;
  const t = useTell();
  const counted = (count: number, floor?: boolean) =>
    floor ? t("records.more-than", { count }) : `${count}`;
  return (
    <div id="found">
      <p role="status">
        {narrowed
          ? t("records.count-of", {
              found: counted(found, countedTo?.found),
              all: counted(all, countedTo?.all),
            })
          : t("records.count", { all: counted(all, countedTo?.all) })}
        {rows.length < found && `, ${t("records.shown", { count: rows.length })}`}
        {massUnread !== undefined && (
          <>
            <br />
            <strong>{t("records.mass-unread", { typed: massUnread })}</strong>
          </>
        )}
      </p>
      <Rows
        caption={t("records.caption")}
        empty={t("records.empty")}
        columns={[
          { head: t("records.ticket") },
          { head: t("records.when") },
          { head: t("records.piece") },
          { head: t("records.dry"), number: true },
          { head: t("records.density"), number: true },
          { head: t("records.claim") },
          { head: t("records.finding") },
        ]}
        rows={rows.map((row) => ({
          key: row.id,
          voided: row.since === "voided",
          cells: [
            <a key="a" class="ticket" href={`/records/${row.id}`}>
              {row.ticket || t("records.unnamed", { id: row.id })}
            </a>,
            row.when,
            <span key="p">
              {row.piece}
              {row.broughtBy !== undefined && (
                <>
                  {row.piece !== "" && <br />}
                  <small>{t("records.brought-by", { who: row.broughtBy })}</small>
                </>
              )}
              {row.photos > 0 && <small class="tag">{t("records.photos", { count: row.photos })}</small>}
            </span>,
            row.mass,
            row.density,
            row.claimName,
            <span key="s">
              {row.state && <StateWord state={row.state} />}
              {row.since && <span class="tag">{t(`records.since.${row.since}`)}</span>}
            </span>,
          ],
        }))}
      />
      {(previous ?? next) !== undefined && (
        <nav aria-label={t("records.pages")} class="row">
          {previous !== undefined && (
            <a href={previous} rel="prev">
              {t("records.newer")}
            </a>
          )}
          {next !== undefined && (
            <a href={next} rel="next">
              {t("records.older")}
            </a>
          )}
        </nav>
      )}
    </div>
  );
}
