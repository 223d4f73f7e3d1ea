import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Happened } from "../ledger/ledger.ts";
import { methods, rolesOf } from "../methods/index.ts";
import { type Item, standing } from "./item.ts";
import type { Known } from "./known.ts";
import { lastSecondReading } from "./second-person.ts";
import { liquidTemperature } from "./sensed.ts";
import { answered, mustBePossible, type Said, stoppedBy, stopping } from "./stop-checks.ts";

/**
 * The record of a weighing. A check that stops it refuses it until somebody says that its readings stand, and what was
 * found; one that cannot be answered
 * away refuses it until the reading is repeated or excluded. In a lot the work goes on: the record is written, says
 * nothing and counts for nothing until the check is answered, or it is amended or void. Throws Refusal.
 */
export function recorded(item: Item, said: Said, known: Known): Happened[] {
  const { result, secondPersonAbove, checks = [] } = known;
  if (secondPersonAbove !== undefined && !lastSecondReading(item)?.body.agrees)
    throw new Refusal("weighing.second.needed", { limit: secondPersonAbove });
  if (result === undefined) throw new Refusal("weighing.record.incomplete", { missing: missingIn(item) });
  const stops = stopping(item, checks);
  const key = `result-${item.id}`;
  if ("refused" in result) {
    const { refused, noDensity } = result;
    if (item.lot !== undefined && noDensity)
      return [{ kind: "result", body: stoppedBy(noDensity.result, noDensity.stops), key }];
    mustBePossible(stops);
    throw new Refusal("weighing.record.refused", { why: refused });
  }
  if (item.lot === undefined) mustBePossible(stops);
  if (stops.length === 0) return [{ kind: "result", body: result, key }];
  if (item.lot !== undefined) return [{ kind: "result", body: stoppedBy(result, stops), key }];
  return [answered(stops, said), { kind: "result", body: result, key }];
}

/** What the method needs and has not got. */
function missingIn(item: Item) {
  const readings = rolesOf(item.method).filter((role) => standing(item, role).length === 0);
  return [
    ...readings.map((role) =>
      message("weighing.record.needs-reading", { role: message(`bench.roles.${role}`) }),
    ),
    ...(liquidTemperature(item) === undefined && !methods[item.method].pieceTemperature
      ? [message("weighing.record.needs-temperature")]
      : []),
  ];
}
