/** What a display showed at one moment. */
export interface Point {
  /** on a clock that never jumps, s */
  seconds: number;
  value: number;
  /** display step d, in the unit of the value */
  step: number;
  /** the balance's own mark of rest; null where it tells nothing */
  marked: boolean | null;
}

/** One line of a balance, at the time it was written (line-times.ts). */
export interface StableLine extends Point {
  /** usual time between lines, s */
  pace: number;
  /** the line before, arrived once more */
  again: boolean;
}

/** Lines within this time are one point, s. */
const pointSeconds = 0.2;
const shareOfPoint = 0.75;

/** The line a point stands for: mean time and value of lines that came within a fifth of a second, or one slower line. */
export type Points = (line: StableLine) => Point | null;

export function createPoints(): Points {
  let heard: Point[] = [];
  return (line) => {
    if (line.again) return null;
    const { seconds, pace } = line;
    const [first] = heard;
    const late = first && (seconds - first.seconds >= pointSeconds || first.step !== line.step);
    const before = late ? heard : [];
    if (late) heard = [];
    heard.push(line);
    if (before.length > 0) return pointOf(before);
    // the next line would come too late for this point
    if (seconds - heard[0]!.seconds + pace <= shareOfPoint * pointSeconds) return null;
    const whole = heard;
    heard = [];
    return pointOf(whole);
  };
}

function pointOf(lines: readonly Point[]): Point {
  return {
    seconds: mean(lines.map(({ seconds }) => seconds)),
    value: mean(lines.map(({ value }) => value)),
    step: lines[0]!.step,
    marked: lines[0]!.marked === null ? null : lines.every(({ marked }) => marked !== false),
  };
}

function mean(values: readonly number[]): number {
  const [first = 0] = values;
  return first + values.reduce((total, value) => total + (value - first), 0) / values.length;
}
