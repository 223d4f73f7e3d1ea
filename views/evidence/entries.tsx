import type { VNode } from "preact";
import { Check, errorsOf, Field, type FieldProblem, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import type { Tell } from "../messages/tell.ts";
import type { TestChoices, TestKind } from "./choices.ts";

/** What was typed into the form of one test, and what was refused of it. */
export interface TypedEntries {
  values: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
}

/** Entries of one test; each is named by its kind and the quantity, so that no two on the page share an id. */
export function TestEntries({
  kind,
  choices,
  typed,
}: {
  kind: TestKind;
  choices: TestChoices;
  typed: TypedEntries;
}) {
  return entriesOf[kind](fieldsOf(typed, choices, useTell()), choices);
}

/** Fields that hold what was typed and say what was refused of it. */
function fieldsOf({ values, problems }: TypedEntries, choices: TestChoices, t: Tell) {
  const errorOf = errorsOf(problems);
  const choice = (name: string, label: string, options: { value: string; label: string }[]) => (
    <Select
      name={name}
      label={label}
      options={options}
      value={values[name] ?? ""}
      empty={t("evidence.choose")}
    />
  );
  return {
    t,
    values,
    choice,
    entry: (name: string, label: string, after?: string, required = true) => (
      <Field
        kind={after === undefined ? "text" : after === "‰" ? "whole" : "decimal"}
        name={name}
        label={label}
        value={values[name] ?? ""}
        required={required}
        {...(after === undefined ? {} : { after })}
        {...errorOf(name)}
      />
    ),
    colour: (name: string, label: string) =>
      choice(
        name,
        label,
        choices.colours.map((value) => ({ value, label: t(`metal-page.colours.${value}`) })),
      ),
    agreed: (name: string, label: string) => (
      <Check name={name} label={label} required checked={values[name] === "yes"} />
    ),
  };
}

type Fields = ReturnType<typeof fieldsOf>;

const entriesOf: Readonly<Record<TestKind, (fields: Fields, choices: TestChoices) => VNode>> = {
  outline: ({ entry, t }) => (
    <>
      {entry("outline-mass", t("evidence.mass"), "g")}
      {entry("outline-volume", t("evidence.outline-volume"), "cm³")}
      {entry("outline-within", t("evidence.plus-or-minus"), "cm³")}
    </>
  ),
  magnet: ({ choice, t }) =>
    choice("magnet-shows", t("evidence.magnet-held"), [
      { value: "none", label: t("test.found.magnet-none") },
      { value: "drag", label: t("test.found.magnet-drag") },
      { value: "weak", label: t("test.found.magnet-weak") },
      { value: "strong", label: t("test.found.magnet-strong") },
    ]),
  ring: ({ choice, entry, t }) => (
    <>
      {choice("ring-heard", t("evidence.ring-tapped"), [
        { value: "clear", label: t("test.found.ring-clear") },
        { value: "dull", label: t("test.found.ring-dull") },
      ])}
      {entry("ring-words", t("evidence.in-words"), undefined, false)}
    </>
  ),
  conductivity: ({ entry, t, values }) => (
    <>
      {entry("conductivity-percent", t("evidence.conductivity"), "")}
      {entry("conductivity-within", t("evidence.plus-or-minus"), "")}
      <Select
        name="conductivity-unit"
        label={t("evidence.unit")}
        options={[
          { value: "iacs", label: "% IACS" },
          { value: "ms-per-m", label: "MS/m" },
        ]}
        value={values["conductivity-unit"] ?? "iacs"}
      />
      {entry("conductivity-celsius", t("evidence.piece-temperature"), "°C")}
    </>
  ),
  sound: ({ choice, entry, t }, { paths }) => (
    <>
      {entry("sound-speed", t("evidence.sound-speed"), "m/s", false)}
      {entry("sound-within", t("evidence.plus-or-minus"), "m/s", false)}
      <p>{t("evidence.or-by-echo")}</p>
      {entry("sound-thickness", t("evidence.wall-thickness"), "mm", false)}
      {entry("sound-thickness-within", t("evidence.plus-or-minus"), "mm", false)}
      {entry("sound-time", t("evidence.flight-time"), "µs", false)}
      {entry("sound-time-within", t("evidence.plus-or-minus"), "µs", false)}
      {choice(
        "sound-paths",
        t("evidence.sound-path"),
        paths.map((count) => ({ value: `${count}`, label: t(`test.path.${count}`) })),
      )}
    </>
  ),
  colour: ({ colour, t }) => colour("colour-colour", t("evidence.colour-as-it-is")),
  worn: ({ colour, t }) => colour("worn-colour", t("evidence.colour-where-worn")),
  scratch: ({ colour, agreed, t }) => (
    <>
      {colour("scratch-colour", t("evidence.colour-under-scratch"))}
      {agreed("scratch-agreed", t("evidence.agrees-to-mark"))}
    </>
  ),
  touch: ({ choice, entry, agreed, t }) => (
    <>
      {choice("touch-metal", t("evidence.reads-like"), [
        { value: "gold", label: t("evidence.gold") },
        { value: "silver", label: t("evidence.silver") },
        { value: "neither", label: t("evidence.neither") },
      ])}
      {entry("touch-low", t("evidence.from"), "‰", false)}
      {entry("touch-high", t("evidence.to"), "‰", false)}
      {entry("touch-by", t("evidence.touch-read-by"))}
      {agreed("touch-agreed", t("evidence.agrees-to-acid"))}
    </>
  ),
};
