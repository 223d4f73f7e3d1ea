import { textWidth } from "./lanes.ts";

/** Marks told apart by their form alone, so that grey paper shows them as well as a screen. */
export type Shape = "full" | "ring" | "cross" | "square" | "failed";

/** One mark centred on (x, y), about 10 user units wide. */
export function Mark({ shape, x, y }: { shape: Shape; x: number; y: number }) {
  const at = `translate(${x.toFixed(1)} ${y.toFixed(1)})`;
  if (shape === "cross") return <path transform={at} d="M-5-5L5 5M-5 5L5-5" class="cross" />;
  if (shape === "square")
    return <rect transform={at} x="-5" y="-5" width="10" height="10" class="point-warning" />;
  if (shape === "failed") return <path transform={at} d="M-6-6L6 6M-6 6L6-6" class="point-action" />;
  return <circle transform={at} r="5" class={shape === "ring" ? "point" : "point-in"} />;
}

/** Room a mark with its word takes in a legend, with the gap to the next. */
function markWidth(word: string): number {
  return 11 + textWidth(word) + 14;
}

/** A line of marks, each with its word. */
export function Legend({ entries, y }: { entries: readonly { shape: Shape; word: string }[]; y: number }) {
  let at = 8;
  return (
    <>
      {entries.map(({ shape, word }) => {
        const here = at;
        at += markWidth(word);
        return (
          <g key={word}>
            <Mark shape={shape} x={here} y={y - 5} />
            <text x={here + 11} y={y}>
              {word}
            </text>
          </g>
        );
      })}
    </>
  );
}
