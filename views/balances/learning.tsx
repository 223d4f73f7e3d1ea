import { Check, Csrf, Field } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { Sentence, sentenceText } from "../sentence.tsx";
import { Fold, Sheet } from "../sheet.tsx";
import { SampleLines, type SampleView } from "./samples.tsx";

export interface LearningView {
  balance: Sentence;
  /** false when no balance on a cable is chosen: then only pasted lines can be learned from */
  canListen: boolean;
  /** the set-up while it runs */
  running?: {
    /** what to do now */
    message: Sentence;
    step: number;
    of: number;
    /** what the display shows is typed before going on */
    asksDisplayed: boolean;
    canLeaveOut: boolean;
    /** false until enough lines came in this step */
    lineCame: boolean;
    /** the last lines as they came, oldest first */
    lines: readonly string[];
    steps: readonly StepView[];
  };
  learned?: {
    /** what is sure, with the very lines */
    facts: readonly Sentence[];
    /** what is not sure, and what that means */
    open: readonly Sentence[];
    questions: readonly QuestionView[];
    samples: readonly SampleView[];
    /** false when nothing could be learned */
    canBeKept: boolean;
  };
  pastedText?: string;
  typed?: { displayed: string; unit: string };
  problem?: Sentence;
  csrfToken: string;
}

export interface StepView {
  name: "empty" | "putting-on" | "loaded" | "touched" | "at-rest" | "taking-off" | "below-zero";
  stands: "done" | "left-out" | "now" | "later";
  /** what the display showed, with its unit */
  typed?: string;
}

export interface QuestionView {
  id: string;
  asks: Sentence;
  options: readonly { value: string; message: Sentence }[];
  refused?: Sentence;
}

/** Learning a balance from its own lines; the owner sees in words what was learned and confirms it. */
export function Learning(view: LearningView) {
  const t = useTell();
  const resting = !view.running && !view.learned;
  return (
    <div hx-sse:connect="/balances/learning/live" data-heartbeat-seconds={2}>
      <div id="heartbeat" hidden />
      {view.problem !== undefined && (
        <div class="problems" role="alert">
          <p>
            <Sentence message={view.problem} />
          </p>
        </div>
      )}
      {resting && <p>{t("balances.learning-lead", { balance: view.balance })}</p>}
      <div class={view.running && "columns"}>
        <div>
          <div id="learning-now">
            <LearningNow {...view} />
          </div>
          <div id="learning">
            <LearningPart {...view} />
          </div>
        </div>
        <div id="learning-lines">
          <LearningLines {...view} />
        </div>
      </div>
      {!view.running && <Pasted {...view} />}
    </div>
  );
}

/** Fragment: what to do now; renewed with every line, so nothing in it can be pressed. */
export function LearningNow({ running, learned }: Pick<LearningView, "running" | "learned">) {
  const locale = useLocale();
  const t = useTell();
  if (!running && learned) return null;
  return (
    <section
      aria-labelledby="half-minute"
      data-say={running === undefined ? "" : sentenceText(running.message, locale)}
    >
      {running ? (
        <>
          <p class="hint">{t("balances.step", { step: running.step, of: running.of })}</p>
          <h2 id="half-minute">
            <Sentence message={running.message} />
          </h2>
          <p class="hint">{running.lineCame ? t("balances.line-came") : t("balances.waiting-for-lines")}</p>
        </>
      ) : (
        <>
          <h2 id="half-minute">{t("balances.half-minute")}</h2>
          <p>{t("balances.learning-needs")}</p>
        </>
      )}
    </section>
  );
}

/** Fragment: the lines as they arrive, the newest last; renewed with every line. */
export function LearningLines({ running }: Pick<LearningView, "running">) {
  const t = useTell();
  if (!running) return null;
  return (
    <section aria-labelledby="lines-heading">
      <h2 id="lines-heading">{t("balances.lines-arrive")}</h2>
      {running.lines.length === 0 && <p class="hint">{t("balances.waiting-for-lines")}</p>}
      <pre>{running.lines.join("\n")}</pre>
    </section>
  );
}

/** Fragment: what is typed in the present step and its buttons, and what was learned. */
export function LearningPart({ running, learned, canListen, typed, csrfToken }: LearningView) {
  const t = useTell();
  return (
    <>
      {!canListen && <p class="hint">{t("balances.no-balance-on-cable")}</p>}
      {learned && <Learned learned={learned} csrfToken={csrfToken} />}
      <form method="post" action="/balances/learning">
        <Csrf token={csrfToken} />
        {running?.asksDisplayed && <Displayed {...typed} />}
        {running && (
          <p>
            <button type="submit" name="go" value="on" class="large">
              {t("balances.go-on")} <kbd>Enter</kbd>
            </button>
          </p>
        )}
        <div class="row">
          {running?.canLeaveOut && (
            <button type="submit" name="go" value="leave-out" class="plain">
              {t("balances.skip-step")}
            </button>
          )}
          {!running && canListen && (
            <button type="submit" name="go" value="begin" class={learned && "plain"}>
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
      {running && <Steps steps={running.steps} />}
    </>
  );
}

/** What the display shows, typed with its unit. */
function Displayed({ displayed = "", unit = "" }: Partial<NonNullable<LearningView["typed"]>>) {
  const t = useTell();
  return (
    <div class="row">
      <Field
        name="displayed"
        id="displayed"
        label={t("balances.display-shows")}
        value={displayed}
        autoFocus
      />
      <Field name="unit" id="displayed-unit" label={t("balances.display-unit")} value={unit} />
    </div>
  );
}

const signs = { done: "✓", "left-out": "–", now: "→", later: "" } as const;

/** All steps with what was typed in each. */
function Steps({ steps }: Pick<NonNullable<LearningView["running"]>, "steps">) {
  const t = useTell();
  return (
    <ol>
      {steps.map(({ name, stands, typed }, place) => (
        <li key={place} aria-current={stands === "now" ? "step" : undefined}>
          {t(`balances.steps.${name}`)} <span aria-hidden="true">{signs[stands]}</span>{" "}
          {typed !== undefined && <strong>{typed}</strong>}
        </li>
      ))}
    </ol>
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
            <Sentence message={one} />
          </li>
        ))}
      </ul>
      {open.length > 0 && (
        <>
          <h3>{t("balances.not-sure")}</h3>
          <ul>
            {open.map((one, index) => (
              <li key={index}>
                <Sentence message={one} />
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
            <Sentence message={asks} />
          </legend>
          {options.map(({ value, message }) => (
            <label key={value} class="check">
              <input type="radio" name={id} value={value} required /> <Sentence message={message} />
            </label>
          ))}
          {refused !== undefined && (
            <p class="problem">
              <Sentence message={refused} />
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
    <Fold id="pasted" title={t("balances.pasted-title")} open={pastedText !== ""}>
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
    </Fold>
  );
}
