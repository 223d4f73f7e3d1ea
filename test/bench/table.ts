import type { Figure } from "./benchmark.ts";

/** What came of one benchmark: its figures, or why there are none. */
export interface Outcome {
  name: string;
  seconds: number;
  figures: readonly Figure[];
  error?: string;
}

/** True for a figure beyond its limit, and for one that is no number: then nothing was measured. */
export const fellShort = ({ value, atMost, atLeast }: Figure): boolean =>
  !Number.isFinite(value) ||
  (atMost !== undefined && value > atMost) ||
  (atLeast !== undefined && value < atLeast);

function limitOf({ atMost, atLeast, unit }: Figure): string {
  if (atMost !== undefined) return `at most ${atMost} ${unit}`;
  return atLeast === undefined ? "" : `at least ${atLeast} ${unit}`;
}

/** True when each benchmark gave its figures and each figure keeps its limit. */
export function good({ figures, error }: Outcome): boolean {
  return error === undefined && figures.length > 0 && !figures.some(fellShort);
}

/** All figures as one table of text, columns aligned. */
export function table(outcomes: readonly Outcome[]): string {
  const rows = outcomes.flatMap(({ name, figures, error }) => [
    ...figures.map((figure) => [
      name,
      figure.what,
      `${+figure.value.toPrecision(4)} ${figure.unit}`,
      limitOf(figure),
      fellShort(figure) ? "FELL SHORT" : "",
    ]),
    ...(error === undefined ? [] : [[name, error, "", "", "FAILED"]]),
  ]);
  const lines = [["benchmark", "what", "found", "limit", ""], ...rows];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...lines.map((line) => line[column]!.length)));
  return lines
    .map((line) =>
      line
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}
