/**
 * Rules that tell a bench going wrong from chance, of the kind ISO 7870-2 describes for Shewhart charts [from memory].
 * A single point beyond two s is a warning; everything else calls for action.
 */
export interface RunRule {
  name: "beyond-2s" | "beyond-3s" | "two-beyond-2s" | "two-apart" | "four-beyond-1s" | "ten-on-one-side";
  /** warning: go on with a note; action: stop and look */
  calls: "warning" | "action";
  /** what kind of fault it points to */
  points: "either" | "bias" | "scatter";
  /** how many of the last points it looks at */
  looksAt: number;
  /** distances from the mean in units of s, oldest first, the judged point last */
  broken(z: readonly number[]): boolean;
}

const sameSide = (z: readonly number[], beyond: number) =>
  z.every((one) => one > beyond) || z.every((one) => one < -beyond);

const runRules: readonly RunRule[] = [
  {
    name: "beyond-3s",
    calls: "action",
    points: "either",
    looksAt: 1,
    broken: ([z = 0]) => Math.abs(z) > 3,
  },
  {
    name: "two-beyond-2s",
    calls: "action",
    points: "bias",
    looksAt: 2,
    broken: (z) => sameSide(z, 2),
  },
  {
    name: "two-apart",
    calls: "action",
    points: "scatter",
    looksAt: 2,
    broken: ([a = 0, b = 0]) => a * b < 0 && Math.abs(a) > 2 && Math.abs(b) > 2,
  },
  {
    name: "four-beyond-1s",
    calls: "action",
    points: "bias",
    looksAt: 4,
    broken: (z) => sameSide(z, 1),
  },
  {
    name: "ten-on-one-side",
    calls: "action",
    points: "bias",
    looksAt: 10,
    broken: (z) => sameSide(z, 0),
  },
  {
    name: "beyond-2s",
    calls: "warning",
    points: "either",
    looksAt: 1,
    broken: ([z = 0]) => Math.abs(z) > 2,
  },
];

/** The rules the last of these points breaks, gravest first. `z` holds one epoch only, oldest first. */
export function brokenBy(z: readonly number[]): RunRule[] {
  return runRules.filter(({ looksAt, broken }) => z.length >= looksAt && broken(z.slice(-looksAt)));
}
