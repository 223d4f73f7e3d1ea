import { type BalanceEvent, type EventCode, lineEvent, type Stability } from "./reading.ts";

/** Words a person would read on a display; anything else has to be learned from the balance or told by its owner. */
const stabilityWords: Record<string, Stability> = {
  stable: "stable",
  steady: "stable",
  settled: "stable",
  unstable: "moving",
  moving: "moving",
  motion: "moving",
  unsteady: "moving",
};

/** What a token beside a number says about rest: only plain words count, others tell nothing. */
export function stabilityWord(token: string): Stability {
  return stabilityWords[token.toLowerCase()] ?? "unknown";
}

const words: readonly [RegExp, EventCode][] = [
  [/^over[ -]?(load|range|capacity)?$/i, "line.overload.word"],
  [/^under[ -]?(load|range)?$/i, "line.underload.word"],
  [/^(err(or)?|fault)[ .:]*\w{0,6}$/i, "line.error.fault"],
  [/^(low|weak)[ -]?bat(t(ery)?)?$|^bat(t(ery)?)?[ -]?low$/i, "line.error.battery"],
  [/^(warm(ing)?[ -]?up|calibrating|adjusting|please wait|wait|busy)$/i, "line.error.busy"],
];

/** An event for a whole line that is a plain word, or null. */
export function wordsMeaning(line: string): { event: BalanceEvent } | null {
  const word = line.replace(/[\x00-\x1f]/g, " ").trim();
  const found = words.find(([pattern]) => pattern.test(word));
  return found ? lineEvent(found[1], { word }) : null;
}
