import { type Profile, profileSchema } from "./profile.ts";
import { checkProfile } from "./samples.ts";

export type Imported = { profile: Profile; refused?: never } | { refused: string; profile?: never };

/** A profile as text to be kept or handed on. */
export function exportProfile(profile: Profile): string {
  return `${JSON.stringify(profile, null, 2)}\n`;
}

/** Reads a profile from text. Refuses, with words, what is no profile and what fails its own sample lines. */
export function importProfile(text: string): Imported {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return {
      refused: `This is not a profile: it is no JSON (${(error as Error).message}). Choose a file that was exported as a profile.`,
    };
  }
  const format = typeof json === "object" && json !== null && "format" in json ? json.format : undefined;
  if (format !== 1)
    return {
      refused: `This profile says format ${JSON.stringify(format) ?? "nothing"}; this version reads format 1. Learn the balance again, or update the bench.`,
    };
  const parsed = profileSchema.safeParse(json);
  if (!parsed.success) {
    const first = parsed.error.issues[0]!;
    return {
      refused: `This profile is damaged at ${first.path.join(".") || "its top"}: ${first.message}. Export it again where it came from, or learn the balance again.`,
    };
  }
  const flaw = flawOf(parsed.data);
  if (flaw) return { refused: flaw };
  const { passed, failures } = checkProfile(parsed.data);
  if (!passed)
    return {
      refused: `This profile does not read its own sample lines: ${failures[0]} Learn the balance again.`,
    };
  return { profile: parsed.data };
}

/** What the schema cannot say. */
function flawOf({ weight, others }: Profile): string | null {
  if (weight.filter((part) => part.is === "number").length !== 1)
    return "This profile is damaged: its weight line must have exactly one number. Learn the balance again.";
  if (others.some(({ line }) => line.some((part) => part.is === "number" || part.is === "mark")))
    return "This profile is damaged: a line without a weight carries a number or a mark. Learn the balance again.";
  return null;
}
