import type { Chunk, Recording, Moment as StepMoment } from "../../../drivers/learning/recording.ts";
import type { Lot } from "./lot.ts";
import { type Manner, type Moment, plain } from "./manner.ts";

/** One reading as it was sent, with what the display showed. */
export interface Sent {
  atMs: number;
  bytes: Uint8Array;
  moment: Moment;
  step: string;
}

export interface Day {
  recording: Recording;
  sent: Sent[];
}

/** How the line behaves between balance and listener. */
export type Pace = "even" | "jitter" | "packets" | "on-key";

interface Doing {
  step: StepMoment["phase"];
  seconds: number;
  /** what is on the pan, and when it was tared, both from the start of the step */
  pan(seconds: number): number;
  tareAt?: number;
  touched?: boolean;
  reads?: boolean;
}

function doings(load: number, below: boolean): Doing[] {
  const second = Math.round(load * 0.83);
  return [
    { step: "empty", seconds: 5, pan: () => 0 },
    { step: "putting-on", seconds: 4, pan: (s) => (s < 0.7 ? 0 : load), touched: true },
    { step: "loaded", seconds: 7, pan: () => load, reads: true },
    { step: "touched", seconds: 5, pan: () => load, touched: true },
    { step: "at-rest", seconds: 7, pan: () => load, reads: true },
    { step: "taking-off", seconds: 4, pan: (s) => (s < 0.8 ? load : 0) },
    { step: "empty", seconds: 5, pan: () => 0 },
    ...(below
      ? [
          {
            step: "below-zero" as const,
            seconds: 16,
            pan: (s: number) => (s < 1 || s > 8 ? 0 : second),
            tareAt: 6,
            reads: true,
          },
        ]
      : []),
  ];
}

/**
 * A pan that creeps to its load, trembles by a digit, and calls itself at rest when it has kept still for a while. The owner
 * types what the display shows near the end of a step.
 */
export function day(
  manner: Manner,
  load: number,
  by: Lot,
  told: { below: boolean; pace?: Pace; typesBelow?: boolean },
): Day {
  const { below, pace = "even", typesBelow = below } = told;
  const everyMs = 1000 / (manner.pace ?? by.one([4, 5, 8, 10]));
  const chunks: Chunk[] = [];
  const moments: StepMoment[] = [];
  const displayed: { atMs: number; text: string; unit: string }[] = [];
  const sent: Sent[] = [];
  const recent: number[] = [];
  let gross = 0;
  let push = 0;
  let tare = 0;
  let fromMs = 0;
  let nextMs = by.whole(50, 400);
  let count = by.whole(1, 50);
  let waiting: Chunk | null = null;
  for (const { step, seconds, pan, tareAt, touched = false, reads = false } of doings(load, below)) {
    moments.push({ atMs: fromMs, phase: step });
    const untilMs = fromMs + seconds * 1000;
    let last: Sent | null = null;
    let typed = false;
    for (let atMs = fromMs; atMs < untilMs; atMs += 20) {
      const s = (atMs - fromMs) / 1000;
      if (touched && s > 1 && s < seconds - 1) push += (by.bell() * 0.06 * load - push * 0.3) * 0.1;
      else push *= 0.8;
      gross += (pan(s) - gross) * 0.07;
      if (tareAt !== undefined && Math.abs(s - tareAt) < 0.011) tare = Math.round(gross);
      const now = Math.round(gross + push + by.bell() * 0.25);
      recent.push(now);
      if (recent.length > 30) recent.shift();
      if (atMs < nextMs) continue;
      nextMs += pace === "on-key" ? by.whole(900, 2600) : everyMs;
      const still = Math.max(...recent) - Math.min(...recent) <= 3;
      count += 1;
      const moment: Moment = {
        net: now - tare,
        gross: now,
        tare,
        still,
        count,
        seconds: atMs / 1000,
        busy: /putting|touched|taking/.test(step),
      };
      const bytes = manner.message(moment);
      last = { atMs, bytes, moment, step };
      sent.push(last);
      const lateMs = pace === "jitter" ? by.whole(0, 400) : by.whole(1, 6);
      const chunk = { atMs: Math.max(atMs + lateMs, chunks.at(-1)?.atMs ?? 0), bytes };
      if (pace === "packets" && waiting === null && by.part() < 0.5) waiting = chunk;
      else {
        chunks.push(
          waiting ? { atMs: chunk.atMs, bytes: Uint8Array.from([...waiting.bytes, ...bytes]) } : chunk,
        );
        waiting = null;
      }
      const settled = step !== "below-zero" || s > 11;
      if (reads && !typed && still && settled && s > 0.6 * seconds && (step !== "below-zero" || typesBelow)) {
        typed = true;
        displayed.push({ atMs: atMs + 30, ...shownBy(manner, moment.net) });
      }
    }
    if (reads && !typed && last && (step !== "below-zero" || typesBelow))
      displayed.push({ atMs: last.atMs + 10, ...shownBy(manner, last.moment.net) });
    fromMs = untilMs;
  }
  if (waiting) chunks.push(waiting);
  return { recording: { chunks, moments, displayed }, sent };
}

const shownBy = ({ shows, decimals, unit }: Manner, steps: number) =>
  shows ? shows(steps) : { text: plain(steps, decimals), unit };

/** What a reading of these steps must be. */
export const readAs = ({ reads, decimals, unit }: Manner, steps: number) =>
  reads ? reads(steps) : { text: plain(steps, decimals), unit };
