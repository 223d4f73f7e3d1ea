import { z } from "zod";
import { isSourceId, type Provenance, type Rule, rules, type SourceId } from "./provenance.ts";

const source = z.custom<SourceId>((id) => typeof id === "string" && isSourceId(id), {
  error: ({ input }) => `no source "${input}" in sources.json`,
});

/** A value of a data file with exactly one provenance: seen in named sources, computed by a rule, or from memory. */
export const figure = <T extends z.ZodType>(value: T) =>
  z
    .strictObject({
      value,
      seen: z.array(source).min(1).optional(),
      computed: z.enum(rules).optional(),
      from_memory: z.literal(true).optional(),
    })
    .refine(
      ({ seen, computed, from_memory }) =>
        [seen, computed, from_memory].filter((one) => one !== undefined).length === 1,
      { error: 'right is exactly one of "seen", "computed" and "from_memory"' },
    );

/** Where such a value comes from. */
export function provenanceOf({
  seen,
  computed,
}: {
  seen?: SourceId[] | undefined;
  computed?: Rule | undefined;
}): Provenance {
  if (seen) return { kind: "seen", sources: seen };
  return computed ? { kind: "computed", rule: computed } : { kind: "from-memory" };
}
