import type { TestChoices } from "../../../views/evidence/choices.ts";
import { evidenceKinds, marking } from "../../conformity/evidence/evidence.ts";
import { wallPaths } from "../../conformity/evidence/sound-speed.ts";
import { colours } from "../../metals/metal.ts";

/** What the forms of the tests offer, on the page of a record and on the bench. */
export const testChoices: TestChoices = {
  kinds: evidenceKinds.map((kind) => ({ kind, marks: marking.has(kind) })),
  colours,
  paths: wallPaths,
};
