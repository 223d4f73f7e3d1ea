import type { Message } from "../../calibration/message.ts";
import { decimalEntries, Field, type FieldProblem, Problems, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Fold } from "../sheet.tsx";
import { EvidenceForm, type EvidenceTarget } from "./form.tsx";

/** Mass and size against what the piece is meant to be. */
export interface SizeView extends EvidenceTarget {
  specifications: readonly { value: string; label: Message }[];
  values: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
  made: readonly {
    id: string;
    specification: string;
    source: string;
    when: string;
    /** each quantity in a sentence */
    lines: readonly Sentence[];
    excluded?: Sentence;
  }[];
  /** true before the first dry reading: the form asks for the mass */
  asksMass: boolean;
}

export function SizeSheet(view: SizeView) {
  const { specifications, values, problems, made, asksMass } = view;
  const t = useTell();
  const entry = decimalEntries(values, problems);
  return (
    <Fold
      id="size"
      title={t("evidence.size-title")}
      {...(made.length === 0 && { note: t("evidence.not-compared") })}
      open={made.length > 0 || problems.length > 0}
    >
      <Problems heading={t("evidence.problems")} problems={problems} />
      {made.map(({ id, specification, source, when, lines, excluded }) => (
        <div key={id}>
          <p>
            <strong>{specification}</strong> ({when})
            {excluded !== undefined && `, ${t("evidence.excluded-with", { reason: excluded })}`}
          </p>
          <ul>
            {lines.map((line) => (
              <li key={JSON.stringify(line)}>
                {excluded === undefined ? (
                  <Sentence message={line} />
                ) : (
                  <s>
                    <Sentence message={line} />
                  </s>
                )}
              </li>
            ))}
          </ul>
          <p class="hint">
            <Sentence message={source} />
          </p>
          {excluded === undefined && (
            <details>
              <summary>
                {t("evidence.excluded")} <span class="unseen">{specification}</span>
              </summary>
              <EvidenceForm target={view} path={`/${id}/voiding`}>
                <Field name="reason" id={`reason-${id}`} label={t("evidence.why")} required />
                <button type="submit" class="plain">
                  {t("evidence.excluded")}
                </button>
              </EvidenceForm>
            </details>
          )}
        </div>
      ))}
      <EvidenceForm target={view}>
        <input type="hidden" name="kind" value="size" />
        <div class="row">
          <Select
            name="size-specification"
            label={t("evidence.meant-to-be")}
            options={specifications.map(({ value, label: { code, params } }) => ({
              value,
              label: t(code, params),
            }))}
            value={values["size-specification"] ?? ""}
            empty={t("evidence.choose")}
          />
          {asksMass && entry("size-mass", t("evidence.mass"), "g", true)}
          {asksMass && entry("size-mass-within", t("evidence.plus-or-minus"), "g", true)}
          {entry("size-diameter", t("evidence.diameter"), "mm")}
          {entry("size-thickness", t("evidence.rim-thickness"), "mm")}
          {entry("size-within", t("evidence.plus-or-minus"), "mm", true)}
        </div>
        <p class="hint">
          {asksMass ? t("evidence.mass-typed") : t("evidence.mass-is-dry")} {t("evidence.size-hint")}
        </p>
        <button type="submit" class="plain">
          {t("evidence.compare")}
        </button>{" "}
        <a href="/specifications">{t("evidence.to-specifications")}</a>
      </EvidenceForm>
    </Fold>
  );
}
