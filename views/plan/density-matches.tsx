import { decimalEntries, type FieldProblem, Problems, RadioCards, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Rows, Sheet } from "../sheet.tsx";

export const outlines = ["none", "disc", "bar", "ring"] as const;
export type OutlineKind = (typeof outlines)[number];

/** The lengths that each outline is asked for, mm. */
export const lengthsOf = {
  none: [],
  disc: ["diameter", "thickness"],
  bar: ["length", "width", "height"],
  ring: ["outer", "inner", "ringWidth"],
} as const;
export type LengthName = (typeof lengthsOf)[OutlineKind][number];

/** One way to reach the density. */
export interface DensityMatchRow {
  id: string;
  kind: "single" | "mixture" | "core-and-skin";
  /** one metal, the two of a mixture, or core and skin */
  names: readonly [string] | readonly [string, string];
  /** share of the first of a mixture by mass, of the skin by volume; empty for one metal */
  share: string;
  /** thickness of the skin on the outline given */
  skinMm?: string;
  likelihood: "common" | "possible" | "rare";
  /** whether it is worth clearly less than what is claimed; left out without a claim */
  pays?: boolean;
  separatedBy?: Sentence;
}

export interface DensityMatchesView {
  values: Readonly<Record<"density" | "uDensity" | "claim" | "outline" | LengthName, string>>;
  claims: readonly { id: string; name: string }[];
  problems: readonly FieldProblem[];
  answer?: {
    interval: string;
    lists: readonly { kind: DensityMatchRow["kind"]; rows: readonly DensityMatchRow[]; more: number }[];
  };
}

/** Everything that reaches a density: single metals, mixtures of two, cores under skins; with the skin on one's own piece. */
export function DensityMatchesPage({ values, claims, problems, answer }: DensityMatchesView) {
  const t = useTell();
  const entry = decimalEntries(values, problems);
  return (
    <>
      <p>{t("density-matches.lead")}</p>
      <Problems heading={t("density-matches.problems")} problems={problems} />
      <form method="get" action="/plan/density-matches" class="sheet">
        <div class="row">
          {entry("density", t("density-matches.density"), "g/cm³")}
          {entry("uDensity", t("density-matches.standard-uncertainty"), "g/cm³")}
          <Select
            name="claim"
            label={t("density-matches.claim")}
            value={values.claim}
            empty={t("density-matches.no-claim")}
            options={claims.map(({ id, name }) => ({ value: id, label: name }))}
          />
        </div>
        <RadioCards
          name="outline"
          legend={t("density-matches.outline")}
          value={values.outline}
          cards={outlines.map((kind) => ({ value: kind, label: t(`density-matches.outlines.${kind}`) }))}
        />
        {outlines.map((kind) =>
          lengthsOf[kind].length === 0 ? null : (
            <fieldset key={kind}>
              <legend>{t(`density-matches.outlines.${kind}`)}</legend>
              <div class="row">
                {lengthsOf[kind].map((name) => entry(name, t(`density-matches.lengths.${name}`), "mm"))}
              </div>
            </fieldset>
          ),
        )}
        <button type="submit">{t("density-matches.show")}</button>
      </form>
      {answer && (
        <Sheet id="answer" title={t("density-matches.answer", { interval: answer.interval })}>
          {answer.lists.map((list) => (
            <DensityMatchList key={list.kind} {...list} />
          ))}
          <p class="hint">{t("density-matches.hint")}</p>
        </Sheet>
      )}
    </>
  );
}

function DensityMatchList({ kind, rows, more }: NonNullable<DensityMatchesView["answer"]>["lists"][number]) {
  const t = useTell();
  const named = ({ names: [one, other] }: DensityMatchRow) => {
    const [first, second] = [one, other ?? ""];
    if (other === undefined) return first;
    return kind === "mixture"
      ? t("density-matches.mixed", { first, second })
      : t("density-matches.under", { core: first, skin: second });
  };
  const skins = rows.some(({ skinMm }) => skinMm !== undefined);
  return (
    <>
      <Rows
        id={`reaching-${kind}`}
        caption={t(`density-matches.kinds.${kind}`)}
        empty={t(`density-matches.nothing.${kind}`)}
        columns={[
          { head: t("density-matches.what") },
          ...(kind === "single" ? [] : [{ head: t(`density-matches.shares.${kind}`) }]),
          ...(skins ? [{ head: t("density-matches.skin-mm"), number: true }] : []),
          { head: t("density-matches.met") },
          { head: t("density-matches.told-by") },
        ]}
        rows={rows.map((row) => ({
          key: row.id,
          cells: [
            <a key="a" href={`/metals/${row.id}`}>
              {named(row)}
            </a>,
            ...(kind === "single" ? [] : [row.share]),
            ...(skins ? [row.skinMm ?? ""] : []),
            `${t(`metal-page.likelihoods.${row.likelihood}`)}${row.pays === false ? `; ${t("density-matches.does-not-pay")}` : ""}`,
            row.separatedBy === undefined ? "" : <Sentence key="t" message={row.separatedBy} />,
          ],
        }))}
      />
      {more > 0 && <p>{t("density-matches.more", { count: more })}</p>}
    </>
  );
}
