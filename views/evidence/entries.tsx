import type { Colour } from "../../server/alloys/metal.ts";
import type { EvidenceKind } from "../../server/evidence/evidence.ts";
import { wallPaths } from "../../server/evidence/sound-speed.ts";
import { Check, Field, type FieldError, Select } from "../forms.tsx";

/** What was typed into the form of one test, and what was refused of it. */
export interface TypedEntries {
  values: Readonly<Record<string, string>>;
  problems: readonly { fieldId: string; error: FieldError }[];
}

export const colours: readonly Colour[] = [
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

/** Entries of one test; each is named by its kind and the quantity, so that no two on the page share an id. */
export function TestEntries({ kind, typed }: { kind: EvidenceKind; typed: TypedEntries }) {
  const { values, problems } = typed;
  const entry = (name: string, label: string, after?: string, required = true) => {
    const error = problems.find(({ fieldId }) => fieldId === name)?.error;
    return (
      <Field
        kind={after === undefined ? "text" : after === "‰" ? "whole" : "decimal"}
        name={name}
        label={label}
        value={values[name] ?? ""}
        required={required}
        {...(after === undefined ? {} : { after })}
        {...(error === undefined ? {} : { error })}
      />
    );
  };
  const choice = (name: string, label: string, options: { value: string; label: string }[]) => (
    <Select name={name} label={label} options={options} value={values[name] ?? ""} empty="choose" />
  );
  switch (kind) {
    case "outline":
      return (
        <>
          {entry("outline-mass", "Mass", "g")}
          {entry("outline-volume", "Volume of a box or cylinder that holds it", "cm³")}
          {entry("outline-within", "give or take", "cm³")}
        </>
      );
    case "magnet":
      return choice("magnet-shows", "Held near, away from the balance", [
        { value: "none", label: "nothing" },
        { value: "weak", label: "drifts slowly" },
        { value: "strong", label: "pulls" },
      ]);
    case "ring":
      return (
        <>
          {choice("ring-heard", "Hung up and tapped", [
            { value: "clear", label: "rings clear" },
            { value: "dull", label: "sounds dull" },
          ])}
          {entry("ring-words", "In words, if you like", undefined, false)}
        </>
      );
    case "conductivity":
      return (
        <>
          {entry("conductivity-percent", "Conductivity", "% IACS")}
          {entry("conductivity-within", "give or take", "% IACS")}
          {entry("conductivity-celsius", "Temperature of the piece", "°C")}
        </>
      );
    case "sound":
      return (
        <>
          {entry("sound-speed", "Longitudinal speed through the thickness", "m/s", false)}
          {entry("sound-within", "give or take", "m/s", false)}
          <p>Or from an echo, the probe's own delay taken off:</p>
          {entry("sound-thickness", "Thickness where it was held", "mm", false)}
          {entry("sound-thickness-within", "give or take", "mm", false)}
          {entry("sound-time", "Time of flight", "µs", false)}
          {entry("sound-time-within", "give or take", "µs", false)}
          {choice(
            "sound-paths",
            "How the sound went",
            wallPaths.map(({ count, says }) => ({ value: `${count}`, label: says })),
          )}
        </>
      );
    case "scratch":
      return (
        <>
          {choice("scratch-colour", "Colour under the scratch", asOptions(colours))}
          {agreed("scratch-agreed", "The owner agrees to a mark that stays")}
        </>
      );
    case "touch":
      return (
        <>
          {choice("touch-metal", "Reads like", asOptions(["gold", "silver", "neither"]))}
          {entry("touch-low", "from", "‰", false)}
          {entry("touch-high", "to", "‰", false)}
          {entry("touch-by", "Read by (a trained person)")}
          {agreed("touch-agreed", "The owner agrees; goggles, gloves and a fume cupboard are in use")}
        </>
      );
  }

  function agreed(name: string, label: string) {
    return <Check name={name} label={label} required checked={values[name] === "yes"} />;
  }
}
