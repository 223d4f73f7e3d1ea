import { z } from "zod";
import { Refusal } from "../../calibration/refusal.ts";
import { roles } from "./role.ts";

/** Somebody who may sign in from another device. */
export const person = z.strictObject({
  id: z.string().regex(/^[\w-]{1,40}$/),
  name: z.string().min(1).max(100),
  /** what the person signs in with; unlike those of anybody else, whatever the case */
  initials: z.string().min(1).max(8),
  role: z.enum(roles),
  /** argon2id in its encoded form; null until the person has chosen a passphrase with a code */
  passphrase: z.string().nullable(),
});
export type Person = z.infer<typeof person>;

/** Initials as they are compared: one form for each letter (NFKC), small. */
export const sameInitials = (initials: string): string => initials.normalize("NFKC").trim().toLowerCase();

/** Name and initials as they are kept. Throws Refusal at "name" or "initials" when they are none. */
export function namedPerson(typed: { name: string; initials: string }): { name: string; initials: string } {
  const name = typed.name.normalize("NFKC").trim();
  const initials = typed.initials.normalize("NFKC").trim();
  if (!/^[^\p{Cc}\p{Cs}]{1,100}$/u.test(name)) throw new Refusal("access.person.name", {}, "name");
  if (!/^[\p{L}\p{N}]{1,8}$/u.test(initials))
    throw new Refusal("access.person.initials", { typed: initials }, "initials");
  return { name, initials };
}
