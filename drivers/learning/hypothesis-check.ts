import { type Message, message } from "../../calibration/message.ts";
import { shiftExplained } from "./notations.ts";
import { type Hypothesis, type Placed, runAt } from "./places.ts";
import { atRest, lineKind, type Observed, sampleLines } from "./recording.ts";
import type { Typed } from "./typed.ts";
import { magnitudeOf } from "./written-number.ts";

/** Numbers further from the load than this many times are none of the pan's. */
const mostTimes = 4;

/** The lines whose number follows the load under this guess, or why the guess does not hold. */
export function linesUnder(
  { place, notation }: Hypothesis,
  texts: readonly Observed[],
  typed: readonly Typed[],
): Placed[] | { refused: Message } {
  const found = texts.flatMap((observed): Placed[] => {
    const run = runAt(place, observed.text);
    const size = run && magnitudeOf(notation, run.digits, run.exponent);
    return run && size !== null ? [{ observed, run, size }] : [];
  });
  const most = Math.max(...typed.map(sizeOf));
  const shown = { typed: typed.find(({ digits }) => digits !== "")!.shown };
  if (found.filter(({ size }) => Math.abs(Number(size) - most) > 0.02 * most).length < 2)
    return { refused: message("learn.refused.stands-still", { ...shown, lines: sampleLines(texts) }) };
  const lines = withoutStrangers(found, typed);
  const byLine = new Map(lines.map((line) => [line.observed, line]));
  for (const value of typed) {
    const near = value.lines.flatMap((observed) => byLine.get(observed) ?? []);
    const params = { typed: value.shown, lines: sampleLines(value.lines) };
    const exact = near.filter((line) => saysSo(line, value));
    const reason = exact.map(({ observed, run }) =>
      value.pounds ? "yes" : shiftExplained(notation.shift ?? 0, observed.text.slice(run.end), value.unit),
    );
    const lost = found.some((line) => value.lines.includes(line.observed) && saysSo(line, value));
    if (exact.length === 0)
      return { refused: message(lost ? "learn.refused.not-steady" : "learn.refused.not-all", params) };
    if (reason.includes("other-unit")) return { refused: message("learn.refused.other-unit", params) };
    if (reason.includes("no")) return { refused: message("learn.refused.point", params) };
    const nearest = value.nearest.flatMap((observed) => byLine.get(observed) ?? []);
    const about = nearest.filter(({ size }) => Math.abs(Number(size) - sizeOf(value)) <= slack(value));
    if (about.length < nearest.length - Math.max(1, 0.15 * nearest.length))
      return { refused: message("learn.refused.not-steady", params) };
  }
  const wild = [...lines.filter(({ size }) => Number(size) > mostTimes * most), ...alone(lines, most)];
  const empty = lines.filter(({ observed }) => atRest(observed) && observed.at.phase === "empty");
  const notEmpty = empty.filter(({ size }) => Number(size) > 0.3 * most);
  if (wild.length > 0.02 * lines.length || notEmpty.length > 0.1 * empty.length)
    return {
      refused: message("learn.refused.not-steady", {
        ...shown,
        lines: sampleLines((wild[0] ? wild : notEmpty).map(({ observed }) => observed)),
      }),
    };
  return lines;
}

/** A number this share of the load away from that of the line before is far from it. */
const farShare = 0.3;

/**
 * Lines at rest whose number is far from that of the lines before and behind, which agree: it comes from elsewhere. One may
 * be damaged, so a single one is none.
 */
function alone(lines: readonly Placed[], most: number): Placed[] {
  const far = (one: Placed, other: Placed) =>
    Math.abs(Number(one.size) - Number(other.size)) > farShare * most;
  const found = lines.filter((line, i) => {
    const [before, behind] = [lines[i - 1], lines[i + 1]];
    if (!before || !behind || ![before, line, behind].every(({ observed }) => atRest(observed))) return false;
    return far(line, before) && far(line, behind) && !far(before, behind);
  });
  return found.length > 1 ? found : [];
}

/**
 * Leaves out kinds of lines whose number does not follow the load: at rest it is another than the one that was typed. Kinds
 * are told apart by everything but the number, and by the count of decimals.
 */
function withoutStrangers(lines: readonly Placed[], typed: readonly Typed[]): Placed[] {
  const loads = typed.filter(({ negative, digits }) => !negative && digits !== "");
  const most = Math.max(...typed.map(sizeOf));
  const kinds = new Map<string, Placed[]>();
  for (const line of lines) {
    const { observed, run, size } = line;
    const rest = observed.text.slice(0, run.start) + observed.text.slice(run.end);
    const kind = `${lineKind(rest)} ${size.split(".")[1]?.length ?? 0}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), line]);
  }
  const own = [...kinds.values()].filter((some) => {
    const rest = some.filter(({ observed }) => atRest(observed));
    const loaded = rest.filter(({ observed }) => observed.at.phase !== "empty");
    const empty = rest.filter(({ observed }) => observed.at.phase === "empty");
    const right = loaded.filter(({ size }) =>
      loads.some((value) => Math.abs(Number(size) - sizeOf(value)) <= 3 * slack(value)),
    );
    const wrong = empty.filter(({ size }) => Number(size) > 0.3 * most);
    return (loads.length === 0 || right.length >= 0.8 * loaded.length) && wrong.length <= 0.5 * empty.length;
  });
  const kept = new Set(own.flat());
  return lines.filter((line) => kept.has(line));
}

const sizeOf = ({ text }: Typed) => Math.abs(Number(text));

/** The display may tremble between the line and the eye. */
const slack = (value: Typed) => Math.max(60 * 10 ** -value.places, 0.01 * sizeOf(value));

/**
 * Exactly what was typed; zeros at the end may be left out in the line, and a zero needs to be a zero only, since its decimals
 * are those of the other values.
 */
export function saysSo({ size }: Pick<Placed, "size">, value: Typed): boolean {
  if (value.digits === "") return Number(size) === 0;
  const typed = value.text.replace("-", "");
  return (
    size === typed ||
    (typed.startsWith(size) && /^\.?0+$/.test(typed.slice(size.length)) && typed.includes("."))
  );
}
