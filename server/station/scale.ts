import type { Message } from "../../calibration/message.ts";
import type { MassUnit } from "../../calibration/units.ts";
import type { AutoCaptureOptions, AutoStep } from "../../drivers/auto-capture.ts";
import type { Reading } from "../weighing/taken-reading.ts";

/** A reading of the last seconds: how long ago, s, and g. */
export interface TracePoint {
  secondsAgo: number;
  grams: number;
}

/** What the balance shows at this moment, in its own unit and digits. */
export type Live =
  | {
      state: "reading";
      text: string;
      unit: MassUnit;
      stability: "stable" | "moving" | "unknown";
      at: string;
      /** in so many s a creep of the load will be excluded, if nothing comes */
      watchesForSeconds?: number;
      /** what it showed lately, oldest first */
      trace?: readonly TracePoint[];
    }
  | { state: "event"; message: Message; at: string }
  | { state: "silent"; forSeconds: number; message: Message; last?: { text: string; unit: MassUnit } };

/** The same reading, without how long its load is watched. */
export function unwatching(live: Extract<Live, { state: "reading" }>): Live {
  const { watchesForSeconds: _, ...others } = live;
  return others;
}

/** A reading the balance gave after it was asked for, with the lines it came from. */
export type TakenReading = Reading;

/** A capture under way. `settled` rejects with Refusal when the balance stays silent, is lost, or it is cancelled. */
export interface Taking {
  settled: Promise<TakenReading>;
  byHand(): void;
  cancel(): void;
}

/** What each load is held against before it is taken by itself. */
export type EachLoadAsked = Required<Pick<AutoCaptureOptions, "judge" | "emptyGrams">>;

/** Where taking each load by itself stands. */
export type EachLoadStep = Pick<AutoStep, "message" | "event"> & { taken?: TakenReading };

/** Something about the balance that a person has to look at, after its cable was lost and found again. */
export interface ScaleCheck {
  kind: string;
  message: Message;
  since: string;
}

/** The balance as the bench uses it: what it shows now, and taking a settled reading that arrives after the request. */
export interface Scale {
  readonly name: string;
  live(): Live;
  take(): Taking;
  /** for hands in water: takes each load at rest once, gives every step; returns the function that ends it */
  takeEach(asked: EachLoadAsked, step: (now: EachLoadStep) => void): () => void;
  /** why a capture that waits has taken nothing yet; undefined while none waits */
  waitsBecause?(): Message | undefined;
  /** what a person has to look at before weighing on */
  checks(): readonly ScaleCheck[];
  /** asks for a look at the zero, for a reason the cable does not show */
  raiseCheck(message: Message): void;
  /** a person looked at it and says that all is well */
  answerCheck(kind: string): void;
  /** calls back with g when the display moves on after a reading was taken while its load stays */
  onMoved(listener: (grams: number) => void): () => void;
  /** calls back when a creep of the load at rest is excluded */
  onCreepExcluded(listener: () => void): () => void;
  /** calls back for every line and event; returns the function that ends it */
  onLine(listener: () => void): () => void;
}
