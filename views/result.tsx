import type { Message, Param } from "../calibration/message.ts";
import { type DecisionView, DecisionWords } from "./decision.tsx";
import type { Locale } from "./messages/language.ts";
import { useLocale, useTell } from "./messages/spoken.ts";
import { tell, tellerOf, tellId, tellValue } from "./messages/tell.ts";
import { Sentence } from "./sentence.tsx";
import { Caution, Facts } from "./sheet.tsx";

/** Where a claim stands, as pages show it. */
export const stateNames = [
  "consistent",
  "consistent-not-unique",
  "excluded",
  "inconclusive",
  "no-claim",
  "no-valid-reading",
] as const;

export type StateName = (typeof stateNames)[number];

/** How often a piece is met, from the most usual on. */
const occurrences = ["common", "occasional", "rare", "purpose-made"] as const;
export type OccurrenceName = (typeof occurrences)[number];

/** Fineness and fine mass over the recipes of the claim, in ‰ and g. */
interface FinenessShown {
  element: string;
  permille: readonly [number, number];
  fine_g: readonly [number, number];
  /** laboratory results on other pieces of the claim */
  laboratory_results?: {
    results: number;
    needed: number;
    narrows: boolean;
    family: { permille: readonly [number, number] };
  };
}

/** What is left beside the claim, as a page shows it; an earlier version stated less of it. */
export interface AlternativeView {
  id: string;
  called: Param;
  kind?: "metal" | "coated" | "cored" | "mixed";
  occurrence?: OccurrenceName;
  likelihoodRatio?: number;
  why?: Message;
  separatedBy?: Message;
}

/** The meaning of a statement as a page shows it. */
export interface ResultView {
  state: StateName;
  /** the metal the piece is said to be; left out when nothing was claimed */
  claim?: Param;
  answer: Message | string;
  /** why the claim stands where it does, with numbers */
  message?: Message;
  /** the claim is among what is not excluded, and the fits are beside its own */
  claimStands: boolean;
  alternatives: readonly AlternativeView[];
  fineness?: FinenessShown;
  /** what may be in the piece and harms whoever works on it, by the ids of the statement */
  cautions: readonly string[];
  /** of a thousand pieces offered as the claim and weighed so; those of `unseen` pass whatever the density */
  risk?: { wrong: number; rightly: number; unseen: number };
  /** the verdict on the claim's limits, where a rule was agreed */
  decision?: DecisionView;
}

/** The sign that repeats the word: equal, nearly equal, not equal, open, none, stop. */
const stateSigns: Record<StateName, string> = {
  consistent: "=",
  "consistent-not-unique": "≈",
  excluded: "≠",
  inconclusive: "?",
  "no-claim": "–",
  "no-valid-reading": "×",
};

/** The state in one line: sign, word, colour; the word is what counts. */
export function StateWord({ state, id, ...asked }: { state: StateName; locale?: Locale; id?: string }) {
  const spoken = useLocale();
  const locale = asked.locale ?? spoken;
  return (
    <span class={`state state-${state}`} id={id}>
      <span class="sign" aria-hidden="true">
        {stateSigns[state]}
      </span>
      {tell({ code: `state.${state}` }, locale)}
    </span>
  );
}

/** What may be in the piece and harms whoever works on it: it stands wherever a statement stands. */
export function CautionLine({ cautions }: Pick<ResultView, "cautions">) {
  const locale = useLocale();
  const t = useTell();
  if (cautions.length === 0) return null;
  return (
    <span class="note" data-cautions={cautions.join(" ")}>
      {t("bench.caution", { what: cautions.map((id) => tellId("hazard.name", id, locale)) })}
    </span>
  );
}

interface Listed {
  list: ResultView["alternatives"];
}

interface Leveled {
  /** level of its headings: one below that of what it stands under */
  level: 2 | 3;
}

/** What the list of what is left is to the claim. */
function headingOf({ claim, claimStands, state }: ResultView) {
  if (claimStands) return "result.not-excluded";
  return claim !== undefined && state === "excluded" ? "result.fits-instead" : "result.could-be";
}

/** Alternatives shown at once; the rest opens on demand, so that a phone is not buried in them. */
const shownAtOnce = 4;

function Alternatives({ list, claimStands }: Pick<ResultView, "claimStands"> & Listed) {
  const locale = useLocale();
  const t = tellerOf(locale);
  const fit = claimStands ? "result.fit" : "result.fit-best";
  const onlyLaboratory = list.filter(({ separatedBy }) => separatedBy?.code === "separation.laboratory");
  return (
    <>
      <ul>
        {list.map(({ id, called, kind, likelihoodRatio, why, separatedBy }) => (
          <li key={id}>
            <a href={`/metals/${id}`}>{tellValue(called, locale)}</a>
            {kind !== undefined && kind !== "metal" && ` (${t(`result.kind.${kind}`)})`}
            {why !== undefined && (
              <>
                : <Sentence message={why} />.
              </>
            )}
            {separatedBy !== undefined && separatedBy.code !== "separation.laboratory" && (
              <em>
                {" "}
                <Sentence message={separatedBy} />
              </em>
            )}
            {likelihoodRatio !== undefined && <small> {t(fit, { ratio: likelihoodRatio })}</small>}
          </li>
        ))}
      </ul>
      {onlyLaboratory.length > 0 && (
        <p>
          <em>{t("result.only-laboratory", { names: onlyLaboratory.map((one) => one.called) })}</em>
        </p>
      )}
    </>
  );
}

