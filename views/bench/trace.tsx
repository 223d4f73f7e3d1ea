import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";

/** Readings of the last half minute, oldest first: how long ago, s, and g. */
export type TraceShown = readonly { secondsAgo: number; grams: number }[];

const seconds = 30;
const [width, height] = [424, 56];
/** ends of the time axis, and the strip the line stands in */
const [left, right, top, foot] = [4, 352, 4, 36];

const decadeBelow = (grams: number) => 10 ** Math.floor(Math.log10(grams));

/** The last half minute as one line, its own spread filling the height: a creep is a slope before it is a number. */
export function Trace({ points }: { points: TraceShown }) {
  const locale = useLocale();
  const t = useTell();
  if (points.length < 2) return null;
  const grams = points.map((point) => point.grams);
  const [low, high] = [Math.min(...grams), Math.max(...grams)];
  const spread = high - low;
  const y = (value: number) =>
    spread === 0 ? (top + foot) / 2 : foot - ((value - low) / spread) * (foot - top);
  const x = (ago: number) => right - (Math.min(ago, seconds) / seconds) * (right - left);
  const line = points.map((point) => `${x(point.secondsAgo).toFixed(1)},${y(point.grams).toFixed(1)}`);
  const last = points.at(-1)!;
  const bar = spread === 0 ? 0 : decadeBelow(spread);
  const long = bar === 0 ? 0 : (bar / spread) * (foot - top);
  return (
    <svg
      class="trace wide-part"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={t("bench.live.trace", { seconds, spread_g: spread })}
    >
      <line class="rule" x1={left} x2={right} y1={40} y2={40} />
      {[30, 20, 10, 0].map((ago) => (
        <g key={ago}>
          <line class="tick" x1={x(ago)} x2={x(ago)} y1={40} y2={44} />
          <text x={x(ago)} y={55} text-anchor={ago === 30 ? "start" : ago === 0 ? "end" : "middle"}>
            {ago === 0 ? t("bench.live.now") : ago === 30 ? "−30 s" : `−${ago}`}
          </text>
        </g>
      ))}
      <polyline points={line.join(" ")} />
      <circle cx={x(last.secondsAgo)} cy={y(last.grams)} r="3.5" />
      {bar > 0 && (
        <>
          <path class="tick" fill="none" d={`M362 ${foot}h6m-3 0v${-long}m-3 0h6`} />
          <text x={373} y={foot}>
            {inLocale(String(Number((bar >= 1 ? bar : bar * 1000).toPrecision(1))), locale)}{" "}
            {bar >= 1 ? "g" : "mg"}
          </text>
        </>
      )}
    </svg>
  );
}
