import { draws } from "./chance.ts";

/** What brings the display on while the load stays; sizes in mg, positive where the display is still to rise. */
export type Creep =
  | { kind: "fading"; mg: number; tauSeconds: number }
  /** evaporation: goes on for ever; the value when laid down is the true one */
  | { kind: "line"; mgPerSecond: number }
  /** a film that drains as a power of time */
  | { kind: "film"; mg: number; tauSeconds: number }
  /** so many bubbles leave one by one, each at a time of its own */
  | { kind: "bubbles"; mg: number; count: number; withinSeconds: number };

/** One balance, its room and its cable. */
export interface Bench {
  /** display step d, mg */
  stepMg: number;
  /** standard deviation of white noise, mg */
  whiteMg: number;
  /** draught: first-order autoregression */
  draught?: { mg: number; tauSeconds: number };
  mechanism: { tauSeconds: number; ringHz?: number };
  pace: {
    perSecond: number;
    /** gaps vary by so much of themselves */
    jitter?: number;
    /** so many lines are handed over together */
    packet?: number;
    lostShare?: number;
    doubledShare?: number;
  };
  /** the balance's own mark: the last so many seconds lie within so many steps */
  mark?: { seconds: number; steps: number };
  zeroDriftMgPerHour?: number;
}

/** What happens on the pan, in order. */
export interface Load {
  mg: number;
  /** how long it stays */
  seconds: number;
  creeps?: readonly Creep[];
  /** touched at these times after it was put on, the pan pressed down for a moment */
  touchedSeconds?: readonly number[];
}

export interface StreamLine {
  /** when it arrives */
  seconds: number;
  mg: number;
  marked: boolean | null;
}

/** One load with what is true of it. */
export interface LoadTruth {
  fromSeconds: number;
  toSeconds: number;
  /** where the display ends, or what was laid down where it drifts for ever */
  mg: number;
  /** from then on the swing of the mechanism and of the last touch is below half a step */
  restSeconds: number;
}

export interface Stream {
  lines: StreamLine[];
  loads: LoadTruth[];
}

/** Least size of a touch: a finger presses so many mg. */
const touchMg = 300;

/** The lines of a bench while loads are put on one after the other, with the truth of each. */
export function streamOf(bench: Bench, loads: readonly Load[], seed: number): Stream {
  const draw = draws(seed);
  const at = draw.unit() / bench.pace.perSecond;
  const truths: LoadTruth[] = [];
  let from = 0;
  let before = 0;
  const parts = loads.map((load) => {
    const truth = truthOf(bench, load, from, before);
    const part = { load, truth, before, creep: (load.creeps ?? []).map((one) => creepOf(one, draw.unit)) };
    truths.push(truth);
    from += load.seconds;
    before = load.mg;
    return part;
  });
  const { draught } = bench;
  let air = draught ? draught.mg * draw.normal() : 0;
  const lines: StreamLine[] = [];
  const shown: { seconds: number; mg: number }[] = [];
  let last = at;
  for (let seconds = at; seconds < from; ) {
    const part = parts.find(({ truth }) => seconds < truth.toSeconds)!;
    if (draught) {
      const kept = Math.exp(-(seconds - last) / draught.tauSeconds);
      air = air * kept + draught.mg * Math.sqrt(1 - kept * kept) * draw.normal();
    }
    last = seconds;
    const since = seconds - part.truth.fromSeconds;
    const zero = ((bench.zeroDriftMgPerHour ?? 0) * seconds) / 3600;
    const still = mechanical(bench, part, since) + part.creep.reduce((sum, one) => sum + one(since), 0);
    const value = still + zero + air + bench.whiteMg * draw.normal();
    const mg = Math.round(value / bench.stepMg) * bench.stepMg;
    shown.push({ seconds, mg });
    const line = { seconds, mg, marked: markOf(bench, shown) };
    if (draw.unit() >= (bench.pace.lostShare ?? 0)) {
      lines.push(line);
      if (draw.unit() < (bench.pace.doubledShare ?? 0)) lines.push({ ...line, seconds: seconds + 0.003 });
    }
    const gap = 1 / bench.pace.perSecond;
    seconds += gap * (1 + (bench.pace.jitter ?? 0) * draw.between(-1, 1));
  }
  return { lines: handedOver(lines, bench.pace.packet ?? 1), loads: truths };
}

/** What a perfect display would show `since` s after the load was put on, without creep and noise. */
function mechanical(bench: Bench, part: { load: Load; before: number }, since: number): number {
  const swing = swingOf(bench.mechanism, since);
  const touches = (part.load.touchedSeconds ?? []).filter((touched) => touched <= since);
  const pressed = touches.reduce(
    (sum, touched) => sum + touchMg * swingOf(bench.mechanism, since - touched),
    0,
  );
  return part.load.mg + (part.before - part.load.mg) * swing + pressed;
}

function swingOf({ tauSeconds, ringHz }: Bench["mechanism"], since: number): number {
  const left = Math.exp(-since / tauSeconds);
  return ringHz === undefined ? left : left * Math.cos(2 * Math.PI * ringHz * since);
}

function truthOf(bench: Bench, load: Load, fromSeconds: number, before: number): LoadTruth {
  const dies = (mg: number) =>
    bench.mechanism.tauSeconds * Math.log(Math.max(1, Math.abs(mg) / (bench.stepMg / 2)));
  const touched = Math.max(0, ...(load.touchedSeconds ?? []).map((at) => at + dies(touchMg)));
  const rest = Math.max(dies(load.mg - before), touched);
  return { fromSeconds, toSeconds: fromSeconds + load.seconds, mg: load.mg, restSeconds: fromSeconds + rest };
}

/** What a creep adds to the display, mg, so many s after the load was put on; it ends at the true value. */
function creepOf(creep: Creep, unit: () => number): (since: number) => number {
  switch (creep.kind) {
    case "fading":
      return (since) => -creep.mg * Math.exp(-since / creep.tauSeconds);
    case "line":
      return (since) => creep.mgPerSecond * since;
    case "film":
      return (since) => -creep.mg / Math.sqrt(1 + since / creep.tauSeconds);
    case "bubbles": {
      const leave = Array.from({ length: creep.count }, () => creep.withinSeconds * unit());
      return (since) => -(creep.mg / creep.count) * leave.filter((at) => at > since).length;
    }
  }
}

function markOf({ mark, stepMg }: Bench, shown: readonly { seconds: number; mg: number }[]): boolean | null {
  if (!mark) return null;
  const now = shown.at(-1)!.seconds;
  const first = shown.findLastIndex(({ seconds }) => seconds <= now - mark.seconds);
  if (first < 0) return false;
  const values = shown.slice(first).map(({ mg }) => mg);
  return Math.max(...values) - Math.min(...values) <= (mark.steps + 0.01) * stepMg;
}

/** A converter collects lines and hands over so many at once, when the last of them is there. */
function handedOver(lines: readonly StreamLine[], packet: number): StreamLine[] {
  return lines.map((line, i) => {
    const last = Math.min(lines.length - 1, i - (i % packet) + packet - 1);
    return { ...line, seconds: lines[last]!.seconds };
  });
}
