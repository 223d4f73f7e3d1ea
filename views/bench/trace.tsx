import { useTell } from "../messages/spoken.ts";

/** Readings of the last half minute, oldest first: how long ago, s, and g. */
export type TraceShown = readonly { secondsAgo: number; grams: number }[];

const seconds = 30;
const [width, height, margin] = [300, 36, 2];

/** The last half minute as one line, its own spread filling the height: a creep is a slope before it is a number. */
export function Trace({ points }: { points: TraceShown }) {
  const t = useTell();
  if (points.length < 2) return null;
  const grams = points.map((point) => point.grams);
  const [low, high] = [Math.min(...grams), Math.max(...grams)];
  const y = (value: number) =>
    high === low ? height / 2 : height - margin - ((value - low) / (high - low)) * (height - 2 * margin);
  const x = (ago: number) => width - (ago / seconds) * width;
  const line = points.map((point) => `${x(point.secondsAgo).toFixed(1)},${y(point.grams).toFixed(1)}`);
  return (
    <svg
      class="trace"
      viewBox={`0 0 ${width} ${height}`}
      preserveAspectRatio="none"
      role="img"
      aria-label={t("bench.live.trace", { seconds, spread_g: high - low })}
    >
      <polyline points={line.join(" ")} />
    </svg>
  );
}
