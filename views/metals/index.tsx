import { Field, Select } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { fixed } from "../numbers.ts";
import { DensityAxis } from "../plots/density.tsx";
import { Sentence } from "../sentence.tsx";
import { Rows } from "../sheet.tsx";

/** Where a figure comes from: a source, a rule, memory, or the owner. */
export type ProvenanceKind = "seen" | "computed" | "from-memory" | "stated";

export interface MetalRow {
  id: string;
  name: string;
  family: string;
  low: number;
  nominal: number;
  high: number;
  /** where the usual density comes from */
  from: ProvenanceKind;
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
  densityProblem?: Sentence;
}

/** The library: what each metal's recipe leaves free on the density axis. */
export function MetalsIndex(page: MetalsPage) {
  const { q, family, families, density } = page;
  const t = useTell();
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
            <Field kind="search" name="q" label={t("metals.search")} value={q} shortcut="/" />
            <Select
              name="family"
              label={t("metals.family")}
              empty={t("metals.all-families")}
              value={family}
              options={families.map(({ id, name }) => ({ value: id, label: name }))}
            />
            <Field
              kind="decimal"
              name="density"
              label={t("metals.near-density")}
              after="g/cm³"
              value={density}
            />
            <button type="submit">{t("metals.search")}</button>
          </div>
        </form>
      </search>
      <FoundMetals {...page} />
    </>
  );
}

/** So many are shown at once; of more, each family opens on demand, so that a phone is not buried in them. */
const shownAtOnce = 24;

/** The part that a search replaces: axis and table of what was found. */
export function FoundMetals({ rows, all, libraryVersion, densityProblem }: MetalsPage) {
  const t = useTell();
  const grouped = familiesOf(rows);
  const families = rows.length > shownAtOnce && grouped.length > 1 ? grouped : undefined;
  return (
    <div id="found">
      {densityProblem !== undefined && (
        <p class="problem">
          <Sentence message={densityProblem} />
        </p>
      )}
      <p role="status">
        {rows.length === all ? t("metals.count", { all }) : t("metals.count-of", { found: rows.length, all })}
      </p>
      {rows.length > 0 && (
        <div class="sheet">
          <DensityAxis
            id="library"
            caption={families ? t("metals.families-on-axis") : t("metals.on-axis")}
            bands={(families ?? rows).map(({ id, name, low, high }) => ({ id, name, low, high }))}
          />
        </div>
      )}
      {families?.map((family) => <Family key={family.id} {...family} />) ?? (
        <Listed caption={t("metals.caption")} rows={rows} />
      )}
      <p class="hint">
        {t("metals.library", { version: libraryVersion })} <a href="/metals/own">{t("metals.own")}</a>{" "}
        <a href="/worth">{t("worth.title")}</a>
      </p>
    </div>
  );
}

interface FamilyRows {
  id: string;
  name: string;
  low: number;
  high: number;
  rows: readonly MetalRow[];
}

/** The families of the rows in the order of the rows, each with the span of its bands. */
function familiesOf(rows: readonly MetalRow[]): FamilyRows[] {
  return [...new Set(rows.map(({ family }) => family))].map((name) => {
    const own = rows.filter(({ family }) => family === name);
    const low = Math.min(...own.map((row) => row.low));
    const high = Math.max(...own.map((row) => row.high));
    return { id: `family-${own[0]!.id}`, name, low, high, rows: own };
  });
}

function Family({ name, low, high, rows }: FamilyRows) {
  const locale = useLocale();
  const t = useTell();
  return (
    <details class="family">
      <summary>
        {t("metals.in-family", {
          name,
          count: rows.length,
          low: fixed(low, 2, locale),
          high: fixed(high, 2, locale),
        })}
      </summary>
      <Listed caption={`${t("metals.caption")}: ${name}`} rows={rows} />
    </details>
  );
}

function Listed({ caption, rows }: { caption: string; rows: readonly MetalRow[] }) {
  const locale = useLocale();
  const t = useTell();
  return (
    <Rows
      caption={caption}
      empty={t("metals.empty")}
      columns={[
        { head: t("metals.metal") },
        { head: t("metals.family") },
        { head: t("metals.from"), number: true },
        { head: t("metals.usual"), number: true },
        { head: t("metals.to"), number: true },
        { head: t("metals.source") },
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
          t(`metal.from.${row.from}`),
        ],
      }))}
    />
  );
}
