/**
 * Rules that tell a bench going wrong from chance. Their short names are those in common use in analytical quality
 * control (table 1 of PMC3909142): "2-2s" is two in a row beyond the same 2s limit.
 */
export interface RunRule {
  name: "1-2s" | "1-3s" | "2-2s" | "R-4s" | "4-1s" | "10-x";
  /** warning: go on with a note; action: stop and look */
  calls: "warning" | "action";
  /** what kind of fault it points to */
  points: "either" | "bias" | "scatter";
  says: string;
  /** how many of the last points it looks at */
  looksAt: number;
  /** distances from the mean in units of s, oldest first, the judged point last */
  broken(z: readonly number[]): boolean;
}

const sameSide = (z: readonly number[], beyond: number) =>
  z.every((one) => one > beyond) || z.every((one) => one < -beyond);

const runRules: readonly RunRule[] = [
  {
    name: "1-3s",
    calls: "action",
    points: "either",
    says: "beyond three s of the mean",
    looksAt: 1,
    broken: ([z = 0]) => Math.abs(z) > 3,
  },
  {
    name: "2-2s",
    calls: "action",
    points: "bias",
    says: "two in a row beyond two s on the same side",
    looksAt: 2,
    broken: (z) => sameSide(z, 2),
  },
  {
    name: "R-4s",
    calls: "action",
    points: "scatter",
    says: "two in a row beyond two s on opposite sides",
    looksAt: 2,
    broken: ([a = 0, b = 0]) => a * b < 0 && Math.abs(a) > 2 && Math.abs(b) > 2,
  },
  {
    name: "4-1s",
    calls: "action",
    points: "bias",
    says: "four in a row beyond one s on the same side",
    looksAt: 4,
    broken: (z) => sameSide(z, 1),
  },
  {
    name: "10-x",
    calls: "action",
    points: "bias",
    says: "ten in a row on the same side of the mean",
    looksAt: 10,
    broken: (z) => sameSide(z, 0),
  },
  {
    name: "1-2s",
    calls: "warning",
    points: "either",
    says: "beyond two s of the mean",
    looksAt: 1,
    broken: ([z = 0]) => Math.abs(z) > 2,
  },
];

/** What to look for, by the kind of fault. */
export const causes: Record<RunRule["points"], string> = {
  bias: "Something shifted: water, thermometer, span, hanger or the piece itself.",
  scatter: "Something scatters: bubbles, draught, vibration or a dirty wire.",
  either: "Look at water, wire, level and draught before going on.",
};

/** The rules the last of these points breaks, gravest first. `z` holds one epoch only, oldest first. */
export function brokenBy(z: readonly number[]): RunRule[] {
  return runRules.filter(({ looksAt, broken }) => z.length >= looksAt && broken(z.slice(-looksAt)));
}
