import type { LineRecord } from "./reading.ts";
import { gradation } from "./steadiness.ts";

/** Something about a balance that a person has to look at before its readings go on as before. */
export interface Doubt {
  kind: "zero-check" | "another-balance";
  /** what happened and what to do, as a sentence */
  says: string;
  /** ISO 8601 */
  since: string;
}

/** Gaps between readings that are remembered, and how many usual ones a balance may pause before it is asked about. */
const gapsKept = 20;
const usualGaps = 3;

/** After a lost cable: is it the same balance, and is its zero still its zero? */
export interface Doubts {
  /** to be told every record; asks what the other end of the cable says it is when the cable was opened */
  hear(record: LineRecord, identify: () => string | null): void;
  open(): readonly Doubt[];
  /** a person looked and answered */
  settle(kind: Doubt["kind"]): void;
}

export function createDoubts(): Doubts {
  let doubts: Doubt[] = [];
  let identityBefore: string | null = null;
  let gradationsBefore = new Set<string>();
  let comparing = false;
  let wasSilent = false;
  let gapsMs: number[] = [];
  let readMs: number | undefined;

  /** A balance that sends every ten seconds is silent in between and was not switched off. */
  function isUsualGap(gapMs: number): boolean {
    const usual = gapsMs.toSorted((a, b) => a - b)[gapsMs.length >> 1];
    return usual !== undefined && gapMs <= usualGaps * usual;
  }
  function raise(kind: Doubt["kind"], says: string, since: string): void {
    doubts = [...doubts.filter((doubt) => doubt.kind !== kind), { kind, says, since }];
  }
  function hearReading(record: LineRecord & { reading: object }): void {
    const { unit, lastPlace } = gradation(record);
    const here = `${unit} in steps of ${lastPlace}`;
    if (comparing && gradationsBefore.size > 0 && !gradationsBefore.has(here)) {
      const before = [...gradationsBefore].join(" or ");
      raise(
        "another-balance",
        `Before the cable was lost the balance showed ${before}; what answers now shows ${here}. Is it the same balance? Nothing is taken until that is answered.`,
        record.at,
      );
    }
    comparing = false;
    const gapMs = readMs === undefined ? undefined : record.monotonicMs - readMs;
    if (wasSilent && gradationsBefore.size > 0 && !(gapMs !== undefined && isUsualGap(gapMs)))
      raise(
        "zero-check",
        "The balance was silent and speaks again. If it was switched off, its zero is a new one: check it before weighing on.",
        record.at,
      );
    wasSilent = false;
    if (gapMs !== undefined) gapsMs = [...gapsMs.slice(-gapsKept + 1), gapMs];
    readMs = record.monotonicMs;
    if (!doubts.some(({ kind }) => kind === "another-balance")) gradationsBefore.add(here);
  }

  return {
    hear(record, identify) {
      if (record.reading) {
        hearReading(record);
        return;
      }
      if (record.event.kind === "silent") wasSilent = true;
      if (record.event.kind === "open") identityBefore = identify();
      if (record.event.kind !== "back") return;
      const identity = identify();
      comparing = true;
      raise("zero-check", "The balance was gone and is back. Check its zero before weighing on.", record.at);
      if (identityBefore !== null && identity !== null && identity !== identityBefore)
        raise(
          "another-balance",
          `Before the cable was lost this port led to ${identityBefore}; now it leads to ${identity}. Is it the same balance? Nothing is taken until that is answered.`,
          record.at,
        );
      identityBefore ??= identity;
    },
    open: () => doubts,
    settle(kind) {
      doubts = doubts.filter((doubt) => doubt.kind !== kind);
      if (kind === "another-balance") {
        gradationsBefore = new Set();
        identityBefore = null;
      }
    },
  };
}
