import type { Param } from "../../../calibration/message.ts";
import type { MadeTest } from "../../../views/evidence/index.tsx";
import type { EvidenceKind } from "../../conformity/evidence/evidence.ts";
import { foundBy, recordedEvidence } from "../../conformity/evidence/recorded.ts";
import type { Test } from "../../weighing/item.ts";
import { whenOf } from "../when.ts";

/** A test as the page tells it, with what `excludes` says of its kind; nothing for one that is not known here. */
export function madeTest(
  { entry, excluded }: Test,
  { zone, excludes }: { zone: string; excludes: (kind: EvidenceKind) => readonly Param[] },
): MadeTest[] {
  const evidence = recordedEvidence(entry.body.evidence);
  if (evidence === null) return [];
  const { words, by } = entry.body;
  return [
    {
      id: entry.id,
      kind: evidence.kind,
      found: foundBy(evidence),
      also: [words, by].filter((one) => typeof one === "string"),
      when: whenOf(entry.at, zone),
      excludes: excludes(evidence.kind),
      ...(excluded === undefined ? {} : { excluded }),
    },
  ];
}
