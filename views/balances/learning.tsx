import type { ComponentChildren } from "preact";
import { Check, Csrf, Field } from "../forms.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { SampleLines } from "./index.tsx";

/** The half minute of learning, in order. */
export const learningSteps = [
  { step: "still", says: "Leave the pan empty and still." },
  { step: "load", says: "Put a weight on: any weight, not the largest." },
  { step: "touch", says: "Touch the pan lightly, so that the reading moves." },
  { step: "settle", says: "Let go and let it come to rest." },
  { step: "unload", says: "Take the weight off." },
  {
    step: "overload",
    says: "If it cannot harm the balance, press the pan until it says overload; or leave this out.",
  },
] as const;
export type LearningStep = (typeof learningSteps)[number]["step"];

export interface LearningView {
  balance: string;
  /** not yet begun, in a step, or done */
  at: LearningStep | "before" | "done";
  secondsLeft?: number;
  linesHeard: number;
  /** what this step still needs, or that it is enough */
  says?: string;
  learned?: {
    /** each thing learned, in words: line end, parity, where the number stands, what follows motion */
    facts: readonly (readonly [name: string, value: ComponentChildren])[];
    /** what could not be learned, and what that means */
    open: readonly string[];
    samples: readonly { at: string; raw: string }[];
  };
  csrfToken: string;
}

/** Learning a balance from its own lines; the owner sees in words what was learned and confirms it. */
export function Learning(view: LearningView) {
  return (
    <>
      <p>
        {view.balance}. From its own lines alone the bench learns how this balance writes a number, what
        follows motion and what it says when something is wrong. Nothing is sent to the balance.
      </p>
      <LearningProgress {...view} />
      {view.learned && <Learned learned={view.learned} csrfToken={view.csrfToken} />}
    </>
  );
}

/** Fragment: the steps with the present one marked; renewed while learning. */
export function LearningProgress({ at, secondsLeft, linesHeard, says, csrfToken }: LearningView) {
  const index = learningSteps.findIndex(({ step }) => step === at);
  return (
    <section
      class="sheet"
      id="learning"
      aria-label="Steps"
      data-say={index < 0 ? "" : learningSteps[index]!.says}
    >
      <ol class="steps">
        {learningSteps.map(({ step, says: words }, place) => (
          <li
            key={step}
            {...(place === index ? { "aria-current": "step" as const } : {})}
            {...(at === "done" || (index >= 0 && place < index) ? { class: "done" } : {})}
          >
            {words}
          </li>
        ))}
      </ol>
      <p>
        {linesHeard} lines heard{secondsLeft === undefined ? "" : `, ${secondsLeft} s left in this step`}.{" "}
        {says}
      </p>
      <form method="post" action="/balances/learning">
        <Csrf token={csrfToken} />
        {at !== "done" && (
          <button type="submit" name="go" value="on" data-key="Enter">
            {at === "before" ? "Begin" : "Next step"}
          </button>
        )}{" "}
        <button type="submit" name="go" value="again" class="plain">
          From the start
        </button>
      </form>
    </section>
  );
}

function Learned({
  learned,
  csrfToken,
}: {
  learned: NonNullable<LearningView["learned"]>;
  csrfToken: string;
}) {
  return (
    <Sheet id="learned" title="This is what was learned">
      <Facts facts={learned.facts} />
      {learned.open.length > 0 && (
        <>
          <h3>Not learned</h3>
          <ul>
            {learned.open.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </>
      )}
      <SampleLines lines={learned.samples} />
      <form method="post" action="/balances/profiles">
        <Csrf token={csrfToken} />
        <Field name="name" id="profile-name" label="Your name for this balance" required />
        <Check
          name="confirmed"
          label="I compared the numbers above with the display: they are the same."
          required
        />
        <button type="submit">Keep this profile</button>
      </form>
    </Sheet>
  );
}
