import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Happened } from "../ledger/ledger.ts";
import { type Role, rolesOf } from "../methods/index.ts";
import { type Capture, type Item, standing } from "./item.ts";
import { captureOf } from "./taken-reading.ts";

/**
 * Gives the dry and the wet readings each other's role, hung or with the beaker on the pan; the first entries stay,
 * excluded with this as their reason. Throws Refusal when one is missing or the method has more than two.
 */
export function swapped(item: Item, simulated: boolean): Happened[] {
  const [first, wet, ...more] = rolesOf(item.method);
  if (first !== "dry" || wet === undefined || more.length > 0)
    throw new Refusal("weighing.swap.more-than-two");
  const dry = standing(item, "dry");
  const other = standing(item, wet);
  if (dry.length === 0 || other.length === 0) throw new Refusal("weighing.swap.missing");
  return [
    ...dry.flatMap((capture) => swap(capture, wet, simulated)),
    ...other.flatMap((capture) => swap(capture, "dry", simulated)),
  ];
}

function swap(capture: Capture, role: Role, simulated: boolean): Happened[] {
  const key = `changed-over-${capture.id}`;
  const { sensed = [], silent = [] } = capture;
  const known = { simulated, sensors: { sensed, silent } };
  const body = captureOf(role, { ...capture, lines: [...capture.lines] }, known);
  const reason = message("weighing.swap.reason");
  return [
    { kind: "capture", body, key },
    { kind: "voiding", body: { entry: capture.id, reason }, key: `${key}-aside` },
  ];
}
