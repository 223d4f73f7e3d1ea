import { z } from "zod";
import { words } from "../ledger/shapes.ts";

const role = z.string().max(40);
/** the id of a person; name and initials stand where the person was added */
const person = words;
/** the address that asked; "this machine" is left out */
const from = words.optional();
/** who did it, by initials; left out: somebody at the machine itself */
const by = words.optional();

/** Who came in from the room, who was kept out, and who may come. No passphrase and nothing made of one is ever written. */
export const accessKinds = {
  "signed-in": z.strictObject({ person, initials: words, from }),
  "signed-out": z.strictObject({ person, initials: words, from }),
  /** what was typed is left out: a passphrase may be typed into the wrong entry */
  "sign-in-refused": z.strictObject({
    reason: z.enum(["wrong", "wait", "code"]),
    person: person.optional(),
    initials: words.optional(),
    from,
  }),
  "person-added": z.strictObject({ person, name: words, initials: words, role, by, from }),
  "person-removed": z.strictObject({ person, name: words, initials: words, role, by, from }),
  "person-role-changed": z.strictObject({ person, initials: words, before: role, role, by, from }),
  /** a code was made with which the person chooses a new passphrase */
  "sign-up-code-made": z.strictObject({ person, initials: words, by, from }),
  /** the person chose a passphrase with a code */
  "passphrase-chosen": z.strictObject({ person, initials: words, from }),
};
