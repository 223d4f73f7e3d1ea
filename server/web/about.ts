import { Refusal } from "../../calibration/refusal.ts";

/** What the form of a page is about, and how many entries about it the page had seen. */
export interface Seen {
  subject: string;
  seen: number;
}

/** What a form names: its subject and the version its page saw. Throws Refusal when it names none. */
export function aboutOf({ subject = "", version = "" }: Readonly<Record<string, string>>): Seen {
  if (subject === "") throw new Refusal("form.about-missing");
  return { subject, seen: versionIn(version) };
}

/** The version that the page of a form saw of the subject its address names. Throws Refusal when it names none. */
export function seenOf(subject: string, { version = "" }: Readonly<Record<string, string>>): Seen {
  return { subject, seen: versionIn(version) };
}

function versionIn(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new Refusal("form.about-missing");
  return Number(text);
}
