import { benches, clean } from "./benches.ts";
import { draws } from "./chance.ts";
import { afterEmptyPan, played, type ToldOfLoad } from "./played.ts";
import { type Bench, type Creep, type Load, streamOf } from "./stream.ts";

/** Loads of one kind on one bench. */
export interface Row {
  name: string;
  bench: Bench;
  load: Omit<Load, "mg">;
  /** the pan is empty so long before, and the noise is learned, s */
  emptySeconds: number;
}

const still = (name: string, bench: Bench, { seconds = 15, emptySeconds = 20 } = {}): Row => ({
  ...{ name, bench, emptySeconds },
  load: { seconds },
});
const creeping = (name: string, creep: Creep, bench: Bench = clean): Row => ({
  ...{ name, bench, emptySeconds: 20 },
  load: { seconds: 45, creeps: [creep] },
});
const fading = (mg: number, tauSeconds: number, bench?: Bench): Row =>
  creeping(
    `${mg < 0 ? "falls by" : "rises by"} ${Math.abs(mg)} mg, τ ${tauSeconds} s`,
    { kind: "fading", mg, tauSeconds },
    bench,
  );

/** What the README tells of stable readings: first loads that lie still, then loads that move on. */
export const rows: { still: readonly Row[]; moving: readonly Row[] } = {
  still: [
    still("noise of 0.4 d, five lines a second", clean),
    still("noise of 0.1 d", benches.quiet),
    still("mechanism that rings", benches.ringing),
    still("balance with a mark of rest", benches.marked),
    still("mark that allows 4 d", benches.looseMark),
    still("20 lines a second", benches.fast),
    still("one line a second", benches.slow, { seconds: 30 }),
    still("lines in packets of five", benches.packets),
    still("irregular, 15 % lost, 10 % twice", benches.irregular),
    still("kitchen scale, d = 0.1 g", benches.kitchen),
    still("display that counts by fives", benches.byFives),
    still("draught of 1 d, two minutes on this bench", benches.draught, { seconds: 30, emptySeconds: 120 }),
  ],
  moving: [
    ...[4, 8, 12].flatMap((tau) => [fading(4, tau), fading(-4, tau)]),
    { ...fading(4, 12, benches.looseMark), name: "rises by 4 mg, τ 12 s, mark that allows 4 d" },
    ...[8, 12, 20, 40].flatMap((tau) => [fading(1, tau), fading(-1, tau)]),
    fading(0.4, 12),
    fading(-0.4, 12),
    creeping("2 mg of bubbles leave one by one in 25 s", {
      kind: "bubbles",
      mg: 2,
      count: 4,
      withinSeconds: 25,
    }),
    creeping("a film of 2 mg drains", { kind: "film", mg: 2, tauSeconds: 3 }),
    creeping("falls by 0.3 mg/s for ever", { kind: "line", mgPerSecond: -0.3 }),
  ],
};

/** So many loads, each on a bench of its own with a seed of its own. */
export function loadsOf({ bench, load, emptySeconds }: Row, count: number, seed: number): ToldOfLoad[] {
  return Array.from({ length: count }, (_, i) => {
    const mg = bench.stepMg * draws(seed + 7919 * i).between(30_000, 200_000);
    return played(streamOf(bench, afterEmptyPan({ ...load, mg }, emptySeconds), seed + i), bench)[1]!;
  });
}

/** Hours that a load lies still on this bench, and how often it is told as changed. */
export function falseAlarms(bench: Bench, hours: number, seed: number): number {
  let told = 0;
  for (let hour = 0; hour < hours; hour++) {
    const stream = streamOf(bench, afterEmptyPan({ mg: 7500.03, seconds: 3600 }, 60), seed + hour);
    if (played(stream, bench)[1]!.changedAfterSeconds !== undefined) told += 1;
  }
  return told;
}

export const at = (values: readonly number[], share: number) =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))]!;
export const share = (loads: readonly ToldOfLoad[], of: (load: ToldOfLoad) => boolean) =>
  loads.length === 0 ? Number.NaN : loads.filter(of).length / loads.length;

/** s from rest to the first take; infinite where there was none */
export const waits = (loads: readonly ToldOfLoad[]) =>
  loads.map(({ taken }) => taken[0]?.waitedSeconds ?? Number.POSITIVE_INFINITY);
/** The value taken is within 2 u of the truth. */
export const covered = ({ taken: [taken] }: ToldOfLoad) =>
  taken !== undefined && Math.abs(taken.offMg) <= 2 * taken.uMg;
/** Taken while nothing excluded a creep of 1 mg. */
export const creepPossible = ({ taken: [taken] }: ToldOfLoad) =>
  taken?.flags.includes("creep-possible") ?? false;
/** Taken without any flag. */
export const unflagged = ({ taken: [taken] }: ToldOfLoad) => taken?.flags.length === 0;
/** s after the take until a creep that was possible is excluded; infinite where it never was */
export const watched = (loads: readonly ToldOfLoad[]) =>
  loads
    .filter(creepPossible)
    .map(({ excludedAfterSeconds = Number.POSITIVE_INFINITY }) => excludedAfterSeconds);
/** Taken, and off by more than a step and more than 2 u. */
export const wrong = ({ taken: [taken] }: ToldOfLoad, stepMg: number) =>
  taken !== undefined && Math.abs(taken.offMg) > Math.max(stepMg, 2 * taken.uMg);
export const toldWithin = (seconds: number) => (load: ToldOfLoad) =>
  (load.changedAfterSeconds ?? Number.POSITIVE_INFINITY) <= seconds;
