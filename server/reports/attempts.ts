import { tell } from "../../views/messages/tell.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { weighingOf } from "../weighing/evolve.ts";
import { statedBy } from "./stated.ts";
import type { Writing } from "./writing.ts";

/** Weighings started are looked at in pages of so many. */
const pageSize = 200;

/**
 * What else was weighed under the same ticket on the day of the work, and how it ended: called off, declared void,
 * recorded. Entries after the row `upTo` change nothing.
 */
export async function attemptsOfTheDay(
  ledger: Ledger,
  subject: string,
  upTo: number,
  writing: Writing,
): Promise<string[]> {
  const { piece, opened, entry } = statedBy(
    (await ledger.entriesOf(subject)).filter(({ seq }) => seq <= upTo),
  );
  const day = opened?.at ?? entry.at;
  const found: string[] = [];
  for (const start of await startedOn(ledger, day, upTo, writing)) {
    if (start.subject === subject || !piece.ticket || start.body.ticket !== piece.ticket) continue;
    const entries = (await ledger.entriesOf(start.subject)).filter(({ seq }) => seq <= upTo);
    found.push(endOf(entries, start.at, writing));
  }
  return found.reverse();
}

/** Weighings started on that day, newest first. */
async function startedOn(
  ledger: Ledger,
  day: string,
  upTo: number,
  writing: Writing,
): Promise<EntryOf<"piece-opened">[]> {
  const found: EntryOf<"piece-opened">[] = [];
  for (let before = Math.min(upTo, Number.MAX_SAFE_INTEGER - 1) + 1; ; ) {
    const page = await ledger.entries({
      kind: "piece-opened",
      own: true,
      newestFirst: true,
      limit: pageSize,
      before,
    });
    for (const one of page)
      if (one.kind === "piece-opened" && writing.day(one.at) === writing.day(day)) found.push(one);
    const last = page.at(-1);
    if (!last || page.length < pageSize || Date.parse(last.at) < Date.parse(day) - 86_400_000) return found;
    before = last.seq;
  }
}

function endOf(entries: readonly Entry[], at: string, { t, when, locale }: Writing): string {
  const item = weighingOf(entries);
  const started = when(at);
  if (item?.voided) return t("report.attempts.void", { started, reason: item.voided.reason });
  if (item?.closed?.how === "recorded") return t("report.attempts.recorded", { started });
  const left = entries.findLast((entry): entry is EntryOf<"piece-left"> => entry.kind === "piece-left");
  if (!left) return t("report.attempts.open", { started });
  const { reason } = left.body;
  return t("report.attempts.called-off", {
    started,
    reason: typeof reason === "string" ? reason : tell(reason, locale),
  });
}
