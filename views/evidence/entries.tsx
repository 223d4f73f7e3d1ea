import type { EvidenceKind } from "../../server/conformity/evidence/evidence.ts";
import { wallPaths } from "../../server/conformity/evidence/sound-speed.ts";
import { colours } from "../../server/metals/metal.ts";
import { Check, errorsOf, Field, type FieldError, Select } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { told } from "../words/told.ts";

/** What was typed into the form of one test, and what was refused of it. */
export interface TypedEntries {
  values: Readonly<Record<string, string>>;
  problems: readonly { fieldId: string; error: FieldError }[];
}

/** Entries of one test; each is named by its kind and the quantity, so that no two on the page share an id. */
export function TestEntries({ kind, typed }: { kind: EvidenceKind; typed: TypedEntries }) {
  const locale = useLocale();
  const t = useTell();
  const { values, problems } = typed;
  const errorOf = errorsOf(problems);
  const entry = (name: string, label: string, after?: string, required = true) => (
    <Field
      kind={after === undefined ? "text" : after === "‰" ? "whole" : "decimal"}
      name={name}
      label={label}
      value={values[name] ?? ""}
      required={required}
      {...(after === undefined ? {} : { after })}
      {...errorOf(name)}
    />
  );
  const choice = (name: string, label: string, options: { value: string; label: string }[]) => (
    <Select
      name={name}
      label={label}
      options={options}
      value={values[name] ?? ""}
      empty={t("evidence.choose")}
    />
  );
  switch (kind) {
    case "outline":
      return (
        <>
          {entry("outline-mass", t("evidence.mass"), "g")}
          {entry("outline-volume", t("evidence.outline-volume"), "cm³")}
          {entry("outline-within", t("evidence.plus-or-minus"), "cm³")}
        </>
      );
    case "magnet":
      return choice("magnet-shows", t("evidence.magnet-held"), [
        { value: "none", label: t("evidence.nothing") },
        { value: "weak", label: t("evidence.drifts-slowly") },
        { value: "strong", label: t("evidence.pulls") },
      ]);
    case "ring":
      return (
        <>
          {choice("ring-heard", t("evidence.ring-tapped"), [
            { value: "clear", label: t("evidence.rings-clear") },
            { value: "dull", label: t("evidence.sounds-dull") },
          ])}
          {entry("ring-words", t("evidence.in-words"), undefined, false)}
        </>
      );
    case "conductivity":
      return (
        <>
          {entry("conductivity-percent", t("evidence.conductivity"), "% IACS")}
          {entry("conductivity-within", t("evidence.plus-or-minus"), "% IACS")}
          {entry("conductivity-celsius", t("evidence.piece-temperature"), "°C")}
        </>
      );
    case "sound":
      return (
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
            wallPaths.map(({ count, says }) => ({ value: `${count}`, label: told(says, locale) })),
          )}
        </>
      );
    case "scratch":
      return (
        <>
          {choice(
            "scratch-colour",
            t("evidence.colour-under-scratch"),
            colours.map((value) => ({ value, label: t(`metal-page.colours.${value}`) ?? value })),
          )}
          {agreed("scratch-agreed", t("evidence.agrees-to-mark"))}
        </>
      );
    case "touch":
      return (
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
      );
  }

  function agreed(name: string, label: string) {
    return <Check name={name} label={label} required checked={values[name] === "yes"} />;
  }
}
