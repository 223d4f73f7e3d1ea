import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Fold } from "../sheet.tsx";
import { NextButton } from "./next-button.tsx";
import { BenchForm } from "./parts.tsx";
import type { BenchView, CheckView } from "./view.ts";

/** The remedy a page can do by itself, by what it does; the others are told. */
const doable = ["swap-dry-and-wet", "repeat", "exclude"] as const;
type Doable = (typeof doable)[number];

/** The first remedy of a check that one button does, and its place among them. */
export function remedyOf({ remedies }: CheckView): { place: number; does: Doable } | undefined {
  for (const [place, { offer }] of remedies.entries()) {
    const does = doable.find((one) => one === offer?.do);
    if (does) return { place, does };
  }
  return undefined;
}

/** What must be looked at first: one sentence in the place of the instruction. Why, and what else to do, is folded. */
export function CheckFirst({ check }: { check: CheckView }) {
  const t = useTell();
  const { code, severity, params } = check;
  return (
    <section class="check-first" data-check={code} data-severity={severity} aria-labelledby="check-heading">
      <h2 class="state state-no-valid-reading" id="check-heading">
        <span class="sign" aria-hidden="true">
          !
        </span>
        {t("bench.steps.doubts")}
      </h2>
      <p class="sentence" data-say={t(code, params)}>
        {t(code, params)}
      </p>
    </section>
  );
}

/** The button that does the remedy of a check; the filled one where the check stops the weighing. */
export function RemedyButton({ view, check, next }: { view: BenchView; check: CheckView; next: boolean }) {
  const t = useTell();
  const remedy = remedyOf(check);
  if (!remedy) return null;
  const label = t(
    remedy.does === "repeat" && check.severity === "warn"
      ? "bench.remedy.take-again"
      : `bench.remedy.${remedy.does}`,
  );
  return (
    <BenchForm view={view} to="/bench/remedy" hidden={{ check: check.code, place: String(remedy.place) }}>
      {next ? (
        <NextButton>{label}</NextButton>
      ) : (
        <button type="submit" class="plain">
          {label}
        </button>
      )}
    </BenchForm>
  );
}

/** What a check asks and all that can be done about it. */
export function Why({ check }: { check: CheckView }) {
  const t = useTell();
  return (
    <Fold title={t("bench.why")}>
      <div>
        <p>
          <strong>{t(`${check.code}.ask`, check.params)}</strong>
        </p>
        <ul>
          {check.remedies.map(({ code, params }) => (
            <li key={code}>{t(code, params)}</li>
          ))}
        </ul>
      </div>
    </Fold>
  );
}

/** The other checks stand under the button, so that none of them pushes it away; a stop says so in its first words. */
export function CheckNotes({ view, checks }: { view: BenchView; checks: readonly CheckView[] }) {
  const t = useTell();
  return (
    <>
      {checks.map((check) => (
        <section
          key={check.code}
          class={check.severity === "stop" ? "check-first" : "check-note"}
          data-check={check.code}
          data-severity={check.severity}
          aria-label={t(check.severity === "stop" ? "bench.steps.doubts" : "bench.check-note")}
        >
          <p>
            <strong>{t(check.severity === "stop" ? "bench.steps.doubts" : "bench.check-note")}</strong>{" "}
            {t(check.code, check.params)}
          </p>
          <RemedyButton view={view} check={check} next={false} />
          <Why check={check} />
        </section>
      ))}
    </>
  );
}

/** After an adjustment of the balance by itself: the reference piece is due; readings go on. */
export function ReferencePieceDue({ adjusted }: Pick<BenchView, "adjusted">) {
  const t = useTell();
  if (adjusted === undefined) return null;
  return (
    <section class="check-note" aria-label={t("bench.check-note")}>
      <p>
        <Sentence message={adjusted} /> <a href="/checks#adjusted">{t("bench.reference-due")}</a>
      </p>
    </section>
  );
}

/** After a lost cable: what to look at on the balance, and the button that says it was looked at. */
export function ScaleChecks({ view }: { view: BenchView }) {
  const t = useTell();
  return (
    <>
      {view.scaleChecks.map(({ kind, message }) => (
        <section key={kind} class="check-first" aria-label={t("bench.steps.look-at-balance")}>
          <p>
            <Sentence message={message} />
          </p>
          <BenchForm view={view} to="/bench/balance-looked-at" hidden={{ kind: kind }}>
            <button type="submit" class="plain">
              {t("bench.steps.looked")}
            </button>
          </BenchForm>
        </section>
      ))}
    </>
  );
}
