import { type Message, message, type Param } from "../../calibration/message.ts";
import type { Conformity } from "../conformity/conformity.ts";
import type { ConsistentAfter } from "../conformity/consistent-after.ts";
import { bandAt } from "../conformity/exclusion.ts";
import { inPlainWords } from "../conformity/group.ts";
import { called } from "../metals/called.ts";
import type { StatedDensity } from "./statement-shape.ts";

/** Why the claim stands where it stands, with the numbers behind it; undefined without a claim. */
export function conformityMessage(
  { claimed, state, notExcluded, evidence, neededHalfWidthGPerCm3, consistentAfter }: Conformity,
  { density_g_cm3, expanded_g_cm3, interval_g_cm3 }: StatedDensity,
  { celsius, confidence, ways }: { celsius: number; confidence: number; ways: readonly Message[] },
): Message | undefined {
  if (!claimed) return undefined;
  const claim = called(claimed);
  const band = bandAt(claimed, celsius);
  const between = {
    low_g_cm3: interval_g_cm3[0],
    high_g_cm3: interval_g_cm3[1],
    band_low_g_cm3: band.low,
    band_high_g_cm3: band.high,
  };
  const confidence_percent = 100 * confidence;
  const against = evidence.excluded
    .filter(({ id }) => id === claimed.id)
    .map(({ says: sentence }) => sentence);
  switch (state) {
    case "consistent":
      return message("conformity.consistent", { claim, ...between, confidence_percent });
    case "consistent-not-unique": {
      const way = consistentAfter && wayToConsistent(claim, consistentAfter);
      return message("conformity.consistent-way", { claim, ...between, confidence_percent, way: way ?? "" });
    }
    case "excluded":
      if (against.length > 0) return message("conformity.excluded-by-tests", { claim, reasons: against });
      return message(density_g_cm3 < band.low ? "conformity.excluded-below" : "conformity.excluded-above", {
        claim,
        ...between,
        confidence_percent,
      });
    default: {
      const [contradiction] = evidence.contradictions;
      if (contradiction) return contradiction;
      if (neededHalfWidthGPerCm3 === undefined) return message("conformity.too-wide", { claim, ...between });
      const params = {
        claim,
        others: { anyOf: inPlainWords(notExcluded.filter(({ metal }) => metal !== claimed)) },
        expanded_g_cm3,
        needed_g_cm3: neededHalfWidthGPerCm3,
      };
      return ways.length === 0
        ? message("conformity.inconclusive", params)
        : message("conformity.inconclusive-would", { ...params, ways: { anyOf: ways } });
    }
  }
}

/** Which tests would leave the claim alone, or what no harmless test takes away. */
function wayToConsistent(claim: Param, after: ConsistentAfter): Message {
  return after.tests === null
    ? message("conformity.way.stays", { claim, stays: inPlainWords(after.stays) })
    : message("conformity.way.tests", {
        claim,
        tests: after.tests.map((test) => message(`conformity.way.${test}`)),
      });
}
