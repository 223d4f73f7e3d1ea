import type { Message, Param } from "../calibration/message.ts";
import type { StatedDecision } from "../server/weighing/statement-shape.ts";
import { DecisionWords } from "./decision.tsx";
import type { Locale } from "./messages/language.ts";
import { useLocale } from "./messages/spoken.ts";
import { tell, tellerOf, tellId, tellValue } from "./messages/tell.ts";
import { Caution } from "./sheet.tsx";
import { Told } from "./told.tsx";
import { toldValue } from "./words/told.ts";

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

/** A finding as a page shows it. */
export interface FindingView {
  state: StateName;
  /** name of the metal the piece is said to be; left out when nothing was claimed */
  claimName?: string;
  /** what this scale can tell the claim from here, and what not; left out when the claim is none or ruled out */
  plainly?: Message | undefined;
  because: Message | string;
  /** what else the density leaves alive, each with the harmless test that separates it */
  lookAlikes: readonly { id: string; called: Param; whySays?: string; separatedBy?: string }[];
  /** what may be in the piece and harms whoever works on it, by the ids of the statement */
  cautions: readonly string[];
  /** the verdict on the claim's limits, where a rule was agreed */
  decision?: StatedDecision;
}

/** The sign that repeats the word: equal, nearly equal, not equal, open, none, stop. */
const stateSigns: Record<StateName, string> = {
  consistent: "=",
  "consistent-not-unique": "≈",
  excluded: "≠",
  inconclusive: "?",
  "no-claim": "–",
  "no-valid-reading": "!",
};

/** The state in one line: sign, word, colour; the word is what counts. */
export function StateWord({ state, ...asked }: { state: StateName; locale?: Locale }) {
  const spoken = useLocale();
  const locale = asked.locale ?? spoken;
  return (
    <span class={`state state-${state}`}>
      <span class="sign" aria-hidden="true">
        {stateSigns[state]}
      </span>
      {tell({ code: `state.${state}` }, locale)}
    </span>
  );
}

/** Look-alikes shown at once, likeliest first; the rest opens on demand, so that a phone is not buried in them. */
const shownAtOnce = 4;

function LookAlikes({ list }: { list: FindingView["lookAlikes"] }) {
  const locale = useLocale();
  return (
    <ul>
      {list.map(({ id, called, whySays, separatedBy }) => (
        <li key={id}>
          <a href={`/metals/${id}`}>{tellValue(called, locale)}</a>
          {whySays !== undefined && (
            <>
              : <Told says={whySays} />.
            </>
          )}
          {separatedBy !== undefined && (
            <em>
              {" "}
              <Told says={separatedBy} />
            </em>
          )}
        </li>
      ))}
    </ul>
  );
}

/** The whole finding: state, reason, doubts about the procedure first, then what is still alive. */
export function FindingWords({ finding, ...asked }: { finding: FindingView; locale?: Locale }) {
  const spoken = useLocale();
  const locale = asked.locale ?? spoken;
  const t = tellerOf(locale);
  const { state, claimName, plainly, because, lookAlikes, cautions, decision } = finding;
  return (
    <section class="sheet" aria-labelledby="finding-heading">
      <h2 id="finding-heading">{t("finding.heading")}</h2>
      <p>
        {claimName === undefined
          ? t("finding.no-claim")
          : `${t("finding.said-to-be")} ${toldValue(claimName, locale)}: `}
        <StateWord state={state} locale={locale} />
      </p>
      {plainly !== undefined && (
        <p>
          <strong>
            <Told says={plainly} />
          </strong>
        </p>
      )}
      <p>
        <Told says={because} />
      </p>
      {lookAlikes.length > 0 && (
        <>
          <h3>{t("finding.still-alive")}</h3>
          <LookAlikes list={lookAlikes.slice(0, shownAtOnce)} />
          {lookAlikes.length > shownAtOnce && (
            <details>
              <summary>{t("finding.more", { count: lookAlikes.length - shownAtOnce })}</summary>
              <LookAlikes list={lookAlikes.slice(shownAtOnce)} />
            </details>
          )}
        </>
      )}
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
      <p class="hint">{t("finding.opinion")}</p>
    </section>
  );
}
