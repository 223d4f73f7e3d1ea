import { Check, Csrf, Field } from "../forms.tsx";
import { Sheet } from "../sheet.tsx";
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
  return (
    <div hx-sse:connect="/balances/learning/live" data-heartbeat-seconds={2}>
      <div id="heartbeat" hidden />
      {view.problem !== undefined && (
        <div class="problems" role="alert">
          <p>{view.problem}</p>
        </div>
      )}
      <p>
        {view.balance}. From its own lines alone the bench learns how this balance writes a number, what
        follows motion and what it says when something is wrong. Nothing is sent to it that you have not typed
        yourself.
      </p>
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
  return (
    <section class="sheet" aria-labelledby="half-minute" data-say={running?.says ?? ""}>
      <h2 id="half-minute">{running ? `Step ${running.step} of ${running.of}` : "The guided half minute"}</h2>
      {running ? (
        <>
          <p>
            <strong>{running.says}</strong>
          </p>
          <p class="hint">
            {running.secondsLeft > 0 ? `${running.secondsLeft} s left` : "waiting for more lines"};{" "}
            {running.heard} pieces heard so far.
          </p>
        </>
      ) : (
        <p>
          You need the balance, empty, and any weight it can carry. The page says what to do, step by step:
          leave it still, put the weight on, touch the pan, let it settle, take it off.
        </p>
      )}
    </section>
  );
}

/** Fragment: the buttons of the present step, and what was learned. */
export function LearningPart({ running, learned, canListen, csrfToken }: LearningView) {
  return (
    <>
      {!canListen && <p class="hint">No balance on a cable is chosen. Choose its port on Balances first.</p>}
      <form method="post" action="/balances/learning" class="row">
        <Csrf token={csrfToken} />
        {running?.canSkip && (
          <button type="submit" name="go" value="skip">
            Leave this step out
          </button>
        )}
        {!running && canListen && (
          <button type="submit" name="go" value="begin">
            {learned ? "Learn again from the start" : "Begin"}
          </button>
        )}
        {(running || learned) && (
          <button type="submit" name="go" value="stop" class="plain">
            Stop, keep nothing
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
  const { facts, open, questions, samples, canBeKept } = learned;
  return (
    <Sheet id="learned" title={canBeKept ? "This is what was learned" : "Not learned yet"}>
      <ul>
        {facts.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      {open.length > 0 && (
        <>
          <h3>Not sure</h3>
          <ul>
            {open.map((one) => (
              <li key={one}>{one}</li>
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
              label="Your name for this balance"
              maxLength={120}
              required
            />
            <Check
              name="confirmed"
              label="I compared the numbers above with the display: they are the same."
              required
            />
            <button type="submit">Keep this profile</button>
          </form>
        </>
      )}
    </Sheet>
  );
}

function Questions({ questions, csrfToken }: { questions: readonly QuestionView[]; csrfToken: string }) {
  return (
    <form method="post" action="/balances/learning/answers">
      <Csrf token={csrfToken} />
      {questions.map(({ id, asks, options, refused }) =>
        options ? (
          <fieldset key={id}>
            <legend>{asks}</legend>
            {options.map(({ value, says }) => (
              <label key={value} class="check">
                <input type="radio" name={id} value={value} required /> {says}
              </label>
            ))}
            {refused !== undefined && <p class="problem">{refused}</p>}
          </fieldset>
        ) : (
          <Field
            key={id}
            name={id}
            label={asks}
            required
            {...(refused === undefined ? {} : { error: refused })}
          />
        ),
      )}
      <button type="submit">Answer</button>
    </form>
  );
}

function Pasted({ pastedText = "", csrfToken }: LearningView) {
  return (
    <Sheet id="pasted" title="From pasted lines">
      <p>
        Lines copied out of another window do as well. Mark the moments by hand: a line that begins with{" "}
        <code>#</code> names what happens from there on: <code># empty</code>, <code># putting-on</code>,{" "}
        <code># loaded</code>, <code># touched</code>, <code># settled</code>, <code># taking-off</code>,{" "}
        <code># overloaded</code>.
      </p>
      <form method="post" action="/balances/learning/pasted">
        <Csrf token={csrfToken} />
        <div class="field">
          <label for="pasted-text">Lines with their marks</label>
          <textarea id="pasted-text" name="text" rows={10} required spellcheck={false}>
            {pastedText}
          </textarea>
        </div>
        <button type="submit">Learn from these lines</button>
      </form>
    </Sheet>
  );
}
