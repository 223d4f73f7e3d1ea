import type { Entry } from "../ledger/entry.ts";
import type { Kind } from "../ledger/kinds.ts";

/** What others are told of: a measurement, what became of it, and a lot that is settled. */
export const deliveredKinds = [
  "result",
  "amendment",
  "voiding",
  "lot-closed",
  "lot-reopened",
] as const satisfies readonly Kind[];

/** Media type of one event as JSON: CloudEvents 1.0, JSON event format. */
export const eventType = "application/cloudevents+json";

/** An entry as a CloudEvent 1.0 (cloudevents.io). Its id is that of the entry: whoever hears it twice sees it. */
export function cloudEventOf(entry: Entry, ledgerName: string) {
  return {
    specversion: "1.0",
    id: entry.id,
    source: `/${ledgerName}`,
    type: entry.kind,
    subject: entry.subject,
    time: entry.at,
    datacontenttype: "application/json",
    data: entry,
  };
}
