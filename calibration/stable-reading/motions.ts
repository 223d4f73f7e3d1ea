/** What the display may still do after a load: nothing, run out with a time constant, or drift without end. */
export interface Motion {
  kind: "rest" | "fading" | "line";
  /** time constant of what fades, s */
  tauSeconds: number;
  /** true for what outlasts the mechanism itself: bubbles, films, evaporation, warming */
  creeps: boolean;
}

const fading = (creeps: boolean) => (tauSeconds: number) => ({ kind: "fading", tauSeconds, creeps }) as const;

/** Time constants of creep, s. Common practice: bubbles leave within some 5 to 60 s. */
export const creepTausSeconds = [4, 6, 9, 13, 20, 40] as const;

/** Slow mechanisms, creep, and what goes on for ever. */
export const motions: readonly Motion[] = [
  { kind: "rest", tauSeconds: 0, creeps: false },
  ...[1.2, 2.2].map(fading(false)),
  ...creepTausSeconds.map(fading(true)),
  { kind: "line", tauSeconds: 0, creeps: true },
];

/** How much of the amplitude of a motion is still there after so many s. */
export function basis({ kind, tauSeconds }: Motion, seconds: number): number {
  if (kind === "rest") return 0;
  return kind === "line" ? seconds / 10 : Math.exp(-seconds / tauSeconds);
}

/** How fast that changes, 1/s. */
export function slope(motion: Motion, seconds: number): number {
  if (motion.kind === "rest") return 0;
  return motion.kind === "line" ? 0.1 : -basis(motion, seconds) / motion.tauSeconds;
}
