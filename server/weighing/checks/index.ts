import { boxesSwapped } from "./boxes-swapped.ts";
import { bubblesGrowing } from "./bubbles-growing.ts";
import { climbed } from "./climbed.ts";
import { decimalsChanged } from "./decimals-changed.ts";
import { displacedForImmersed } from "./displaced-for-immersed.ts";
import { displacementNegative } from "./displacement-negative.ts";
import { displayStuck } from "./display-stuck.ts";
import { driftImmersed } from "./drift-immersed.ts";
import { dryMassChanged } from "./dry-mass-changed.ts";
import { dryReadingsDiffer } from "./dry-readings-differ.ts";
import { fahrenheit } from "./fahrenheit.ts";
import { floats } from "./floats.ts";
import { hangerInDry } from "./hanger-in-dry.ts";
import { hangerInImmersed } from "./hanger-in-immersed.ts";
import { higherThanClaim } from "./higher-than-claim.ts";
import { lowerThanClaim } from "./lower-than-claim.ts";
import { massNotExpected } from "./mass-not-expected.ts";
import { notCovered } from "./not-covered.ts";
import { nothingOnHook } from "./nothing-on-hook.ts";
import { repeatsExhausted } from "./repeats-exhausted.ts";
import { restsOnBottom } from "./rests-on-bottom.ts";
import type { Situation } from "./situation.ts";
import { stillClimbing } from "./still-climbing.ts";
import type { Suspicion } from "./suspicion.ts";
import { tareWhileImmersed } from "./tare-while-immersed.ts";
import { unitsMixed } from "./units-mixed.ts";
import { voidOrLighter } from "./void-or-lighter.ts";
import type { Watch } from "./watch.ts";
import { waterUnlikeRoom } from "./water-unlike-room.ts";
import { zeroMoved } from "./zero-moved.ts";

/** All watches, in the order their questions are worth asking: slips of entry, then of procedure, then the result. */
export const watches: readonly Watch[] = [
  unitsMixed,
  decimalsChanged,
  fahrenheit,
  waterUnlikeRoom,
  massNotExpected,
  displayStuck,
  dryReadingsDiffer,
  boxesSwapped,
  displacedForImmersed,
  displacementNegative,
  floats,
  nothingOnHook,
  restsOnBottom,
  notCovered,
  hangerInDry,
  hangerInImmersed,
  tareWhileImmersed,
  zeroMoved,
  stillClimbing,
  climbed,
  bubblesGrowing,
  driftImmersed,
  dryMassChanged,
  voidOrLighter,
  lowerThanClaim,
  higherThanClaim,
  repeatsExhausted,
];

/**
 * What looks wrong about a piece so far, blocking questions first. Pure: same situation, same suspicions; no reading
 * is changed. Throws RangeError only when a reading's text is no decimal number.
 */
export function suspicions(situation: Situation): Suspicion[] {
  const found = watches.flatMap((watch) => {
    const seen = watch.look(situation);
    return seen === undefined ? [] : [{ kind: watch.kind, ...seen }];
  });
  return [...found.filter(({ blocking }) => blocking), ...found.filter(({ blocking }) => !blocking)];
}
