import { type Code, message } from "../../../calibration/message.ts";
import { readQuantity } from "../../../calibration/typed-quantity.ts";
import type { FieldError } from "../../../views/forms.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { decimalMark } from "../../../views/numbers.ts";
import { type Evidence, type EvidenceKind, marking } from "../../conformity/evidence/evidence.ts";
import { evidenceRanges, msPerMOfCopper, recordedEvidence } from "../../conformity/evidence/recorded.ts";
import { soundSpeed, wallPaths } from "../../conformity/evidence/sound-speed.ts";

export interface FieldProblem {
  fieldId: string;
  error: FieldError;
}

/** Evidence as a form gives it, with who made a test that harms; or every entry that was refused. */
export type TypedEvidence =
  | { evidence: Evidence; by?: string; words?: string }
  | { problems: readonly FieldProblem[] };

interface Range {
  from: number;
  to: number;
  unit: string;
}

/** Reads typed numbers one after another and gathers what was refused. */
export class NumberEntries {
  readonly problems: FieldProblem[] = [];
  readonly #fields: Readonly<Record<string, string>>;
  readonly #locale: Locale;

  constructor(fields: Readonly<Record<string, string>>, locale: Locale) {
    this.#fields = fields;
    this.#locale = locale;
  }

  /** the decimal text as typed, with a point; empty after a refusal */
  text(name: string, what: Code, range: Range): string {
    const typed = readQuantity(this.#fields[name] ?? "", { ...range, mark: decimalMark(this.#locale) });
    if (typed.kind === "number") return typed.text;
    this.refuse(name, message("form.entry", { what: message(what), says: typed.says }));
    return "";
  }

  number(name: string, what: Code, range: Range): number {
    return Number(this.text(name, what, range));
  }

  /** a number, or undefined when nothing was typed */
  optional(name: string, what: Code, range: Range): number | undefined {
    return (this.#fields[name] ?? "").trim() === "" ? undefined : this.number(name, what, range);
  }

  /** the limits a person gives as "give or take" are taken as rectangular: u = a/√3 (JCGM 100:2008, 4.3.7) */
  within(name: string, what: Code, unit: string): number {
    return this.number(name, what, { from: 0, to: 100_000, unit }) / Math.sqrt(3);
  }

  refuse(name: string, error: FieldError): void {
    this.problems.push({ fieldId: name, error });
  }
}

/** The evidence that the form of one test states. Numbers may be typed with comma or point. */
export function typedEvidence(
  kind: EvidenceKind,
  fields: Readonly<Record<string, string>>,
  locale: Locale,
): TypedEvidence {
  const numbers = new NumberEntries(fields, locale);
  const by = (fields[`${kind}-by`] ?? "").trim();
  const words = (fields[`${kind}-words`] ?? "").trim();
  const found = entriesOf(kind, fields, numbers);
  if (marking.has(kind) && fields[`${kind}-agreed`] !== "yes")
    numbers.refuse(`${kind}-agreed`, message("evidence.refused.not-agreed"));
  if (kind === "touch" && by === "") numbers.refuse("touch-by", message("evidence.refused.touch-unread"));
  if (numbers.problems.length > 0) return { problems: numbers.problems };
  const evidence = recordedEvidence({ kind, ...found });
  if (evidence === null)
    return {
      problems: [{ fieldId: `${kind}-${choices[kind]}`, error: message("evidence.refused.nothing-chosen") }],
    };
  return { evidence, ...(by === "" ? {} : { by }), ...(words === "" ? {} : { words }) };
}

/** The entry of each test that is a choice, by the end of its name. */
const choices: Record<EvidenceKind, string> = {
  colour: "colour",
  worn: "colour",
  magnet: "shows",
  ring: "heard",
  scratch: "colour",
  touch: "metal",
  conductivity: "percent",
  sound: "speed",
  outline: "mass",
};

function entriesOf(
  kind: EvidenceKind,
  fields: Readonly<Record<string, string>>,
  numbers: NumberEntries,
): object {
  switch (kind) {
    case "magnet":
      return { shows: fields["magnet-shows"] };
    case "ring":
      return { heard: fields["ring-heard"] };
    case "colour":
    case "worn":
    case "scratch":
      return { colour: fields[`${kind}-colour`] };
    case "conductivity":
      return conductivityFrom(fields, numbers);
    case "sound":
      return soundFrom(fields, numbers);
    case "outline":
      return {
        massG: numbers.number("outline-mass", "form.field.mass", evidenceRanges.massG),
        outlineCm3: numbers.number("outline-volume", "form.field.volume", evidenceRanges.outlineCm3),
        uOutlineCm3: numbers.within("outline-within", "form.field.within", "cm³"),
      };
    case "touch":
      return { metal: fields["touch-metal"], ...touchRange(numbers) };
  }
}

/** The conductivity as the probe shows it, in % IACS or MS/m. */
function conductivityFrom(fields: Readonly<Record<string, string>>, numbers: NumberEntries): object {
  const siemens = fields["conductivity-unit"] === "ms-per-m";
  const range = siemens ? evidenceRanges.msPerM : evidenceRanges.percentIacs;
  const toIacs = siemens ? 100 / msPerMOfCopper : 1;
  return {
    percentIacs: toIacs * numbers.number("conductivity-percent", "form.field.conductivity", range),
    uPercentIacs: toIacs * numbers.within("conductivity-within", "form.field.within", range.unit),
    celsius: numbers.number("conductivity-celsius", "form.field.temperature", evidenceRanges.celsius),
  };
}

const echoEntries = ["sound-thickness", "sound-thickness-within", "sound-time", "sound-time-within"];

/** The speed as a gauge shows it, or worked out from a thickness and a time of flight. */
function soundFrom(fields: Readonly<Record<string, string>>, numbers: NumberEntries): object {
  const typed = (name: string) => (fields[name] ?? "").trim() !== "";
  if (!echoEntries.some(typed))
    return {
      mPerS: numbers.number("sound-speed", "form.field.sound-speed", evidenceRanges.mPerS),
      uMPerS: numbers.within("sound-within", "form.field.within", "m/s"),
    };
  if (typed("sound-speed")) numbers.refuse("sound-speed", message("evidence.refused.speed-and-echo"));
  const paths = wallPaths.find((count) => `${count}` === fields["sound-paths"]);
  if (paths === undefined) numbers.refuse("sound-paths", message("evidence.refused.no-paths"));
  const echo = {
    thicknessMm: numbers.number("sound-thickness", "form.field.thickness", evidenceRanges.wallMm),
    uThicknessMm: numbers.within("sound-thickness-within", "form.field.within", "mm"),
    microseconds: numbers.number("sound-time", "form.field.time-of-flight", evidenceRanges.microseconds),
    uMicroseconds: numbers.within("sound-time-within", "form.field.within", "µs"),
    paths: paths ?? 1,
  };
  if (numbers.problems.length > 0) return {};
  const speed = soundSpeed(echo);
  const { from, to } = evidenceRanges.mPerS;
  if (speed.mPerS < from || speed.mPerS > to)
    numbers.refuse(
      "sound-time",
      message("evidence.refused.no-metal-carries", {
        thickness_mm: echo.thicknessMm,
        paths: echo.paths,
        time_us: echo.microseconds,
        speed_m_s: speed.mPerS,
        from,
        to,
      }),
    );
  return { ...speed, echo };
}

function touchRange(numbers: NumberEntries): { permille?: { low: number; high: number } } {
  const low = numbers.optional("touch-low", "form.field.lower-fineness", evidenceRanges.permille);
  const high = numbers.optional("touch-high", "form.field.higher-fineness", evidenceRanges.permille);
  if (low === undefined && high === undefined) return {};
  if (low === undefined || high === undefined)
    numbers.refuse(low === undefined ? "touch-low" : "touch-high", message("evidence.refused.one-end"));
  else if (low > high) numbers.refuse("touch-low", message("evidence.refused.backwards", { low, high }));
  return { permille: { low: low ?? 0, high: high ?? 0 } };
}
