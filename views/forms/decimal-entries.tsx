import type { ComponentChildren } from "preact";
import { Field } from "./field.tsx";
import { errorsOf, type FieldProblem } from "./problems.tsx";

/**
 * Draws the decimal entries of one form by their names: each with its unit after it, what was typed into it and why
 * that went back.
 */
export function decimalEntries<Name extends string>(
  values: Readonly<Partial<Record<Name, string>>>,
  problems: readonly FieldProblem[],
) {
  const errorOf = errorsOf(problems);
  return (name: Name, label: ComponentChildren, unit: string, required = false) => (
    <Field
      key={name}
      kind="decimal"
      name={name}
      label={label}
      after={unit}
      value={values[name] ?? ""}
      required={required}
      {...errorOf(name)}
    />
  );
}
