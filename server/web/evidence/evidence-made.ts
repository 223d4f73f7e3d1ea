import type { MadeTest } from "../../../views/evidence/index.tsx";
import { foundWords, recordedEvidence } from "../../conformity/evidence/recorded.ts";
import type { Test } from "../../weighing/item.ts";
import { whenOf } from "../when.ts";
import type { Standing } from "./evidence-standing.ts";

/** A test as the page tells it; nothing for an entry that holds no evidence known here. */
export function madeTest({ entry, excluded }: Test, { weighed }: Pick<Standing, "weighed">): MadeTest[] {
  const evidence = recordedEvidence(entry.body.evidence);
  if (evidence === null) return [];
  const { words, by } = entry.body;
  const also = [words, by].filter((one) => typeof one === "string").join(", by ");
  return [
    {
      id: entry.id,
      kind: evidence.kind,
      found: `${entry.body.test === "size" ? foundWords(evidence) : entry.body.outcome}${also === "" ? "" : ` (${also})`}`,
      when: whenOf(entry.at),
      struckOut: [...new Set(weighed.struck.filter((s) => s.by === evidence.kind).map(({ name }) => name))],
      ...(excluded === undefined ? {} : { excluded }),
    },
  ];
}
