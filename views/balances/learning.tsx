import { Check, Csrf, Field } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { Sheet } from "../sheet.tsx";
import { Told, toldText } from "../told.tsx";
import { SampleLines, type SampleView } from "./samples.tsx";

export interface LearningView {
  balance: Told;
  /** false when no balance on a cable is chosen: then only pasted lines can be learned from */
  canListen: boolean;
  /** the set-up while it runs */
  running?: {
    /** what to do now */
    message: Told;
    step: number;
    of: number;
    /** what the display shows is typed before going on */
    asksDisplayed: boolean;
    canLeaveOut: boolean;
    /** false until enough lines came in this step */
    lineCame: boolean;
    heard: number;
  };
  learned?: {
    /** what is sure, with the very lines */
    facts: readonly Told[];
    /** what is not sure, and what that means */
    open: readonly Told[];
    questions: readonly QuestionView[];
    samples: readonly SampleView[];
    /** false when nothing could be learned */
    canBeKept: boolean;
  };
  pastedText?: string;
  typed?: { displayed: string; unit: string };
  problem?: Told;
  csrfToken: string;
}

export interface QuestionView {
  id: string;
  asks: Told;
  options: readonly { value: string; message: Told }[];
  refused?: Told;
}

/** Learning a balance from its own lines; the owner sees in words what was learned and confirms it. */
export function Learning(view: LearningView) {
  const t = useTell();
  return (
    <div hx-sse:connect="/balances/learning/live" data-heartbeat-seconds={2}>
      <div id="heartbeat" hidden />
      {view.problem !== undefined && (
        <div class="problems" role="alert">
          <p>
            <Told says={view.problem} />
          </p>
        </div>
      )}
      {!view.running && <p>{t("balances.learning-lead", { balance: view.balance })}</p>}
      <div id="learning-now">
        <LearningNow {...view} />
      </div>
      <div id="learning">
        <LearningPart {...view} />
      </div>
      {!view.running && <Pasted {...view} />}
    </div>
  );
}

/** Fragment: what to do now; renewed with every line, so nothing in it can be pressed. */
export function LearningNow({ running }: Pick<LearningView, "running">) {
  const locale = useLocale();
  const t = useTell();
  return (
    <section
      class="sheet"
      aria-labelledby="half-minute"
      data-say={running === undefined ? "" : toldText(running.message, locale)}
    >
      <h2 id="half-minute">
        {running ? t("balances.step", { step: running.step, of: running.of }) : t("balances.half-minute")}
      </h2>
      {running ? (
        <>
          <p>
            <strong>
              <Told says={running.message} />
            </strong>
          </p>
          <p class="hint">
            {running.lineCame ? t("balances.line-came") : t("balances.waiting-for-lines")}{" "}
            {t("balances.heard", { pieces: running.heard })}
          </p>
        </>
      ) : (
        <p>{t("balances.learning-needs")}</p>
      )}
    </section>
  );
}

/** Fragment: what is typed in the present step and its buttons, and what was learned. */
export function LearningPart({ running, learned, canListen, typed, csrfToken }: LearningView) {
  const t = useTell();
  return (
    <>
      {!canListen && <p class="hint">{t("balances.no-balance-on-cable")}</p>}
      <form method="post" action="/balances/learning">
        <Csrf token={csrfToken} />
        {running?.asksDisplayed && (
          <div class="row">
            <Field
              name="displayed"
              id="displayed"
              label={t("balances.display-shows")}
              value={typed?.displayed ?? ""}
            />
            <Field
              name="unit"
              id="displayed-unit"
              label={t("balances.display-unit")}
              value={typed?.unit ?? ""}
            />
          </div>
        )}
        <div class="row">
          {running && (
            <button type="submit" name="go" value="on">
              {t("balances.go-on")}
            </button>
          )}
          {running?.canLeaveOut && (
            <button type="submit" name="go" value="leave-out" class="plain">
              {t("balances.skip-step")}
            </button>
          )}
          {!running && canListen && (
            <button type="submit" name="go" value="begin">
              {learned ? t("balances.learn-again") : t("balances.begin")}
            </button>
          )}
          {(running || learned) && (
            <button type="submit" name="go" value="stop" class="plain">
              {t("balances.stop-keep-nothing")}
            </button>
          )}
        </div>
      </form>
      {learned && <Learned learned={learned} csrfToken={csrfToken} />}
    </>
  );
}

function Learned({
  learned,
  csrfToken,
}: {
  learned: NonNullable<LearningView["learned"]>;
  csrfToken: string;
}) {
  const t = useTell();
  const { facts, open, questions, samples, canBeKept } = learned;
  return (
    <Sheet id="learned" title={canBeKept ? t("balances.was-learned") : t("balances.not-learned")}>
      <ul>
        {facts.map((one, index) => (
          <li key={index}>
            <Told says={one} />
          </li>
        ))}
      </ul>
      {open.length > 0 && (
        <>
          <h3>{t("balances.not-sure")}</h3>
          <ul>
            {open.map((one, index) => (
              <li key={index}>
                <Told says={one} />
              </li>
            ))}
          </ul>
        </>
      )}
      {questions.length > 0 && <Questions questions={questions} csrfToken={csrfToken} />}
      {canBeKept && (
        <>
          <SampleLines lines={samples} />
          <form method="post" action="/balances/profiles">
            <Csrf token={csrfToken} />
            <Field
              name="name"
              id="profile-name"
              label={t("balances.profile-name")}
              maxLength={120}
              required
            />
            <Check name="confirmed" label={t("balances.numbers-compared")} required />
            <button type="submit">{t("balances.keep-this-profile")}</button>
          </form>
        </>
      )}
    </Sheet>
  );
}

function Questions({ questions, csrfToken }: { questions: readonly QuestionView[]; csrfToken: string }) {
  const t = useTell();
  return (
    <form method="post" action="/balances/learning/answers">
      <Csrf token={csrfToken} />
      {questions.map(({ id, asks, options, refused }) => (
        <fieldset key={id}>
          <legend>
            <Told says={asks} />
          </legend>
          {options.map(({ value, message }) => (
            <label key={value} class="check">
              <input type="radio" name={id} value={value} required /> <Told says={message} />
            </label>
          ))}
          {refused !== undefined && (
            <p class="problem">
              <Told says={refused} />
            </p>
          )}
        </fieldset>
      ))}
      <button type="submit">{t("balances.answer")}</button>
    </form>
  );
}

function Pasted({ pastedText = "", csrfToken }: LearningView) {
  const t = useTell();
  return (
    <Sheet id="pasted" title={t("balances.pasted-title")}>
      <p>
        {t("balances.pasted-before")} <code>#</code> {t("balances.pasted-after")} <code># empty</code>,{" "}
        <code># putting-on</code>, <code># loaded</code>, <code># touched</code>, <code># at-rest</code>,{" "}
        <code># taking-off</code>, <code># below-zero</code>. {t("balances.pasted-displayed")}{" "}
        <code># displayed 31.1035 g</code>
      </p>
      <form method="post" action="/balances/learning/pasted">
        <Csrf token={csrfToken} />
        <div class="field">
          <label for="pasted-text">{t("balances.marked-lines")}</label>
          <textarea id="pasted-text" name="text" rows={10} required spellcheck={false}>
            {pastedText}
          </textarea>
        </div>
        <button type="submit">{t("balances.learn-from-marked")}</button>
      </form>
    </Sheet>
  );
}
