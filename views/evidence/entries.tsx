import type { EvidenceKind } from "../../server/conformity/evidence/evidence.ts";
import { wallPaths } from "../../server/conformity/evidence/sound-speed.ts";
import { colours } from "../../server/metals/metal.ts";
import { Check, errorsOf, Field, type FieldError, Select } from "../forms.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { told } from "../words/told.ts";

/** What was typed into the form of one test, and what was refused of it. */
export interface TypedEntries {
  values: Readonly<Record<string, string>>;
  problems: readonly { fieldId: string; error: FieldError }[];
}

/** Entries of one test; each is named by its kind and the quantity, so that no two on the page share an id. */
export function TestEntries({ kind, typed }: { kind: EvidenceKind; typed: TypedEntries }) {
  const locale = useLocale();
  const { evidence: say, metal } = useWords();
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
    <Select name={name} label={label} options={options} value={values[name] ?? ""} empty={say.choose} />
  );
  switch (kind) {
    case "outline":
      return (
        <>
          {entry("outline-mass", say.mass, "g")}
          {entry("outline-volume", say.outlineVolume, "cm³")}
          {entry("outline-within", say.plusOrMinus, "cm³")}
        </>
      );
    case "magnet":
      return choice("magnet-shows", say.magnetHeld, [
        { value: "none", label: say.nothing },
        { value: "weak", label: say.driftsSlowly },
        { value: "strong", label: say.pulls },
      ]);
    case "ring":
      return (
        <>
          {choice("ring-heard", say.ringTapped, [
            { value: "clear", label: say.ringsClear },
            { value: "dull", label: say.soundsDull },
          ])}
          {entry("ring-words", say.inWords, undefined, false)}
        </>
      );
    case "conductivity":
      return (
        <>
          {entry("conductivity-percent", say.conductivity, "% IACS")}
          {entry("conductivity-within", say.plusOrMinus, "% IACS")}
          {entry("conductivity-celsius", say.pieceTemperature, "°C")}
        </>
      );
    case "sound":
      return (
        <>
          {entry("sound-speed", say.soundSpeed, "m/s", false)}
          {entry("sound-within", say.plusOrMinus, "m/s", false)}
          <p>{say.orByEcho}</p>
          {entry("sound-thickness", say.wallThickness, "mm", false)}
          {entry("sound-thickness-within", say.plusOrMinus, "mm", false)}
          {entry("sound-time", say.flightTime, "µs", false)}
          {entry("sound-time-within", say.plusOrMinus, "µs", false)}
          {choice(
            "sound-paths",
            say.soundPath,
            wallPaths.map(({ count, says }) => ({ value: `${count}`, label: told(says, locale) })),
          )}
        </>
      );
    case "scratch":
      return (
        <>
          {choice(
            "scratch-colour",
            say.colourUnderScratch,
            colours.map((value) => ({ value, label: metal.colours[value] ?? value })),
          )}
          {agreed("scratch-agreed", say.agreesToMark)}
        </>
      );
    case "touch":
      return (
        <>
          {choice("touch-metal", say.readsLike, [
            { value: "gold", label: say.gold },
            { value: "silver", label: say.silver },
            { value: "neither", label: say.neither },
          ])}
          {entry("touch-low", say.from, "‰", false)}
          {entry("touch-high", say.to, "‰", false)}
          {entry("touch-by", say.touchReadBy)}
          {agreed("touch-agreed", say.agreesToAcid)}
        </>
      );
  }

  function agreed(name: string, label: string) {
    return <Check name={name} label={label} required checked={values[name] === "yes"} />;
  }
}
