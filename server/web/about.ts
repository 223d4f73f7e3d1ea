import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { Refusal } from "../../calibration/refusal.ts";
import { type Entries, formIn } from "./forms/form.ts";

/** What the form of a page is about, and how many entries about it the page had seen. */
export interface Seen {
  subject: string;
  seen: number;
}

const aboutForm = ({ typed }: Entries) =>
  z.object({ subject: typed(), version: typed(), lotVersion: typed() });

/** What a form names: its subject and the version its page saw. Throws Refusal when it names none. */
export function aboutIn(request: FastifyRequest): Seen {
  const { subject, version } = formIn(request, aboutForm);
  if (subject === "") throw new Refusal("form.about-missing");
  return { subject, seen: seenIn(version) };
}

/** The version that the page of a form saw of the subject its address names. Throws Refusal when it names none. */
export function seenOf(subject: string, request: FastifyRequest): Seen {
  return { subject, seen: seenIn(formIn(request, aboutForm).version) };
}

/** The same of a lot, on a page that is about a piece of it too. */
export function lotSeenOf(subject: string, request: FastifyRequest): Seen {
  return { subject, seen: seenIn(formIn(request, aboutForm).lotVersion) };
}

function seenIn(version: string): number {
  if (!/^\d{1,9}$/.test(version)) throw new Refusal("form.about-missing");
  return Number(version);
}
