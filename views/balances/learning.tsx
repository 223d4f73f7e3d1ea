import { Check, Csrf, Field } from "../forms.tsx";
import { Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { told, toldValue } from "../words/told.ts";
import { SampleLines } from "./index.tsx";

export interface LearningView {
  balance: string;
  /** false when no balance on a cable is chosen: then only pasted lines can be learned from */
  canListen: boolean;
  /** the guided half minute while it runs */
  running?: {
    /** what to do now */
    says: string;
    step: number;
    of: number;
    secondsLeft: number;
    canSkip: boolean;
    heard: number;
  };
  learned?: {
    /** what is sure, in words with the very lines */
    facts: readonly string[];
    /** what is not sure, and what that means */
    open: readonly string[];
    questions: readonly QuestionView[];
    samples: readonly { at: string; raw: string }[];
    /** false when nothing could be learned */
    canBeKept: boolean;
  };
  pastedText?: string;
  problem?: string;
  csrfToken: string;
}

export interface QuestionView {
  id: string;
  asks: string;
  options?: readonly { value: string; says: string }[];
  refused?: string;
}

/** Learning a balance from its own lines; the owner sees in words what was learned and confirms it. */
export function Learning(view: LearningView) {
  const locale = useLocale();
  const say = useWords().balances;
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
      <p>{say.learningLead(toldValue(view.balance, locale))}</p>
      <div id="learning-now">
        <LearningNow {...view} />
      </div>
      <div id="learning">
        <LearningPart {...view} />
      </div>
      <Pasted {...view} />
    </div>
  );
}

/** Fragment: what to do now; renewed with every line, so nothing in it can be pressed. */
export function LearningNow({ running }: Pick<LearningView, "running">) {
  const locale = useLocale();
  const say = useWords().balances;
  return (
    <section
      class="sheet"
      aria-labelledby="half-minute"
      data-say={running === undefined ? "" : told(running.says, locale)}
    >
      <h2 id="half-minute">{running ? say.step(running.step, running.of) : say.halfMinute}</h2>
      {running ? (
        <>
          <p>
            <strong>
              <Told says={running.says} />
            </strong>
          </p>
          <p class="hint">
            {running.secondsLeft > 0 ? say.secondsLeft(running.secondsLeft) : say.waitingForLines};{" "}
            {say.heard(running.heard)}
          </p>
        </>
      ) : (
        <p>{say.learningNeeds}</p>
      )}
    </section>
  );
}

/** Fragment: the buttons of the present step, and what was learned. */
export function LearningPart({ running, learned, canListen, csrfToken }: LearningView) {
  const say = useWords().balances;
  return (
    <>
      {!canListen && <p class="hint">{say.noBalanceOnCable}</p>}
      <form method="post" action="/balances/learning" class="row">
        <Csrf token={csrfToken} />
        {running?.canSkip && (
          <button type="submit" name="go" value="skip">
            {say.skipStep}
          </button>
        )}
        {!running && canListen && (
          <button type="submit" name="go" value="begin">
            {learned ? say.learnAgain : say.begin}
          </button>
        )}
        {(running || learned) && (
          <button type="submit" name="go" value="stop" class="plain">
            {say.stopKeepNothing}
          </button>
        )}
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
  const say = useWords().balances;
  const { facts, open, questions, samples, canBeKept } = learned;
  return (
    <Sheet id="learned" title={canBeKept ? say.wasLearned : say.notLearned}>
      <ul>
        {facts.map((one) => (
          <li key={one}>
            <Told says={one} />
          </li>
        ))}
      </ul>
      {open.length > 0 && (
        <>
          <h3>{say.notSure}</h3>
          <ul>
            {open.map((one) => (
              <li key={one}>
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
            <Field name="name" id="profile-name" label={say.profileName} maxLength={120} required />
            <Check name="confirmed" label={say.numbersCompared} required />
            <button type="submit">{say.keepThisProfile}</button>
          </form>
        </>
      )}
    </Sheet>
  );
}

function Questions({ questions, csrfToken }: { questions: readonly QuestionView[]; csrfToken: string }) {
  const locale = useLocale();
  const say = useWords().balances;
  return (
    <form method="post" action="/balances/learning/answers">
      <Csrf token={csrfToken} />
      {questions.map(({ id, asks, options, refused }) =>
        options ? (
          <fieldset key={id}>
            <legend>
              <Told says={asks} />
            </legend>
            {options.map(({ value, says }) => (
              <label key={value} class="check">
                <input type="radio" name={id} value={value} required /> <Told says={says} />
              </label>
            ))}
            {refused !== undefined && (
              <p class="problem">
                <Told says={refused} />
              </p>
            )}
          </fieldset>
        ) : (
          <Field
            key={id}
            name={id}
            label={told(asks, locale)}
            required
            {...(refused === undefined ? {} : { error: refused })}
          />
        ),
      )}
      <button type="submit">{say.answer}</button>
    </form>
  );
}

function Pasted({ pastedText = "", csrfToken }: LearningView) {
  const say = useWords().balances;
  return (
    <Sheet id="pasted" title={say.pastedTitle}>
      <p>
        {say.pastedBefore} <code>#</code> {say.pastedAfter} <code># empty</code>, <code># putting-on</code>,{" "}
        <code># loaded</code>, <code># touched</code>, <code># settled</code>, <code># taking-off</code>,{" "}
        <code># overloaded</code>.
      </p>
      <form method="post" action="/balances/learning/pasted">
        <Csrf token={csrfToken} />
        <div class="field">
          <label for="pasted-text">{say.markedLines}</label>
          <textarea id="pasted-text" name="text" rows={10} required spellcheck={false}>
            {pastedText}
          </textarea>
        </div>
        <button type="submit">{say.learnFromMarked}</button>
      </form>
    </Sheet>
  );
}
