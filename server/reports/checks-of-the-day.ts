import { tellId } from "../../views/messages/tell.ts";
import type { EntryOf } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { statedBy } from "./stated.ts";
import type { Writing } from "./writing.ts";

/** The name under which a bench keeps the checks of its thermometer. */
const thermometer = "thermometer";

/**
 * How the equipment of a measurement stood in its checks when the result was written: of every balance used and of the
 * thermometer the newest check of each kind, with its date. Entries after the row `upTo` change nothing.
 */
export async function checksOfTheDay(
  ledger: Ledger,
  subject: string,
  upTo: number,
  writing: Writing,
): Promise<string[]> {
  const entries = await ledger.entriesOf(subject);
  const { captures, entry } = statedBy(entries.filter(({ seq }) => seq <= upTo));
  const first = captures[0]?.entry ?? entry;
  const balances = captures.flatMap(({ entry: { body } }) =>
    "reading" in body && body.source !== "typed" && body.balance !== undefined ? [body.balance] : [],
  );
  const lines: string[] = [];
  for (const name of new Set([...balances, thermometer])) {
    const newest = new Map<string, EntryOf<"check">>();
    for (const check of await ledger.entriesOf(name))
      if (check.kind === "check" && check.seq < entry.seq && ofEquipment(check))
        newest.set(check.body.kind, check);
    const of = name === thermometer ? writing.t("report.checks.thermometer") : writing.balance(name);
    // one that failed on the day stays told when a later one passed
    const failed = (await ledger.entriesOf(name)).filter(
      (check): check is EntryOf<"check"> =>
        check.kind === "check" &&
        check.seq < entry.seq &&
        ofEquipment(check) &&
        !check.body.passed &&
        writing.day(check.at) === writing.day(first.at) &&
        newest.get(check.body.kind)?.seq !== check.seq,
    );
    if (newest.size === 0) lines.push(writing.t("report.checks.none", { of }));
    for (const check of [...failed, ...newest.values()]) lines.push(inWords(of, check, first.at, writing));
  }
  return lines;
}

/** How a learner's hands scatter says nothing of the balance, and their name is nobody else's business. */
const ofEquipment = ({ body }: EntryOf<"check">) => body.kind !== "trainee";

function inWords(
  of: string,
  { at, body }: EntryOf<"check">,
  workAt: string,
  { t, locale, when, day }: Writing,
): string {
  const kind = tellId("report.checks.kinds", body.kind, locale);
  return t("report.checks.stood", {
    of,
    kind,
    passed: String(body.passed),
    when:
      day(at) === day(workAt) ? t("report.checks.same-day") : t("report.checks.last-on", { day: when(at) }),
  });
}
