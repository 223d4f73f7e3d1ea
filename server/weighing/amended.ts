import { Refusal } from "../../calibration/refusal.ts";
import { omitUndefined } from "../compute/omit-undefined.ts";
import type { Happened } from "../ledger/ledger.ts";
import { secondTo } from "../settlements/person.ts";
import type { AmendmentTyped } from "./commands.ts";
import type { Recorded } from "./item.ts";
import type { AmendedReading, Known } from "./known.ts";
import { signed } from "./signed.ts";
import { mustBePossible, stoppedBy, stopping } from "./stop-checks.ts";

/**
 * An amendment: a further entry with name and reason that says what is now stated. A reading that is put right is
 * excluded and stays; the right one is a new entry before it. Throws Refusal.
 */
export function amended(item: Recorded, typed: AmendmentTyped, known: Known): Happened[] {
  const { reason, by } = signed(typed);
  const { result, readings = [], checks = [], secondPersonAbove: limit, people } = known;
  if (result && "refused" in result) throw new Refusal("record.not-amended", { why: result.refused });
  const stops = stopping(item, checks);
  mustBePossible(stops);
  const changed = omitUndefined({
    ticket: typed.ticket.trim() || undefined,
    description: typed.description.trim() || undefined,
    customer: typed.customer.trim() || undefined,
  });
  const note = typed.note.trim();
  if (result === undefined && Object.keys(changed).length === 0 && note === "")
    throw new Refusal("record.nothing-changed", {}, "reason");
  // words are put right by one, numbers above a limit by two
  const second =
    result === undefined || limit === undefined
      ? {}
      : { second: secondTo(by, typed.second, { limit, people }) };
  return [
    ...readings.flatMap((reading) => putRight(reading, reason, by)),
    {
      kind: "amendment",
      body: {
        replaces: item.closed.entry,
        reason,
        by,
        ...second,
        ...(Object.keys(changed).length > 0 ? { piece: changed } : {}),
        ...(result ? { result: stoppedBy(result, stops) } : {}),
      },
    },
    ...(note === "" ? [] : [{ kind: "note" as const, body: { text: note, by } }]),
  ];
}

function putRight({ capture, text, grams }: AmendedReading, reason: string, by: string): Happened[] {
  const body = {
    what: capture.role,
    reading: { text, unit: capture.unit, grams },
    source: "typed" as const,
    balance: capture.balance,
    lines: [],
    settled: { by: "typed" },
    operator: by,
  };
  return [
    { kind: "capture", body },
    { kind: "voiding", body: { entry: capture.id, reason, by } },
  ];
}
