import type { ComponentChildren } from "preact";
import type { Sentence } from "../sentence.tsx";
import { Problem } from "./problems.tsx";

/** The hidden token that every form carries. */
export function Csrf({ token }: { token: string }) {
  return <input type="hidden" name="_csrf" value={token} />;
}

export interface FieldParts {
  /** also the id, unless one is given */
  name: string;
  id?: string;
  label: ComponentChildren;
  hint?: ComponentChildren;
  error?: Sentence;
  value?: string;
  /** "decimal" brings the number keyboard and a text field that takes comma and point */
  kind?: "text" | "decimal" | "search" | "date" | "time" | "whole" | "passphrase";
  required?: boolean;
  autoFocus?: boolean;
  readOnly?: boolean;
  placeholder?: string;
  /** what stands after the entry: a unit in words or a unit list */
  after?: ComponentChildren;
  /** one-key shortcut that puts the cursor here, such as "d" */
  shortcut?: string;
  autoComplete?: string;
  maxLength?: number;
  /** a scanner may type into it */
  scan?: boolean;
  /** a balance that types like a keyboard may type into it */
  weight?: boolean;
}

/** Ids of what describes an entry: its hint and its refusal. */
function describedBy(id: string, { hint, error }: Pick<FieldParts, "hint" | "error">) {
  const ids = [hint !== undefined && `${id}-hint`, error !== undefined && `${id}-problem`].filter(Boolean);
  return {
    ...(ids.length > 0 ? { "aria-describedby": ids.join(" ") } : {}),
    ...(error === undefined ? {} : { "aria-invalid": true }),
  };
}

function Around({ id, field, children }: { id: string; field: FieldParts; children: ComponentChildren }) {
  const { label, hint, error } = field;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint !== undefined && (
        <span class="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {children}
      {error !== undefined && <Problem id={`${id}-problem`} error={error} />}
    </div>
  );
}

/** One labelled entry with its hint and its refusal, both read out with it. */
export function Field(field: FieldParts) {
  const { name, id = name, kind = "text", after } = field;
  const common = {
    id,
    name,
    value: field.value ?? "",
    ...describedBy(id, field),
    ...(field.shortcut === undefined ? {} : { "data-key": field.shortcut }),
    ...(field.scan ? { "data-scan": true } : {}),
    ...(field.weight ? { "data-weight": true } : {}),
    ...(field.placeholder === undefined ? {} : { placeholder: field.placeholder }),
    ...(field.maxLength === undefined ? {} : { maxLength: field.maxLength }),
    autocomplete: field.autoComplete ?? "off",
    required: field.required ?? false,
    autofocus: field.autoFocus ?? false,
    readOnly: field.readOnly ?? false,
  };
  return (
    <Around id={id} field={field}>
      <span class="entry">
        {kind === "search" && <input type="search" {...common} />}
        {kind === "date" && <input type="date" {...common} />}
        {kind === "time" && <input type="time" {...common} />}
        {kind === "text" && <input type="text" {...common} />}
        {kind === "passphrase" && <input type="password" {...common} />}
        {kind === "decimal" && <input type="text" inputMode="decimal" {...common} />}
        {kind === "whole" && <input type="text" inputMode="numeric" {...common} />}
        {after}
      </span>
    </Around>
  );
}

/** Longer text: a note, a reason, a description of the piece. */
export function TextArea(field: Omit<FieldParts, "kind" | "after"> & { rows?: number }) {
  const { name, id = name, rows = 3, maxLength, required = false, value = "" } = field;
  return (
    <Around id={id} field={field}>
      <textarea
        id={id}
        name={name}
        rows={rows}
        {...describedBy(id, field)}
        {...(maxLength === undefined ? {} : { maxLength })}
        required={required}
      >
        {value}
      </textarea>
    </Around>
  );
}
