import { type Message, message } from "../../calibration/message.ts";
import sources from "./data/sources.json" with { type: "json" };

/** The rules by which figures of the data files are computed; each has its text under `metal.rule.…`. */
export const rules = [
  "as-its-element",
  "between-cupronickels",
  "core-and-skin",
  "element-itself",
  "extremes-over-recipes",
  "first-recipe",
  "fitted-to-points",
  "iacs-from-resistivity",
  "lattice-constant",
  "lead-antimony-formula",
  "middle-of-band",
  "mixture-law",
  "recipe-band",
  "sintered-96-percent",
  "sintered-98.5-percent",
] as const;
export type Rule = (typeof rules)[number];

export type SourceId = keyof typeof sources;

/** True for the id of a source in data/sources.json. */
export const isSourceId = (id: string): id is SourceId => Object.hasOwn(sources, id);

/**
 * Where a figure comes from: `seen` in the sources named, `computed` by a rule, recalled `from-memory`, or `stated` by
 * the owner, with a source as typed where one was asked for.
 */
export type Provenance =
  | { kind: "seen"; sources: readonly SourceId[] }
  | { kind: "computed"; rule: Rule }
  | { kind: "from-memory" }
  | { kind: "stated"; source?: string };

export const fromMemory: Provenance = { kind: "from-memory" };
export const computedBy = (rule: Rule): Provenance => ({ kind: "computed", rule });

/** Where a figure comes from, as a message. */
export function provenanceMessage(provenance: Provenance): Message {
  switch (provenance.kind) {
    case "seen":
      return message("metal.provenance.seen", { sources: provenance.sources.map((id) => sources[id]) });
    case "computed":
      return message("metal.provenance.computed", { rule: message(`metal.rule.${provenance.rule}`) });
    case "from-memory":
      return message("metal.provenance.from-memory");
    case "stated":
      return provenance.source === undefined
        ? message("metal.from.stated")
        : message("metal.provenance.stated", { source: provenance.source });
  }
}
