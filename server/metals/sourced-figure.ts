import { z } from "zod";
import { isSourceId, type Provenance, type Rule, rules, type SourceId } from "./provenance.ts";

const source = z.custom<SourceId>((id) => typeof id === "string" && isSourceId(id), {
  error: ({ input }) => `no source "${input}" in sources.json`,
});

/** Keys with exactly one provenance: seen in named sources, computed by a rule, or from memory. */
export const sourced = <T extends z.ZodRawShape>(keys: T) =>
  z
    .strictObject({
      ...keys,
      seen: z.array(source).min(1).optional(),
      computed: z.enum(rules).optional(),
      from_memory: z.literal(true).optional(),
    })
    .refine(
      (given) => {
        const { seen, computed, from_memory } = given as Given;
        return [seen, computed, from_memory].filter((one) => one !== undefined).length === 1;
      },
      { error: 'right is exactly one of "seen", "computed" and "from_memory"' },
    );

interface Given {
  seen?: SourceId[] | undefined;
  computed?: Rule | undefined;
  from_memory?: true | undefined;
}

/** A value of a data file with its provenance. */
export const figure = <T extends z.ZodType>(value: T) => sourced({ value });

/** Where such a value comes from. */
export function provenanceOf({ seen, computed }: Given): Provenance {
  if (seen) return { kind: "seen", sources: seen };
  return computed ? { kind: "computed", rule: computed } : { kind: "from-memory" };
}
