import { type Estimate, estimateOf, statedOf } from "./estimate.ts";
import { FilterBank, justPutOn, restedBefore, type Weighed } from "./filter-bank.ts";
import { type KnownDisplay, unknownDisplay } from "./known-display.ts";
import { lineDeviation } from "./noise.ts";
import { createPoints, type Point, type StableLine } from "./points.ts";
import { type PossibleCreep, possibleCreep } from "./possible-creep.ts";
import { type Ring, sizeOf } from "./ring.ts";
import { type Fitted, tailOf } from "./swing-fit.ts";
import { noTail } from "./tail.ts";

/**
 * Why a reading is flagged: it was still creeping, a creep of 1 mg could not be excluded yet, a small step came before, the
 * balance's own mark denied rest.
 */
export type Flag = "creep" | "creep-possible" | "stepped" | "denied";

/** A reading that was taken; value and uncertainties in the unit of the lines. */
export interface TakenValue {
  seconds: number;
  value: number;
  /** standard uncertainty of this reading alone: noise, rounding and what may still come */
  u: number;
  /** noise and rounding alone */
  uRead: number;
  /** what may still come: the drift at reading */
  uDrift: number;
  /** the most that a creep may bring which was not excluded yet; 0 where none is possible */
  possible: number;
  flags: readonly Flag[];
  step: number;
}

export type Judgement =
  | { state: "waiting" }
  | { state: "drifting"; perSecond: number; offer?: TakenValue }
  | { state: "taken"; taken: TakenValue }
  | { state: "after"; taken: TakenValue; moved?: number; possibleForSeconds?: number };

/** Known to this many steps d, a reading is taken. */
const wanted = { steps: 0.9, ofLine: 0.6 };
/** Least time from the last large movement, s: usually; for a load seen at rest before; with the balance's mark of rest; with its mark of motion. */
const least = { seconds: 1.6, restedSeconds: 0.6, markedSeconds: 1.2, deniedSeconds: 6, points: 4 };
const markedPoints = 3;
/** A value so many steps d, and so many standard deviations, off what was expected is a new movement. */
const movement = { steps: 3, deviations: 4.5 };
/** Until a plateau has so many points and s, neighbours are compared in place of the filters' outlook. */
const young = { points: 4, seconds: 0.7 };
/** A step between levels of one load, such as a bubble leaving: held for so long, flagged for so long, s. */
const stepped = { least: 3, most: 500, levelSeconds: 0.8, levelPoints: 3.5, holdSeconds: 8, flagSeconds: 30 };
/** It is told as drifting from this time and this share of creep on, and offered at this risk in d. */
const drifting = { seconds: 5, share: 0.9, offeredAt: 3 };
/** The end of the swing shows in the first points of a plateau, s. */
const firstSeconds = 1;
/** The tail of a slow mechanism that began above and fell below so many d: from there it is judged afresh. */
const tail = { began: 12, left: 0.5, seconds: 1 };

/** After the take: so many steps d and standard deviations off, for so many points, so long after a movement. */
const watch = { leastSteps: 1.5, deviations: 2, points: 3, seconds: 1.2 };
/** A watch that goes on is said to take so long at least, s. */
const leastTold = 1;
/** A display that moves this far from what was taken shows another load, or a hand; in steps d and as share of it. */
const anotherLoad = { leastSteps: 5, mostSteps: 500, share: 0.05 };

export class StableReading {
  readonly #known: KnownDisplay;
  readonly #wanted: number;
  readonly #points = createPoints();
  #bank: FilterBank | undefined;
  #start = { value: 0, seconds: 0, step: 0 };
  #last = { seconds: 0, z: 0 };
  #neighbours = 0;
  #marked = 0;
  #judged: Judgement = { state: "waiting" };
  #crept = false;
  /** how the mechanism came to this plateau; asked for only where a plateau follows */
  #fitted: () => Fitted = () => ({ tail: noTail });
  /** the last points, for the way here */
  #way: Point[] = [];
  /** something was seen to move before this plateau */
  #swung = false;
  /** the first points of this plateau */
  #first: { age: number; value: number }[] = [];
  #afresh = false;
  #level: { value: number; seconds: number; step: number } | undefined;
  #checkStep = false;
  #steppedSeconds = Number.NEGATIVE_INFINITY;
  #now = 0;
  #rested: boolean;
  #taken: TakenValue | undefined;
  #hits = 0;
  #moved: number | undefined;
  /** a creep that nothing excludes yet; once excluded it stays so, and what moves on then is told */
  #possible: PossibleCreep | undefined;
  /** when that will be, told earlier and earlier only, s */
  #excludedAt = Number.POSITIVE_INFINITY;

  /** `rested`: the load was seen at rest before; only lines from now on count for its value all the same. */
  constructor(known: KnownDisplay = unknownDisplay, rested = false) {
    this.#rested = rested;
    this.#known = known;
    this.#wanted = Math.max(wanted.steps, wanted.ofLine * lineDeviation(known.noises));
  }

