import type { Chunk, Moment, Phase, Recording } from "../../../drivers/learning/recording.ts";
import type { InventedFormat } from "./invented-format.ts";
import { type Sent, sentBy } from "./invented-line.ts";
import type { Chance } from "./seeded-random.ts";

export interface HalfMinute {
  recording: Recording;
  /** every reading in order, with what it means */
  sent: Sent[];
}

export interface Doings {
  steps: readonly { phase: Phase; seconds: number }[];
  /** mass put on, in steps of the last decimal */
  loadSteps: number;
}

/** What an owner is asked to do. */
export const usualSteps: Doings["steps"] = [
  { phase: "empty", seconds: 5 },
  { phase: "putting-on", seconds: 3 },
  { phase: "loaded", seconds: 6 },
  { phase: "touched", seconds: 4 },
  { phase: "settled", seconds: 6 },
  { phase: "taking-off", seconds: 3 },
  { phase: "empty", seconds: 5 },
];

/** Milliseconds of one step of the pan. */
const tick = 10;

/**
 * A pan that follows load and finger with a delay, with draught and rounding: the number runs and settles within about
 * two seconds. The balance itself says that it rests when its last readings lie within three steps. The owner is up
 * to 0.8 s late. The listener opens in the middle of a line, and bytes come in packets.
 */
export function halfMinute(
  format: InventedFormat,
  { steps: doings, loadSteps }: Doings,
  by: Chance,
): HalfMinute {
  const intervalMs = 1000 / format.linesPerSecond;
  const moments: Moment[] = [];
  const acts: { atMs: number; phase: Phase; untilMs: number }[] = [];
  let endMs = 0;
  for (const { phase, seconds } of doings) {
    moments.push({ atMs: endMs, phase });
    acts.push({ atMs: endMs + by.between(100, 800), phase, untilMs: endMs + seconds * 1000 });
    endMs += seconds * 1000;
  }
  const unrest = by.pick([0.2, 0.4, 0.7]);
  const delayMs = by.between(120, 350);
  const markMs = Math.max(by.between(300, 900), 1.5 * intervalMs);
  const recent: { atMs: number; steps: number }[] = [];
  const chunks: Chunk[] = [];
  const sent: Sent[] = [];
  let shown = 0;
  let finger = 0;
  let push = 0;
  let nextMs = by.between(0, intervalMs);
  for (let atMs = 0; atMs < endMs; atMs += tick) {
    const act = acts.findLast((a) => a.atMs <= atMs);
    const phase = act?.phase ?? "empty";
    const hand =
      phase === "touched" ||
      ((phase === "putting-on" || phase === "taking-off") && act!.untilMs - atMs > 900);
    if (!hand) push = 0;
    else if (by.yes(0.06)) push = by.between(0.01, 0.3) * loadSteps;
    finger += (push - finger) * (tick / 80);
    shown += (targetOf(phase, loadSteps) + finger - shown) * (tick / delayMs);
    recent.push({ atMs, steps: Math.round(shown + unrest * by.normal()) });
    if (recent.length > 200) recent.shift();
    if (atMs < nextMs) continue;
    nextMs += format.onKey ? by.between(350, 900) : intervalMs * by.between(0.96, 1.04);
    const steps = Math.round(shown + unrest * by.normal());
    const range = rangeOf(recent, atMs, markMs);
    const moving = range > 3;
    const nearly = moving && range < 12;
    const over = phase === "overloaded" && atMs - act!.atMs > 300;
    const reading = sentBy(format, { steps, moving, nearly, over, index: sent.length + 1 });
    reading.lines.forEach((line, i) => {
      const spoiled = by.yes(format.noise);
      if (spoiled) reading.means = null;
      chunks.push(...packets(spoiled ? spoil(line, by) : line, atMs + 9 * i, by));
    });
    sent.push(reading);
  }
  const first = chunks[0]!;
  chunks[0] = { ...first, bytes: first.bytes.subarray(by.whole(0, first.bytes.length - 1)) };
  sent[0]!.means = null;
  return { recording: { chunks, moments }, sent };
}

function rangeOf(recent: readonly { atMs: number; steps: number }[], atMs: number, windowMs: number): number {
  // The balance weighs ten times a second, however seldom it sends.
  const seen = recent.filter((r) => atMs - r.atMs <= windowMs && r.atMs % 100 === 0).map((r) => r.steps);
  return seen.length === 0 ? 0 : Math.max(...seen) - Math.min(...seen);
}

function targetOf(phase: Phase, loadSteps: number): number {
  if (phase === "below-zero") return -Math.round(0.4 * loadSteps);
  if (phase === "overloaded") return 5 * loadSteps;
  return phase === "empty" || phase === "taking-off" ? 0 : loadSteps;
}

function packets(line: Uint8Array, atMs: number, by: Chance): Chunk[] {
  if (line.length < 2 || !by.yes(0.15)) return [{ atMs: atMs + 4, bytes: line }];
  const cut = by.whole(1, line.length - 1);
  return [
    { atMs: atMs + 2, bytes: line.subarray(0, cut) },
    { atMs: atMs + 8, bytes: line.subarray(cut) },
  ];
}

function spoil(line: Uint8Array, by: Chance): Uint8Array {
  const at = by.whole(0, line.length - 1);
  if (by.yes(0.5)) return line.filter((_, i) => i !== at);
  const changed = Uint8Array.from(line);
  changed[at] = by.whole(0, 255);
  return changed;
}
