import { z } from "zod";
import { keyed } from "../../../calibration/keyed.ts";
import { message } from "../../../calibration/message.ts";
import { massUnits } from "../../../calibration/units.ts";
import { waterRange } from "../../../calibration/water.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { methodNames, methods, rolesOf } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import type { Command } from "../../station/command.ts";
import { weighingOf } from "../../weighing/evolve.ts";
import type { Item } from "../../weighing/item.ts";
import { type Entries, refuseEntry } from "../forms/form.ts";

/** Methods whose weighing is readings alone. */
export const offlineMethods = methodNames.filter((name) => methods[name].form === undefined);

/** A weighing typed on a device without a connection: the water, and every reading of its method. Nothing is begun before every entry of it is right. */
export const offlineForm =
  (hasMetal: (id: string) => boolean) =>
  ({ text, maybeText, choice, decimal, maybeDecimal }: Entries) =>
    z
      .object({
        key: z.uuid(),
        readAt: z.iso.datetime(),
        ticket: text({ most: 80, missing: message("weighing.ticket.missing") }),
        description: maybeText({ most: 400 }),
        claim: maybeText(),
        method: choice(offlineMethods),
        celsius: decimal({ unit: "°C", ...waterRange }),
        unit: choice(massUnits),
        ...keyed(keptRoles, () => maybeDecimal({ from: 0 })),
      })
      .superRefine((typed, context) => {
        if (typed.claim !== undefined && !hasMetal(typed.claim))
          refuseEntry(context, "claim", message("claim.unknown", { claim: typed.claim }));
        for (const role of rolesOf(typed.method))
          if (typed[role] === undefined) refuseEntry(context, role, message("form.number.empty"));
      });

/** Every reading that one of these methods needs, once. */
export const keptRoles = [...new Set(offlineMethods.flatMap(rolesOf))];

type Typed = z.infer<ReturnType<ReturnType<typeof offlineForm>>>;

/**
 * Does what is still to be done of the weighing, up to its record: it may have come before, whole or in part. Each step
 * names how much of it there was, so that one sent by two pages at once is done once. Throws Refusal, LedgerError.
 */
export async function takeKept(typed: Typed, { station }: Bench, ledger: Ledger): Promise<Item> {
  for (;;) {
    const entries = await ledger.entriesOf(typed.key);
    const item = weighingOf(entries);
    const isNoted = entries.some(({ kind, body }) => kind === "note" && isOfflineNote(body));
    const next = item?.closed ? undefined : isNoted || !item ? stepOf(typed, item) : noteOf(typed);
    if (item && !next) return item;
    await station.do({ ...next!, subject: typed.key, seen: entries.length } as Command);
  }
}

const noteCode = "weighing.note.kept-on-device";

/** The ledger tells the moment it stored an entry; when the readings were typed is told beside them. */
const noteOf = ({ readAt }: Typed) => ({ do: "note", message: message(noteCode, { at: readAt }) });

const isOfflineNote = (body: object) => "message" in body && Object(body.message).code === noteCode;

type Step = Command extends infer One ? (One extends Command ? Omit<One, "subject" | "seen"> : never) : never;

function stepOf(
  { readAt, ticket, description = "", claim, method, celsius, unit, ...typed }: Typed,
  item?: Item,
): Step {
  if (!item)
    return {
      do: "start-weighing",
      ticket: { ticket, description, method, ...(claim === undefined ? {} : { claim }) },
    };
  if (item.waterCelsius === undefined) return { do: "state-temperature", celsius };
  const role = rolesOf(method).find((one) => !item.captures.some((capture) => capture.role === one));
  if (role === undefined) return { do: "write-record" };
  const reading = { text: typed[role]!, unit, takenBy: "typed" as const, balance: "typed", lines: [] };
  return { do: "take-reading", role, reading };
}