  hear(line: StableLine): Judgement {
    const point = this.#points(line);
    if (!point) return this.#taken ? this.#afterwards(this.#taken) : this.#judged;
    this.#point(point);
    this.#judged = this.#judge(point);
    return this.#judged;
  }

  #point(point: Point): void {
    const { seconds, value, step, marked } = point;
    this.#way = [...this.#way.slice(-8), point];
    const start = this.#start;
    if (!this.#bank || step !== start.step || this.#afresh) {
      this.#levelled(seconds, value, step);
      if (this.#afresh) this.#checkStep = false;
      this.#afresh = false;
      this.#restart(seconds, value, step);
    } else {
      const z = (value - start.value) / step;
      const since = Math.max(0, seconds - this.#last.seconds);
      const age = seconds - start.seconds;
      const { outlook, take } = this.#bank.next(z, since, age);
      const isOff = () => {
        const { off, variance } = outlook();
        return Math.abs(off) > Math.max(movement.deviations * Math.sqrt(variance), movement.steps);
      };
      const jump = Math.abs(z - this.#last.z);
      const count = this.#bank.count;
      const isYoung = count < young.points - 0.5 || age < young.seconds;
      const first = this.#known.noises[0]!;
      const spread = (first.scale + this.#neighbours / 2) / (first.weight + Math.max(count - 1, 0) / 2);
      const away = isYoung
        ? jump > Math.max(movement.deviations * Math.sqrt(2 * spread), movement.steps)
        : isOff();
      if (away) {
        this.#levelled(seconds, value, step);
        this.#restart(seconds, value, step);
      } else {
        take();
        if (age <= firstSeconds) this.#first.push({ age, value });
        this.#neighbours += jump ** 2 / 2;
        this.#last = { seconds, z };
      }
    }
    this.#last.seconds = seconds;
    this.#marked = marked ? this.#marked + 1 : 0;
  }

  /** since when nothing large moved, s */
  get since(): number {
    return this.#start.seconds;
  }

  /** logarithm of the time constant with which the mechanism came to rest, s; undefined where it followed none */
  get logTau(): number | undefined {
    return this.#fitted().logTau;
  }

  /** what a swing left that followed no exponential; undefined elsewhere */
  get ring(): Ring | undefined {
    const taken = this.#taken;
    if (!taken || !this.#swung || this.#rested || this.logTau !== undefined) return undefined;
    const points = this.#first.map(({ age, value }) => ({ age, off: (value - taken.value) / taken.step }));
    const { decayLogTau: logTau } = this.#fitted();
    return { size: sizeOf(points, lineDeviation(this.#known.noises) ** 2, logTau), logTau };
  }

  get taken(): TakenValue | undefined {
    return this.#taken;
  }

  /** true once the display has stayed for a while, whether taken or not */
  get holds(): boolean {
    return (
      this.#bank !== undefined &&
      this.#bank.count >= stepped.levelPoints &&
      this.#last.seconds - this.#start.seconds >= stepped.levelSeconds
    );
  }

  #restart(seconds: number, value: number, step: number): void {
    // whatever moved since is not what was seen at rest
    if (this.#bank) this.#rested = false;
    const { noises, response, ring } = this.#known;
    const way = this.#way;
    const rested = this.#rested;
    let fitted: Fitted | undefined;
    this.#fitted = () => {
      fitted ??= rested
        ? { tail: noTail }
        : tailOf(way, { step, deviation: Math.max(0.3, lineDeviation(noises)), response, ring });
      return fitted;
    };
    this.#start = { value, seconds, step };
    this.#first = [{ age: 0, value }];
    this.#swung = this.#way.length > 1;
    this.#last = { seconds, z: 0 };
    this.#neighbours = 0;
    this.#marked = 0;
    this.#crept = false;
    this.#bank = new FilterBank(noises, () => this.#fitted().tail, rested ? restedBefore : justPutOn);
  }

  #levelled(seconds: number, value: number, step: number): void {
    const start = this.#start;
    if (this.holds)
      this.#level = {
        value: start.value + this.#now * start.step,
        seconds: this.#last.seconds,
        step: start.step,
      };
    const level = this.#level;
    this.#checkStep =
      level !== undefined &&
      level.seconds > seconds - stepped.flagSeconds &&
      Math.abs(value - level.value) <= stepped.most * step;
  }

  #judge(point: Point): Judgement {
    const { seconds, value, marked } = point;
    const start = this.#start;
    const bank = this.#bank!;
    const age = seconds - start.seconds;
    if (bank.count === 1) return this.#begun();
    const filters = bank.weighed();
    const estimate = estimateOf(filters, age);
    this.#now = estimate.now;
    if (this.#checkStep && age >= 1) {
      const level = this.#level!;
      if (
        Math.abs(start.value + estimate.now * start.step - level.value) >
        stepped.least * Math.max(start.step, level.step)
      )
        this.#steppedSeconds = start.seconds;
      this.#checkStep = false;
    }
    if (this.#taken) {
      if (this.#possible) this.#openAt(seconds, possibleCreep(filters, age, start.step));
      this.#watch(this.#taken, value, estimate, age);
      return this.#afterwards(this.#taken);
    }
    const { slow } = estimate;
    if (age > 2 && estimate.creeping > 0.8) this.#crept = true;
    this.#afresh = slow.share > 0.5 && slow.left < tail.left && slow.began > tail.began && age > tail.seconds;
    const ready =
      age >= this.#leastSeconds() &&
      bank.count >= least.points - 0.5 &&
      seconds - this.#steppedSeconds >= stepped.holdSeconds &&
      !(marked === false && age < least.deniedSeconds) &&
      !this.#afresh &&
      !(slow.share > 0.5 && slow.left > tail.left);
    if (ready && estimate.risk <= this.#wanted && (this.#rested || estimate.open <= 1)) {
      const possible = this.#rested ? undefined : possibleCreep(filters, age, start.step);
      this.#taken = this.#valueOf(point, filters, estimate, possible);
      if (this.#taken.possible > 0) this.#openAt(seconds, possible);
      return { state: "taken", taken: this.#taken };
    }
    if (age >= drifting.seconds && estimate.creeping > drifting.share)
      return {
        state: "drifting",
        perSecond: estimate.perSecond * start.step,
        ...(estimate.risk <= drifting.offeredAt && { offer: this.#valueOf(point, filters, estimate) }),
      };
    return { state: "waiting" };
  }

  /** What would be taken now. */
  #valueOf(
    { seconds, marked }: Point,
    filters: readonly Weighed[],
    estimate: Estimate,
    possible?: PossibleCreep,
  ): TakenValue {
    const { value, step, seconds: began } = this.#start;
    const { value: z, u, uRead } = statedOf(filters, seconds - began, estimate.roundingVariance);
    const flags: Flag[] = [];
    const creeps = this.#crept || estimate.creeping > 0.5 || Math.abs(estimate.end - estimate.now) > 1;
    if (creeps) flags.push("creep");
    else if (possible) flags.push("creep-possible");
    if (seconds - this.#steppedSeconds < stepped.flagSeconds) flags.push("stepped");
    if (marked === false) flags.push("denied");
    return {
      seconds,
      value: value + z * step,
      u: u * step,
      uRead: uRead * step,
      uDrift: Math.sqrt(Math.max(0, u * u - uRead * uRead)) * step,
      possible: creeps || !possible ? 0 : possible.steps * step,
      flags,
      step,
    };
  }

  /** The first point of a plateau: nothing can be said of it yet. */
  #begun(): Judgement {
    this.#hits = 0;
    return this.#taken ? this.#afterwards(this.#taken) : { state: "waiting" };
  }

  #openAt(seconds: number, possible: PossibleCreep | undefined): void {
    this.#possible = possible;
    this.#excludedAt = Math.min(this.#excludedAt, seconds + (possible?.seconds ?? 0));
  }

  #afterwards(taken: TakenValue): Judgement {
    return {
      state: "after",
      taken,
      ...(this.#moved !== undefined && { moved: this.#moved }),
      ...(this.#possible && {
        possibleForSeconds: Math.max(leastTold, this.#excludedAt - this.#last.seconds),
      }),
    };
  }

  #leastSeconds(): number {
    if (this.#rested) return least.restedSeconds;
    return this.#marked >= markedPoints ? least.markedSeconds : least.seconds;
  }

  /** Whether the display moved on since the take. */
  #watch(taken: TakenValue, value: number, estimate: Estimate, age: number): void {
    if (this.#moved !== undefined) return;
    const start = this.#start;
    const off = start.value + estimate.now * start.step - taken.value;
    const allowed = Math.max(
      watch.leastSteps * taken.step,
      watch.deviations *
        Math.hypot(taken.u, Math.sqrt(estimate.nowVariance + estimate.roundingVariance) * start.step),
    );
    const counts = age >= watch.seconds && !isAnotherLoad({ value, step: start.step }, taken.value);
    this.#hits = counts && Math.abs(off) > allowed ? this.#hits + 1 : 0;
    if (this.#hits >= watch.points) this.#moved = off;
  }
}

/** True for a value that is another load, or a hand. */
export function isAnotherLoad({ value, step }: Pick<Point, "value" | "step">, taken: number): boolean {
  const { leastSteps, mostSteps, share } = anotherLoad;
  const allowed = Math.max(leastSteps * step, Math.min(mostSteps * step, share * Math.abs(taken)));
  return Math.abs(value - taken) > allowed;
}
