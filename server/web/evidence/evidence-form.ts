import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { type Code, message } from "../../../calibration/message.ts";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import { type Evidence, type EvidenceKind, marking } from "../../conformity/evidence/evidence.ts";
import { evidenceRanges, msPerMOfCopper, recordedEvidence } from "../../conformity/evidence/recorded.ts";
import { soundSpeed, wallPaths } from "../../conformity/evidence/sound-speed.ts";
import { type Entries, type FieldProblem, postedForm, refuseEntry } from "../forms/form.ts";

/** Evidence as a form gives it, with who made a test that harms; or every entry that was refused. */
export type TypedEvidence =
  | { evidence: Evidence; by?: string; words?: string }
  | { problems: readonly FieldProblem[] };

type Fields = Readonly<Record<string, string>>;

interface Range {
  from: number;
  to: number;
  unit: string;
}

/** The evidence that the form of one test states. Numbers may be typed with comma or point. */
export function typedEvidence(kind: EvidenceKind, request: FastifyRequest): TypedEvidence {
  const read = postedForm(request, (entry, sent) => testForm(kind, sent, entry));
  if ("problems" in read) return read;
  const { found, ...said } = read.values;
  const evidence = recordedEvidence({ kind, ...found });
  if (evidence) return { evidence, ...said };
  return {
    problems: [{ fieldId: `${kind}-${choices[kind]}`, error: message("evidence.refused.nothing-chosen") }],
  };
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

function testForm(kind: EvidenceKind, fields: Fields, entry: Entries) {
  const by = kind === "touch" ? entry.text({ missing: message("evidence.refused.touch-unread") }) : undefined;
  const agreed = entry.choice(["yes"], { wrong: message("evidence.refused.not-agreed") });
  const said = z
    .object({
      [`${kind}-by`]: by ?? entry.maybeText(),
      [`${kind}-words`]: entry.maybeText(),
      ...(marking.has(kind) ? { [`${kind}-agreed`]: agreed } : {}),
    })
    .transform((typed) => omitUndefined({ by: typed[`${kind}-by`], words: typed[`${kind}-words`] }));
  return z.intersection(
    said,
    foundForm(kind, fields, entry).transform((found) => ({ found })),
  );
}

/** What the form of a test says was found. */
function foundForm(kind: EvidenceKind, fields: Fields, entry: Entries): z.ZodType<object> {
  const { number, typed } = entry;
  const entries = numbersOf(entry);
  switch (kind) {
    case "magnet":
      return z.object({ "magnet-shows": typed() }).transform((of) => ({ shows: of["magnet-shows"] }));
    case "ring":
      return z.object({ "ring-heard": typed() }).transform((of) => ({ heard: of["ring-heard"] }));
    case "colour":
    case "worn":
    case "scratch":
      return z.object({ [`${kind}-colour`]: typed() }).transform((of) => ({ colour: of[`${kind}-colour`] }));
    case "conductivity":
      return conductivityForm(entries, fields["conductivity-unit"] === "ms-per-m");
    case "sound":
      return echoEntries.some((name) => (fields[name] ?? "").trim() !== "")
        ? echoForm(entries, entry)
        : z
            .object({
              "sound-speed": entries.measured("form.field.sound-speed", evidenceRanges.mPerS),
              "sound-within": entries.within("m/s"),
            })
            .transform((of) => ({ mPerS: of["sound-speed"], uMPerS: of["sound-within"] }));
    case "outline":
      return z
        .object({
          "outline-mass": number({ ...evidenceRanges.massG, what: message("form.field.mass") }),
          "outline-volume": entries.measured("form.field.volume", evidenceRanges.outlineCm3),
          "outline-within": entries.within("cm³"),
        })
        .transform((of) => ({
          massG: of["outline-mass"],
          outlineCm3: of["outline-volume"],
          uOutlineCm3: of["outline-within"],
        }));
    case "touch":
      return touchForm(entry);
  }
}

/** The numbers of tests. */
export function numbersOf({ number }: Entries) {
  return {
    measured: (what: Code, range: Range) => number({ ...range, what: message(what) }),
    /** the limits a person gives as "give or take" are taken as rectangular: u = a/√3 (JCGM 100:2008, 4.3.7) */
    within: (unit: string) =>
      number({ from: 0, to: 100_000, unit, what: message("form.field.within") }).transform(
        (halfWidth) => halfWidth / Math.sqrt(3),
      ),
  };
}

type Numbers = ReturnType<typeof numbersOf>;

/** The conductivity as the probe shows it, in % IACS or MS/m. */
function conductivityForm({ measured, within }: Numbers, siemens: boolean) {
  const range = siemens ? evidenceRanges.msPerM : evidenceRanges.percentIacs;
  const toIacs = siemens ? 100 / msPerMOfCopper : 1;
  return z
    .object({
      "conductivity-percent": measured("form.field.conductivity", range),
      "conductivity-within": within(range.unit),
      "conductivity-celsius": measured("form.field.temperature", evidenceRanges.celsius),
    })
    .transform((of) => ({
      percentIacs: toIacs * of["conductivity-percent"],
      uPercentIacs: toIacs * of["conductivity-within"],
      celsius: of["conductivity-celsius"],
    }));
}

const echoEntries = ["sound-thickness", "sound-thickness-within", "sound-time", "sound-time-within"];

/** The speed worked out from a thickness and a time of flight, where no gauge shows it. */
function echoForm({ measured, within }: Numbers, { typed, choice }: Entries) {
  const paths = wallPaths.map(String);
  return z
    .object({
      "sound-speed": typed(),
      "sound-paths": choice(paths, { wrong: message("evidence.refused.no-paths") }),
      "sound-thickness": measured("form.field.thickness", evidenceRanges.wallMm),
      "sound-thickness-within": within("mm"),
      "sound-time": measured("form.field.time-of-flight", evidenceRanges.microseconds),
      "sound-time-within": within("µs"),
    })
    .transform((of, context) => {
      if (of["sound-speed"] !== "")
        refuseEntry(context, "sound-speed", message("evidence.refused.speed-and-echo"));
      const echo = {
        thicknessMm: of["sound-thickness"],
        uThicknessMm: of["sound-thickness-within"],
        microseconds: of["sound-time"],
        uMicroseconds: of["sound-time-within"],
        paths: wallPaths[paths.indexOf(of["sound-paths"])]!,
      };
      const speed = soundSpeed(echo);
      const { from, to } = evidenceRanges.mPerS;
      if (speed.mPerS < from || speed.mPerS > to)
        refuseEntry(
          context,
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
    });
}

/** A metal by its streak, with the ends of its fineness where both are told. */
function touchForm({ typed, maybeNumber }: Entries) {
  const end = (what: Code) => maybeNumber({ ...evidenceRanges.permille, what: message(what) });
  return z
    .object({
      "touch-metal": typed(),
      "touch-low": end("form.field.lower-fineness"),
      "touch-high": end("form.field.higher-fineness"),
    })
    .transform(({ "touch-metal": metal, "touch-low": low, "touch-high": high }, context) => {
      if (low === undefined && high === undefined) return { metal };
      if (low === undefined || high === undefined)
        refuseEntry(
          context,
          low === undefined ? "touch-low" : "touch-high",
          message("evidence.refused.one-end"),
        );
      else if (low > high)
        refuseEntry(context, "touch-low", message("evidence.refused.backwards", { low, high }));
      return { metal, permille: { low, high } };
    });
}
