import { Refusal } from "../../calibration/refusal.ts";
import { type Profile, profileSchema } from "./profile.ts";
import { checkProfile } from "./samples.ts";

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
