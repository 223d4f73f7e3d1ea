import type { Message, Param } from "../../calibration/message.ts";
import { Field, Problems } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { tellId, tellValue } from "../messages/tell.ts";
import { Sentence } from "../sentence.tsx";
import { Fold, Sheet } from "../sheet.tsx";
import type { TestChoices, TestKind } from "./choices.ts";
import { TestEntries, type TypedEntries } from "./entries.tsx";
import { EvidenceForm, type EvidenceTarget } from "./form.tsx";

/** One test that was made, as the page tells it. */
export interface MadeTest {
  /** id of its entry in the ledger */
  id: string;
  kind: TestKind;
  found: Sentence;
  /** what was typed beside it, and by whom it was made */
  also: readonly string[];
  when: string;
  /** names of what it excludes; empty when it excludes nothing */
  excludes: readonly Param[];
  /** why it does not count any more; it stays visible */
  excluded?: Sentence;
}

/** What other tests found on a piece. A test that was not made is a hole and is shown as one. */
export interface EvidenceView extends EvidenceTarget {
  choices: TestChoices;
  made: readonly MadeTest[];
  /** the tests to make next, in order */
  next: readonly Message[];
  /** what was typed into the form of one kind and refused; that form stands open */
  refused?: TypedEntries & { kind: TestKind };
}

const nothingTyped: TypedEntries = { values: {}, problems: [] };
/** Names of what a test excludes told in its line; the list of what is excluded holds all of them. */
const namesTold = 4;

/** The tests to make next, in order; nothing when there are none. */
export function NextTests({ next }: { next: readonly Message[] }) {
  const locale = useLocale();
  const t = useTell();
  if (next.length === 0) return null;
  return (
    <p>
      <strong>{t("evidence.next")}</strong> {tellValue(next, locale)}.
    </p>
  );
}

/** All tests from harmless to marking: what each found, what it cannot see, and its entries. */
export function EvidenceSheet(view: EvidenceView) {
  const t = useTell();
  return (
    <Sheet id="evidence" title={t("evidence.other-evidence")}>
      <NextTests next={view.next} />
      <Problems heading={t("evidence.problems")} problems={view.refused?.problems ?? []} />
      {view.choices.kinds.map(({ kind, marks }) => (
        <TestFold key={kind} kind={kind} marks={marks} view={view} />
      ))}
    </Sheet>
  );
}

/** One test: its name, how it stands, and on demand what it found and its entries. */
function TestFold({ kind, marks, view }: { kind: TestKind; marks: boolean; view: EvidenceView }) {
  const t = useTell();
  const made = view.made.filter((one) => one.kind === kind);
  const counting = made.filter(({ excluded }) => excluded === undefined);
  const notes = [
    ...(marks ? [t("evidence.marks-piece")] : []),
    ...(counting.length === 0 ? [t("evidence.not-made")] : []),
  ];
  return (
    <Fold
      id={`test-${kind}`}
      title={t(`test.name.${kind}`)}
      note={notes.join(", ")}
      open={made.length > 0 || view.refused?.kind === kind}
    >
      {made.map((one) => (
        <Made key={one.id} made={one} view={view} />
      ))}
      <TestForm kind={kind} view={view} />
    </Fold>
  );
}

/** Kinds with a caution of their own. */
const cautioned = ["magnet", "scratch", "touch"] as const;

function TestForm({ kind, view }: { kind: TestKind; view: EvidenceView }) {
  const t = useTell();
  const { refused } = view;
  const caution = cautioned.find((one) => one === kind);
  return (
    <>
      <p class="hint">
        {t("evidence.blind-to")} {t(`test.blind.${kind}`)}.
      </p>
      {caution && <p class="caution">{t(`test.caution.${caution}`)}</p>}
      <EvidenceForm target={view}>
        <input type="hidden" name="kind" value={kind} />
        <div class="row">
          <TestEntries
            kind={kind}
            choices={view.choices}
            typed={refused?.kind === kind ? refused : nothingTyped}
          />
        </div>
        <button type="submit" class="plain">
          {t("evidence.keep")} <span class="unseen">{t(`test.name.${kind}`)}</span>
        </button>
      </EvidenceForm>
    </>
  );
}

function Found({ found, also, when }: MadeTest) {
  return (
    <>
      <Sentence message={found} />
      {also.length > 0 && ` (${also.join(", ")})`} ({when})
    </>
  );
}

function Made({ made, view }: { made: MadeTest; view: EvidenceView }) {
  const locale = useLocale();
  const t = useTell();
  const { id, kind, excludes, excluded } = made;
  if (excluded !== undefined)
    return (
      <p>
        <s>
          <Found {...made} />
        </s>{" "}
        {t("evidence.excluded-with", { reason: excluded })}
      </p>
    );
  const names = excludes.slice(0, namesTold);
  return (
    <>
      <p>
        <Found {...made} />;{" "}
        {excludes.length > 0
          ? t("evidence.excludes", { names, more: excludes.length - names.length })
          : t("evidence.excludes-nothing")}
      </p>
      <details>
        <summary>
          {t("evidence.excluded")} <span class="unseen">{tellId("test.name", kind, locale)}</span>
        </summary>
        <EvidenceForm target={view} path={`/${id}/voiding`}>
          <Field
            name="reason"
            id={`reason-${id}`}
            label={t("evidence.why")}
            hint={t("evidence.excluded-hint")}
            required
          />
          <button type="submit" class="plain">
            {t("evidence.excluded")}
          </button>
        </EvidenceForm>
      </details>
    </>
  );
}
