import { median } from "../calibration/median.ts";
import { type Message, message } from "../calibration/message.ts";
import type { LineRecord } from "./reading.ts";
import { gradation } from "./steadiness.ts";

/** Something about a balance that a person has to look at before its readings go on as before. */
export interface ConnectionCheck {
  kind: "zero-check" | "another-balance";
  /** what happened and what to do */
  message: Message;
  /** ISO 8601 */
  since: string;
}

/** Gaps between readings that are remembered, and how many usual ones a balance may pause before it is asked about. */
const gapsKept = 20;
const usualGaps = 3;

/** After a lost cable, an adjustment or a key pressed on it: is it the same balance, and is its zero still its zero? */
export interface ConnectionChecks {
  /** to be told every record; asks what the other end of the cable says it is when the cable was opened */
  hear(record: LineRecord, identify: () => string | null): void;
  open(): readonly ConnectionCheck[];
  /** a person looked and answered */
  answer(kind: ConnectionCheck["kind"]): void;
}

export function createConnectionChecks(): ConnectionChecks {
  let checks: ConnectionCheck[] = [];
  let identityBefore: string | null = null;
  let gradationsBefore = new Map<string, Message>();
  let comparing = false;
  let wasSilent = false;
  const isUsualGapTo = usualGapsOf();

  function raise(kind: ConnectionCheck["kind"], text: Message, since: string): void {
    checks = [...checks.filter((check) => check.kind !== kind), { kind, message: text, since }];
  }
  function hearReading(record: LineRecord & { reading: object }): void {
    const { unit, lastPlace } = gradation(record);
    const here = `${unit} ${lastPlace}`;
    const now = message("balance.check.steps", { unit, step: lastPlace });
    if (comparing && gradationsBefore.size > 0 && !gradationsBefore.has(here)) {
      const before = { anyOf: [...gradationsBefore.values()] };
      raise("another-balance", message("balance.check.other-display", { before, now }), record.at);
    }
    comparing = false;
    const isUsual = isUsualGapTo(record.monotonicMs);
    if (wasSilent && gradationsBefore.size > 0 && !isUsual)
      raise("zero-check", message("balance.check.zero-after-silence"), record.at);
    wasSilent = false;
    if (!checks.some(({ kind }) => kind === "another-balance")) gradationsBefore.set(here, now);
  }

  return {
    hear(record, identify) {
      if (record.reading) {
        hearReading(record);
        return;
      }
      if (record.event.kind === "silent") wasSilent = true;
      if (record.event.kind === "notice")
        raise("zero-check", message("balance.check.after-notice", { notice: record.event }), record.at);
      if (record.event.kind === "open") identityBefore = identify();
      if (record.event.kind !== "back") return;
      const identity = identify();
      comparing = true;
      raise("zero-check", message("balance.check.zero-after-loss"), record.at);
      if (identityBefore !== null && identity !== null && identity !== identityBefore)
        raise(
          "another-balance",
          message("balance.check.other-device", { before: identityBefore, now: identity }),
          record.at,
        );
      identityBefore ??= identity;
    },
    open: () => checks,
    answer(kind) {
      checks = checks.filter((check) => check.kind !== kind);
      if (kind === "another-balance") {
        gradationsBefore = new Map();
        identityBefore = null;
      }
    },
  };
}

/** Tells of each reading, by its time, whether it came as usual: a balance that sends every ten seconds is silent in between. */
function usualGapsOf(): (monotonicMs: number) => boolean {
  let gapsMs: number[] = [];
  let readMs: number | undefined;
  return (monotonicMs) => {
    const gapMs = readMs === undefined ? undefined : monotonicMs - readMs;
    readMs = monotonicMs;
    if (gapMs === undefined) return false;
    const usual = median(gapsMs);
    gapsMs = [...gapsMs.slice(-gapsKept + 1), gapMs];
    return gapMs <= usualGaps * usual;
  };
}