/** Alternatives by how often they are met, in the order of the statement. */
function ByOccurrence({ list, claimStands, level }: Pick<ResultView, "claimStands"> & Listed & Leveled) {
  const locale = useLocale();
  const Heading = level === 2 ? "h3" : "h4";
  const of = (occurrence: OccurrenceName | undefined) => list.filter((one) => one.occurrence === occurrence);
  return (
    <>
      {occurrences.map((occurrence) => {
        const group = of(occurrence);
        if (group.length === 0) return null;
        return (
          <div key={occurrence}>
            <Heading>{tellerOf(locale)(`result.occurrence.${occurrence}`)}</Heading>
            <Alternatives list={group} claimStands={claimStands} />
          </div>
        );
      })}
      {of(undefined).length > 0 && <Alternatives list={of(undefined)} claimStands={claimStands} />}
    </>
  );
}

/** Fineness and fine mass that the statement gives over the recipes of the claim. */
function FinenessFacts({ fineness, locale }: { fineness: FinenessShown; locale: Locale }) {
  const t = tellerOf(locale);
  const [low, high] = fineness.permille;
  const [least, most] = fineness.fine_g;
  const { laboratory_results: results } = fineness;
  return (
    <Facts
      facts={[
        [t("result.fineness"), t("result.fineness-is", { low_permille: low, high_permille: high })],
        [
          t("result.fine-mass", { element: tellId("metal", `el-${fineness.element.toLowerCase()}`, locale) }),
          t("result.fine-mass-is", { least_g: least, most_g: most }),
        ],
        ...(results ? [[t("result.rests-on"), onResults(results, t)] as const] : []),
      ]}
    />
  );
}

/** What laboratory results on other pieces of the claim do to the fineness. */
function onResults(
  { results, needed, narrows, family }: NonNullable<FinenessShown["laboratory_results"]>,
  t: ReturnType<typeof tellerOf>,
): string {
  const [low_permille, high_permille] = family.permille;
  if (narrows) return t("result.results.narrows", { results, low_permille, high_permille });
  return results < needed
    ? t("result.results.few", { results, needed })
    : t("result.results.nothing", { results });
}

/** The answer first: where the claim stands, and the one sentence. */
export function ResultHeadline({ result: { state, claim, answer } }: { result: ResultView }) {
  const locale = useLocale();
  const t = tellerOf(locale);
  return (
    <>
      <p>
        {claim === undefined
          ? t("result.no-claim")
          : `${t("result.said-to-be")} ${tellValue(claim, locale)}: `}
        <StateWord state={state} locale={locale} />
      </p>
      <p class="lead">
        <strong>
          <Sentence message={answer} />
        </strong>
      </p>
    </>
  );
}

/** What stands behind an answer: the reason with its numbers, what else is left, fineness, what may harm. */
export function ResultDetails({
  result,
  level,
  ...asked
}: { result: ResultView; locale?: Locale } & Leveled) {
  const spoken = useLocale();
  const locale = asked.locale ?? spoken;
  const t = tellerOf(locale);
  const { message, claimStands, alternatives, fineness, cautions, decision, claim, risk } = result;
  const Heading = `h${level}` as const;
  return (
    <>
      {message !== undefined && (
        <p class="hint">
          <Sentence message={message} />
        </p>
      )}
      {alternatives.length > 0 && (
        <>
          <Heading>{t(headingOf(result), { count: alternatives.length })}</Heading>
          <ByOccurrence list={alternatives.slice(0, shownAtOnce)} {...{ claimStands, level }} />
          {alternatives.length > shownAtOnce && (
            <details>
              <summary>{t("result.more", { count: alternatives.length - shownAtOnce })}</summary>
              <ByOccurrence list={alternatives.slice(shownAtOnce)} {...{ claimStands, level }} />
            </details>
          )}
        </>
      )}
      {fineness && <FinenessFacts fineness={fineness} locale={locale} />}
      {cautions.length > 0 && (
        <Caution title={t("hazard.title")}>
          <ul>
            {cautions.map((id) => (
              <li key={id}>{tellId("hazard.of", id, locale)}</li>
            ))}
          </ul>
        </Caution>
      )}
      {decision && <DecisionWords decision={decision} locale={locale} />}
      {risk && claim !== undefined && (
        <p class="hint">
          {t("result.global-risk", { claim, ...risk })} <a href="/worth">{t("result.global-risk-from")}</a>.
        </p>
      )}
      <p class="hint">{t("result.opinion")}</p>
    </>
  );
}
