import { type EvidenceKind, evidenceKinds } from "../../server/conformity/evidence/evidence.ts";
import { Field, Problems } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { toldValue } from "../words/told.ts";
import { TestEntries, type TypedEntries } from "./entries.tsx";
import { EvidenceForm, type EvidenceTarget } from "./form.tsx";

/** One test that was made, as the page tells it. */
export interface MadeTest {
  /** id of its entry in the ledger */
  id: string;
  kind: EvidenceKind;
  /** what was found, in words with its values */
  found: string;
  when: string;
  /** names of what it strikes out; empty when it strikes nothing */
  struckOut: readonly string[];
  /** why it does not count any more; it stays visible */
  excluded?: string;
}

/** What other tests found on a piece. A test that was not made is a hole and is shown as one. */
export interface EvidenceView extends EvidenceTarget {
  made: readonly MadeTest[];
  /** the most separating harmless test not yet made, in a sentence */
  next?: string;
  /** what was typed into the form of one kind and refused; that form stands open */
  refused?: TypedEntries & { kind: EvidenceKind };
}

const nothingTyped: TypedEntries = { values: {}, problems: [] };
/** Struck names told in the line of a test; the table of candidates holds all of them. */
const namesTold = 4;

/** All tests from harmless to harming: what each found, what it cannot see, and its entries. */
export function EvidenceSheet(view: EvidenceView) {
  const locale = useLocale();
  const t = useTell();
  return (
    <Sheet id="evidence" title={t("evidence.other-evidence")}>
      <p>{t("evidence.lead")}</p>
      {view.next !== undefined && (
        <p>
          <strong>{t("evidence.next")}</strong> <Told says={view.next} />
        </p>
      )}
      <Problems heading={t("evidence.problems")} problems={view.refused?.problems ?? []} />
      <ul class="plain-list">
        {evidenceKinds.map((test) => {
          const { kind, name, harmless } = test;
          const made = view.made.filter((one) => one.kind === kind);
          return (
            <li key={kind} id={`test-${kind}`}>
              <p>
                <strong>{toldValue(name, locale)}</strong>
                {harmless ? "" : ` (${t("evidence.marks-piece")})`}
                {made.every(({ excluded }) => excluded !== undefined) && `: ${t("evidence.not-made")}`}
              </p>
              {made.map((one) => (
                <Made key={one.id} made={one} view={view} />
              ))}
              <TestForm test={test} view={view} />
            </li>
          );
        })}
      </ul>
    </Sheet>
  );
}

function TestForm({ test, view }: { test: (typeof evidenceKinds)[number]; view: EvidenceView }) {
  const locale = useLocale();
  const t = useTell();
  const { kind, name, blindTo, caution } = test;
  const { refused } = view;
  return (
    <details open={refused?.kind === kind || undefined}>
      <summary>
        {t("evidence.enter")} <span class="unseen">{toldValue(name, locale)}</span>
      </summary>
      <p class="hint">
        {t("evidence.blind-to")} <Told says={blindTo} />.
      </p>
      {caution !== undefined && (
        <p class="caution">
          <Told says={caution} />
        </p>
      )}
      <EvidenceForm target={view}>
        <input type="hidden" name="kind" value={kind} />
        <div class="row">
          <TestEntries kind={kind} typed={refused?.kind === kind ? refused : nothingTyped} />
        </div>
        <button type="submit">{t("evidence.keep")}</button>
      </EvidenceForm>
    </details>
  );
}

function Made({ made, view }: { made: MadeTest; view: EvidenceView }) {
  const locale = useLocale();
  const t = useTell();
  const { id, found, when, struckOut, excluded } = made;
  if (excluded !== undefined)
    return (
      <p>
        <s>
          <Told says={found} /> ({when})
        </s>{" "}
        {t("evidence.excluded-with", { reason: excluded })}
      </p>
    );
  const names = struckOut.slice(0, namesTold).map((name) => toldValue(name, locale));
  return (
    <>
      <p>
        <Told says={found} /> ({when});{" "}
        {struckOut.length > 0
          ? t("evidence.strikes-out", { names: names.join(", "), more: struckOut.length - names.length })
          : t("evidence.strikes-nothing")}
      </p>
      <details>
        <summary>
          {t("evidence.excluded")} <span class="unseen">{found}</span>
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
