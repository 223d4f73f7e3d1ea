import { type Message, message } from "../../calibration/message.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";
import { isVoided } from "../ledger/projection.ts";

/** What happened to the record since a report of it was issued; null when the report still holds. */
export function reportStanding(entries: Entry[], report: EntryOf<"report-issued">): Message | null {
  const { number } = report.body;
  const voiding = entries.findLast(
    (entry): entry is EntryOf<"voiding"> => entry.kind === "voiding" && isVoided(entries),
  );
  if (voiding)
    return message("report.standing.void", { number, at: voiding.at, reason: voiding.body.reason });
  const amendment = entries.find(
    (entry): entry is EntryOf<"amendment"> => entry.kind === "amendment" && entry.seq > report.seq,
  );
  if (!amendment) return null;
  const next = entries.filter(isReport).findLast(({ seq }) => seq > amendment.seq)?.body.number ?? "none";
  return message("report.standing.amended", { number, at: amendment.at, next });
}

export function isReport(entry: Entry): entry is EntryOf<"report-issued"> {
  return entry.kind === "report-issued";
}
