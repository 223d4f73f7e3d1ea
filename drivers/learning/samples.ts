import { escapeBytes, unescapeText } from "../escape.ts";
import type { LineMeaning } from "../reading.ts";
import { createProfileCutter } from "./cutter.ts";
import type { Observed } from "./observed.ts";
import type { Profile, Sample } from "./profile.ts";
import { readByProfile } from "./reader.ts";

/** Takes the parity bit off before line ends are looked for. */
export const maskOf = ({ parity }: Pick<Profile, "parity">) => (parity === "none" ? 0xff : 0x7f);

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
    const kind = `${"reading" in meaning ? meaning.reading.steady : meaning.event.kind} ${text.replace(/[\d.,+-]+/g, "9")}`;
    const had = kept.get(kind) ?? 0;
    if (had >= mostPerKind || samples.length >= 24) continue;
    kept.set(kind, had + 1);
    samples.push(expected(escapeBytes(bytes), meaning));
  }
  return samples;
}

function expected(raw: string, meaning: Exclude<LineMeaning, null>): Sample {
  if ("event" in meaning) return { raw, reading: null, event: meaning.event.kind };
  const { text, unit, steady } = meaning.reading;
  return { raw, reading: { text, unit, steady }, event: null };
}

export interface CheckResult {
  passed: boolean;
  /** one sentence for each sample line that is no longer read as it was */
  failures: string[];
}

/** Replays the sample lines of a profile through the way from bytes to meaning. Pure; never throws. */
export function checkProfile(profile: Profile): CheckResult {
  const failures = profile.samples.flatMap((sample) => {
    const told = (s: Sample) =>
      s.reading ? `${s.reading.text} ${s.reading.unit}, ${s.reading.steady}` : `${s.event}`;
    let got: Sample;
    try {
      const meaning = meaningOfBytes(profile, unescapeText(sample.raw));
      got = meaning ? expected(sample.raw, meaning) : { raw: sample.raw, reading: null, event: "no line" };
    } catch (error) {
      return [`The sample "${sample.raw}" cannot be turned into bytes: ${(error as Error).message}`];
    }
    return told(got) === told(sample)
      ? []
      : [`The sample "${sample.raw}" should be read as ${told(sample)}; it is read as ${told(got)}.`];
  });
  return { passed: failures.length === 0, failures };
}
