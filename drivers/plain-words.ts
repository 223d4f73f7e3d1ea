import type { BalanceEvent, Steadiness } from "./reading.ts";

/** Words a person would read on a display; anything else has to be learned from the balance or told by its owner. */
const steadyWords: Record<string, Steadiness> = {
  stable: "steady",
  steady: "steady",
  settled: "steady",
  unstable: "moving",
  moving: "moving",
  motion: "moving",
  unsteady: "moving",
};

/** What a token beside a number says about rest: only plain words count, others tell nothing. */
export function steadyWord(token: string): Steadiness {
  return steadyWords[token.toLowerCase()] ?? "not-told";
}

const sayings: readonly [RegExp, BalanceEvent["kind"], string][] = [
  [
    /^over[ -]?(load|range|capacity)?$/i,
    "overload",
    "the load is above the range. Take it off; use a lighter beaker, or hang the piece from the balance",
  ],
  [
    /^under[ -]?(load|range)?$/i,
    "underload",
    "the load is below the range. Put the pan or hanger back, then zero the balance",
  ],
  [
    /^(err(or)?|fault)[ .:]*\w{0,6}$/i,
    "trouble",
    "the balance reports a fault. Look it up in its manual before weighing on",
  ],
  [
    /^(low|weak)[ -]?bat(t(ery)?)?$|^bat(t(ery)?)?[ -]?low$/i,
    "trouble",
    "its battery is low. Change it before weighing on",
  ],
  [
    /^(warm(ing)?[ -]?up|calibrating|adjusting|please wait|wait|busy)$/i,
    "trouble",
    "the balance is busy with itself. Wait until it shows a weight",
  ],
];

/** An event for a whole line that is a plain word, or null. */
export function wordsMeaning(line: string): { event: BalanceEvent } | null {
  const words = line.replace(/[\x00-\x1f]/g, " ").trim();
  for (const [pattern, kind, says] of sayings)
    if (pattern.test(words))
      return { event: { kind, says: `The balance says "${words}": ${says}. Nothing was taken.` } };
  return null;
}
