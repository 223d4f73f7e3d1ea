import { decimalEntries, type FieldError, Problems, RadioCards, Select } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { toldValue } from "../words/told.ts";

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
export interface ReachingRow {
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
  separatedBy?: string;
}

export interface ReachingView {
  values: Readonly<Record<"density" | "uDensity" | "claim" | "outline" | LengthName, string>>;
  claims: readonly { id: string; name: string }[];
  problems: readonly { fieldId: string; error: FieldError }[];
  answer?: {
    interval: string;
    lists: readonly { kind: ReachingRow["kind"]; rows: readonly ReachingRow[]; more: number }[];
  };
}

/** Everything that reaches a density: single metals, mixtures of two, cores under skins; with the skin on one's own piece. */
export function ReachingPage({ values, claims, problems, answer }: ReachingView) {
  const locale = useLocale();
  const t = useTell();
  const entry = decimalEntries(values, problems);
  return (
    <>
      <p>{t("reaching.lead")}</p>
      <Problems heading={t("reaching.problems")} problems={problems} />
      <form method="get" action="/plan/reaching" class="sheet">
        <div class="row">
          {entry("density", t("reaching.density"), "g/cm³")}
          {entry("uDensity", t("reaching.standard-uncertainty"), "g/cm³")}
          <Select
            name="claim"
            label={t("reaching.claim")}
            value={values.claim}
            empty={t("reaching.no-claim")}
            options={claims.map(({ id, name }) => ({ value: id, label: toldValue(name, locale) }))}
          />
        </div>
        <RadioCards
          name="outline"
          legend={t("reaching.outline")}
          value={values.outline}
          cards={outlines.map((kind) => ({ value: kind, label: t(`reaching.outlines.${kind}`) }))}
        />
        {outlines.map((kind) =>
          lengthsOf[kind].length === 0 ? null : (
            <fieldset key={kind}>
              <legend>{t(`reaching.outlines.${kind}`)}</legend>
              <div class="row">
                {lengthsOf[kind].map((name) => entry(name, t(`reaching.lengths.${name}`), "mm"))}
              </div>
            </fieldset>
          ),
        )}
        <button type="submit">{t("reaching.show")}</button>
      </form>
      {answer && (
        <Sheet id="answer" title={t("reaching.answer", { interval: answer.interval })}>
          {answer.lists.map((list) => (
            <ReachingList key={list.kind} {...list} />
          ))}
          <p class="hint">{t("reaching.hint")}</p>
        </Sheet>
      )}
    </>
  );
}

function ReachingList({ kind, rows, more }: NonNullable<ReachingView["answer"]>["lists"][number]) {
  const locale = useLocale();
  const t = useTell();
  const named = ({ names: [one, other] }: ReachingRow) => {
    const [first, second] = [toldValue(one, locale), toldValue(other ?? "", locale)];
    if (other === undefined) return first;
    return kind === "mixture"
      ? t("reaching.mixed", { first, second })
      : t("reaching.under", { core: first, skin: second });
  };
  const skins = rows.some(({ skinMm }) => skinMm !== undefined);
  return (
    <>
      <Rows
        id={`reaching-${kind}`}
        caption={t(`reaching.kinds.${kind}`)}
        empty={t(`reaching.nothing.${kind}`)}
        columns={[
          { head: t("reaching.what") },
          ...(kind === "single" ? [] : [{ head: t(`reaching.shares.${kind}`) }]),
          ...(skins ? [{ head: t("reaching.skin-mm"), number: true }] : []),
          { head: t("reaching.met") },
          { head: t("reaching.told-by") },
        ]}
        rows={rows.map((row) => ({
          key: row.id,
          cells: [
            <a key="a" href={`/metals/${row.id}`}>
              {named(row)}
            </a>,
            ...(kind === "single" ? [] : [row.share]),
            ...(skins ? [row.skinMm ?? ""] : []),
            `${t(`metal-page.likelihoods.${row.likelihood}`)}${row.pays === false ? `; ${t("reaching.does-not-pay")}` : ""}`,
            row.separatedBy === undefined ? "" : <Told key="t" says={row.separatedBy} />,
          ],
        }))}
      />
      {more > 0 && <p>{t("reaching.more", { count: more })}</p>}
    </>
  );
}
