import { methods } from "../../methods/index.ts";
import { boxesSwapped } from "./boxes-swapped.ts";
import { bubblesGrowing } from "./bubbles-growing.ts";
import type { Check, CheckCode } from "./check.ts";
import { climbed } from "./climbed.ts";
import { creepPossible } from "./creep-possible.ts";
import { creeping } from "./creeping.ts";
import { decimalsChanged } from "./decimals-changed.ts";
import { denserThanOsmium } from "./denser-than-osmium.ts";
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
import { movedOn } from "./moved-on.ts";
import { notCovered } from "./not-covered.ts";
import { nothingOnHook } from "./nothing-on-hook.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { readingsAlike } from "./readings-alike.ts";
import { repeatsExhausted } from "./repeats-exhausted.ts";
import { restsOnBottom } from "./rests-on-bottom.ts";
import { scatterAboveAssumed } from "./scatter-above-assumed.ts";
import { scatterContradicts } from "./scatter-contradicts.ts";
import { scattersLittle } from "./scatters-little.ts";
import { sensorDisplayChanged, sensorSilent, temperatureJumped, thermometersDiffer } from "./sensors.ts";
import type { Situation } from "./situation.ts";
import { stillClimbing } from "./still-climbing.ts";
import { tareWhileImmersed } from "./tare-while-immersed.ts";
import { trend } from "./trend.ts";
import { unitsMixed } from "./units-mixed.ts";
import { voidOrLighter } from "./void-or-lighter.ts";
import { waterUnlikeRoom } from "./water-unlike-room.ts";
import { zeroMoved } from "./zero-moved.ts";

/** All checks, in the order their questions are worth asking: slips of entry, then of procedure, then the result. */
export const procedureChecks: readonly ProcedureCheck[] = [
  unitsMixed,
  decimalsChanged,
  fahrenheit,
  waterUnlikeRoom,
  sensorSilent,
  temperatureJumped,
  sensorDisplayChanged,
  thermometersDiffer,
  massNotExpected,
  displayStuck,
  movedOn,
  creeping,
  creepPossible,
  dryReadingsDiffer,
  boxesSwapped,
  displacedForImmersed,
  displacementNegative,
  floats,
  nothingOnHook,
  restsOnBottom,
  notCovered,
  denserThanOsmium,
  hangerInDry,
  hangerInImmersed,
  tareWhileImmersed,
  zeroMoved,
  stillClimbing,
  climbed,
  bubblesGrowing,
  trend,
  scatterContradicts,
  scatterAboveAssumed,
  readingsAlike,
  scattersLittle,
  driftImmersed,
  dryMassChanged,
  voidOrLighter,
  lowerThanClaim,
  higherThanClaim,
  repeatsExhausted,
];

/** Checks that compare the result with the claim, or judge how good it is: none while the readings are in doubt. */
const judging: ReadonlySet<CheckCode> = new Set([
  "check.lower-than-claim",
  "check.higher-than-claim",
  "check.void-or-lighter",
  "check.repeats-exhausted",
]);

/**
 * What looks wrong about how a piece was weighed so far, stops first. Pure: same situation, same checks; no reading is
 * changed. Throws TypeError only when a reading's text is no decimal number.
 */
export function checksOf(situation: Situation): Check[] {
  const { without, checks = [] } = methods[situation.method];
  const shared = procedureChecks.filter(({ code }) => !without.includes(code));
  const found = [...shared, ...checks].flatMap(({ code, detect: look }) => {
    const seen = look(situation);
    return seen === undefined ? [] : [{ code, ...seen }];
  });
  const stops = found.filter(({ severity }) => severity === "stop");
  const kept = found.filter(
    ({ code, severity }) => severity === "warn" && (stops.length === 0 || !judging.has(code)),
  );
  return [...stops, ...kept];
}
