import { type Code, type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { escapeBytes, unescapeText } from "../escape.ts";
import type { EventKind, LineMeaning, Stability } from "../reading.ts";
import { createProfileCutter } from "./cutter.ts";
import { type Profile, profileSchema, type Sample } from "./profile.ts";
import { readByProfile } from "./reader.ts";
import type { Observed } from "./recording.ts";

/** Takes the parity bit off before line ends are looked for. */
const maskOf = ({ parity }: Pick<Profile, "parity">) => (parity === "none" ? 0xff : 0x7f);

/** A cutter for the stream of a balance with this profile; its lines go to `readByProfile`. */
export function cutByProfile(profile: Profile, firstLine: "drop" | "keep" = "drop") {
  return createProfileCutter(profile.ending, maskOf(profile), firstLine);
}

/** What the whole way from bytes to meaning makes of some bytes: the last meaning, or null when no line came of them. */
export function meaningOfBytes(profile: Profile, bytes: Uint8Array): LineMeaning {
  const cutter = cutByProfile(profile, "keep");
  const read = readByProfile(profile);
  const lines = [...cutter.push(bytes, 0), ...cutter.idle(10_000)];
  let last: LineMeaning = null;
  for (const line of lines) last = read(escapeBytes(line.bytes), line.bytes);
  return last;
}

/** Lines kept in a profile as its own test. */
const mostPerKind = 2;

/** Sample lines, two of every kind that the profile tells apart, with what it makes of them. */
export function samplesFrom(profile: Omit<Profile, "samples">, observed: readonly Observed[]): Sample[] {
  const whole: Profile = { ...profile, samples: [] };
  const kept = new Map<string, number>();
  const samples: Sample[] = [];
  for (const { bytes, text } of observed) {
    const meaning = meaningOfBytes(whole, bytes);
    if (meaning === null || ("event" in meaning && meaning.event.kind === "unknown-line")) continue;
    const kind = `${"reading" in meaning ? meaning.reading.stability : meaning.event.kind} ${text.replace(/[\d.,+-]+/g, "9")}`;
    const had = kept.get(kind) ?? 0;
    if (had >= mostPerKind || samples.length >= 24) continue;
    kept.set(kind, had + 1);
    samples.push(expected(escapeBytes(bytes), meaning));
  }
  return samples;
}

/** The words of format 1 for stability and for kinds of event that have other names in the program. */
const stabilityWords = { stable: "steady", moving: "moving", unknown: "not-told" } as const;
const kindWords: Partial<Record<EventKind, string>> = { error: "trouble", housekeeping: "not-a-weight" };

function expected(raw: string, meaning: Exclude<LineMeaning, null>): Sample {
  if ("event" in meaning) {
    const { kind } = meaning.event;
    return { raw, reading: null, event: kindWords[kind] ?? kind };
  }
  const { text, unit, stability } = meaning.reading;
  return { raw, reading: { text, unit, steady: stabilityWords[stability] }, event: null };
}

const stabilities: Record<NonNullable<Sample["reading"]>["steady"], Stability> = {
  steady: "stable",
  moving: "moving",
  "not-told": "unknown",
};
const eventCodes: Record<string, Code> = {
  overload: "balance.state.overload",
  underload: "balance.state.underload",
  "not-a-weight": "balance.state.housekeeping",
  "unit-missing": "balance.state.unit-missing",
  "unknown-line": "balance.state.unknown-line",
  trouble: "balance.state.error",
  damaged: "balance.state.damaged",
};

/** What a sample is read as, for people. */
export function sampleMessage({ reading, event }: Pick<Sample, "reading" | "event">): Message {
  if (!reading) {
    const code = event === null ? "profile.sample.no-line" : eventCodes[event];
    return code ? message(code) : message("learn.answer.text", { text: event ?? "" });
  }
  return message("balance.reading", {
    reading: { decimal: reading.text },
    unit: reading.unit,
    stability: message(`balance.stability.${stabilities[reading.steady]}`),
  });
}

export interface CheckResult {
  passed: boolean;
  /** one for each sample line that is no longer read as it was */
  failures: Message[];
}

/** Replays the sample lines of a profile through the way from bytes to meaning. Pure; never throws. */
export function checkProfile(profile: Profile): CheckResult {
  const failures = profile.samples.flatMap((sample) => failureOf(profile, sample) ?? []);
  return { passed: failures.length === 0, failures };
}

function failureOf(profile: Profile, sample: Sample): Message | null {
  try {
    const meaning = meaningOfBytes(profile, unescapeText(sample.raw));
    const got: Sample = meaning
      ? expected(sample.raw, meaning)
      : { raw: sample.raw, reading: null, event: null };
    if (JSON.stringify([got.reading, got.event]) === JSON.stringify([sample.reading, sample.event]))
      return null;
    const [wanted, read] = [sampleMessage(sample), sampleMessage(got)];
    return message("profile.sample.differs", { line: sample.raw, expected: wanted, read });
  } catch (error) {
    // bytes that cannot be written, in a profile that somebody edited
    if (error instanceof Refusal) return error;
    throw error;
  }
}

/** A profile as text to be kept or handed on. */
export function exportProfile(profile: Profile): string {
  return `${JSON.stringify(profile, null, 2)}\n`;
}

/** Reads a profile from text. Throws Refusal for what is no profile and for what fails its own sample lines. */
export function importProfile(text: string): Profile {
  const json = profileOf(fromJson(text));
  const format = typeof json === "object" && json !== null && "format" in json ? json.format : undefined;
  if (format !== 1) throw new Refusal("profile.format", { format: JSON.stringify(format) ?? "–" });
  const parsed = profileSchema.safeParse(json);
  if (!parsed.success)
    throw new Refusal("profile.damaged", { at: parsed.error.issues[0]?.path.join(".") || "{ }" });
  const { weight, others } = parsed.data;
  // what the schema cannot say
  if (weight.filter((part) => part.is === "number").length !== 1) throw new Refusal("profile.damaged.number");
  if (others.some(({ line }) => line.some((part) => part.is === "number" || part.is === "mark")))
    throw new Refusal("profile.damaged.other-lines");
  mustReadItsSamples(parsed.data);
  return parsed.data;
}

/** A profile alone, or within what the set-up on the command line prints. */
function profileOf(json: unknown): unknown {
  return typeof json === "object" && json !== null && "profile" in json && "reads" in json
    ? json.profile
    : json;
}

/** Throws Refusal when a profile does not read its own sample lines as they were confirmed. */
export function mustReadItsSamples(profile: Profile): void {
  const [failure] = checkProfile(profile).failures;
  if (failure) throw new Refusal("profile.samples", { failure });
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal("profile.not-json");
  }
}
