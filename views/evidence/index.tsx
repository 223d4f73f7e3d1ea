import type { Colour } from "../../server/alloys/metal.ts";
import { type EvidenceKind, evidenceKinds } from "../../server/evidence/evidence.ts";
import { Csrf, Field, type FieldError, Problems, Select } from "../forms.tsx";
import { Sheet } from "../sheet.tsx";

/** What other tests found on a piece. A test that was not made is a hole and is shown as one. */
export interface EvidenceView {
  /** where the forms are sent: "/records/214/evidence" or the piece on the bench */
  action: string;
  made: readonly {
    kind: EvidenceKind;
    /** what was found, in words with its values */
    found: string;
    when: string;
    /** names of what it strikes out; empty when it strikes nothing */
    struckOut: readonly string[];
  }[];
  /** the most separating harmless test not yet made, in a sentence */
  next?: string;
  problems: readonly { fieldId: string; error: FieldError }[];
  csrfToken: string;
  stepKey: string;
}

/** All tests from harmless to harming: what each found, what it cannot see, and its entries. */
export function EvidenceSheet(view: EvidenceView) {
  return (
    <Sheet id="evidence" title="Other evidence">
      <p>
        Each test strikes candidates out; none of them counts up to a verdict. A test not made is a hole, not
        a pass.
      </p>
      {view.next !== undefined && (
        <p>
          <strong>Next:</strong> {view.next}
        </p>
      )}
      <Problems heading="This entry needs another look" problems={view.problems} />
      <ul class="plain-list">
        {evidenceKinds.map(({ kind, name, harmless, blindTo, caution }) => {
          const made = view.made.filter((one) => one.kind === kind);
          return (
            <li key={kind}>
              <p>
                <strong>{name}</strong>
                {harmless ? ": " : " (marks the piece): "}
                {made.length === 0
                  ? "not made"
                  : made
                      .map(
                        ({ found, when, struckOut }) =>
                          `${found} (${when}); ${struckOut.length > 0 ? `strikes out ${struckOut.join(", ")}` : "strikes nothing out"}`,
                      )
                      .join(". ")}
              </p>
              <details>
                <summary>
                  Enter <span class="unseen">{name}</span>
                </summary>
                <p class="hint">Blind to {blindTo}.</p>
                {caution !== undefined && <p class="caution">{caution}</p>}
                <form method="post" action={view.action}>
                  <Csrf token={view.csrfToken} />
                  <input type="hidden" name="step" value={`${view.stepKey}-${kind}`} />
                  <input type="hidden" name="kind" value={kind} />
                  <div class="row">{entries[kind]}</div>
                  <button type="submit">Keep</button>
                </form>
              </details>
            </li>
          );
        })}
      </ul>
    </Sheet>
  );
}

const colours: readonly Colour[] = [
  "white",
  "grey",
  "yellow",
  "greenish-yellow",
  "reddish-yellow",
  "pink",
  "red",
  "reddish-grey",
];
const asOptions = (values: readonly string[]) =>
  values.map((value) => ({ value, label: value.replace("-", " ") }));

/** Entries of each test; the names are the fields of the evidence with its kind in front. */
const entries: Record<EvidenceKind, preact.JSX.Element> = {
  outline: (
    <>
      <Field kind="decimal" name="outline-massG" label="Mass" after="g" />
      <Field
        kind="decimal"
        name="outline-outlineCm3"
        label="Volume of a box or cylinder that holds it"
        after="cm³"
      />
      <Field kind="decimal" name="outline-uOutlineCm3" label="give or take" after="cm³" />
    </>
  ),
  magnet: (
    <Select
      name="magnet-shows"
      label="Held near, away from the balance"
      options={[
        { value: "none", label: "nothing" },
        { value: "weak", label: "drifts slowly" },
        { value: "strong", label: "pulls" },
      ]}
    />
  ),
  ring: (
    <Select
      name="ring-heard"
      label="Hung up and tapped"
      options={[
        { value: "clear", label: "rings clear" },
        { value: "dull", label: "sounds dull" },
      ]}
    />
  ),
  conductivity: (
    <>
      <Field kind="decimal" name="conductivity-percentIacs" label="Conductivity" after="% IACS" />
      <Field kind="decimal" name="conductivity-uPercentIacs" label="give or take" after="% IACS" />
      <Field kind="decimal" name="conductivity-celsius" label="Temperature" after="°C" />
    </>
  ),
  sound: (
    <>
      <Field kind="decimal" name="sound-mPerS" label="Speed through the thickness" after="m/s" />
      <Field kind="decimal" name="sound-uMPerS" label="give or take" after="m/s" />
    </>
  ),
  scratch: <Select name="scratch-colour" label="Colour under the scratch" options={asOptions(colours)} />,
  touch: (
    <>
      <Select name="touch-metal" label="Reads like" options={asOptions(["gold", "silver", "neither"])} />
      <Field kind="whole" name="touch-low" label="from" after="‰" />
      <Field kind="whole" name="touch-high" label="to" after="‰" />
    </>
  ),
};
