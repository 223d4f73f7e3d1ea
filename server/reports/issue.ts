import type { Locale } from "../../views/messages/language.ts";
import type { Report } from "../../views/reports/report.ts";
import type { EntryOf } from "../ledger/entry.ts";
import { LedgerError } from "../ledger/error.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { englishName } from "../metals/catalogue-code.ts";
import { builtIn, type Library } from "../metals/library.ts";
import { attemptsOfTheDay } from "./attempts.ts";
import { checksOfTheDay } from "./checks-of-the-day.ts";
import type { Print } from "./report-folder.ts";
import { type ReportOptions, reportOf } from "./report-of.ts";
import { statedBy } from "./stated.ts";
import { languageOf, writingIn } from "./writing.ts";

/** How a report is issued. */
export type IssueOptions = Pick<ReportOptions, "organisation" | "library"> & {
  /** prints the report and keeps what was printed, before the entry that names it is written */
  print(report: Report): Promise<Print>;
  /** version of the program, whose wording the report has */
  program: string;
  now(): Date;
  /** who authorises the report */
  by?: string;
  /** the language it is written in, for good; English when left out */
  locale?: Locale;
  /** time zone of the place; that of the computer when left out */
  zone?: string;
  /** idempotency key of the click: the same again gives the same number and copy */
  key?: string;
};

/**
 * Issues a report of the piece: prints it, writes "report-issued" and gives that entry. A record that was reported before
 * keeps its number and becomes the next copy; an amended record gets a new number that refers to the one it replaces.
 * A number is never used for two records, also with several benches on one ledger. Throws LedgerError, RangeError.
 */
export async function issueReport(
  ledger: Ledger,
  subject: string,
  options: IssueOptions,
): Promise<EntryOf<"report-issued">> {
  const entries = await ledger.entriesOf(subject);
  const { entry, issued, amendments, statement } = statedBy(entries);
  const again =
    options.key === undefined ? undefined : issued.find((report) => report.body.click === options.key);
  const since = amendments.at(-1)?.seq ?? 0;
  const current = issued.filter((report) => report.body.record === entry.id && report.seq > since);
  const number = current.at(-1)?.body.number;
  const copy = Math.max(0, ...current.map((report) => report.body.copy)) + 1;
  const replaces = issued.findLast((report) => report.seq < since)?.body.number;
  const record = { record: entry.id, recordHash: entry.hash };
  if (again) return again;
  return claimed(
    ledger,
    subject,
    number,
    {
      ...record,
      copy,
      program: options.program,
      ...(replaces === undefined ? {} : { replaces }),
      ...(options.by === undefined ? {} : { by: options.by }),
      ...(options.key === undefined ? {} : { click: options.key }),
      ...(ledger.key === null ? {} : { keyId: ledger.key.keyId }),
      ...(options.locale === undefined ? {} : { language: options.locale }),
      bands: bandsOf(
        statement.not_excluded.map(({ id }) => id),
        options.library ?? builtIn,
      ),
    },
    options,
  );
}

/** What "report-issued" says of a report, and where and when it stands. */
type Issue = Pick<EntryOf<"report-issued">, "subject" | "at" | "seq"> & { body: Body };

/**
 * The report as it was issued, put together again from the entries up to its own, so that what was added later changes
 * nothing on it. For reports issued before their print was kept.
 */
export async function reportAsIssued(
  ledger: Ledger,
  issued: Issue,
  { organisation, library, zone }: Pick<IssueOptions, "organisation" | "library" | "zone"> = {},
): Promise<Report> {
  const { number, copy, by, keyId, bands, language } = issued.body;
  const writing = writingIn(languageOf(language), zone);
  const written = await ledger.entriesOf(issued.subject);
  const entries = ledger.names?.named(written, writing.t("names.gone")) ?? written;
  return reportOf(
    entries.filter(({ seq }) => seq <= issued.seq),
    {
      number,
      copy,
      issuedAt: issued.at,
      attempts: await attemptsOfTheDay(ledger, issued.subject, issued.seq, writing),
      checks: await checksOfTheDay(ledger, issued.subject, issued.seq, writing),
      ...(organisation === undefined ? {} : { organisation }),
      ...(library === undefined ? {} : { library }),
      ...(by === undefined ? {} : { authorisedBy: by }),
      ...(keyId === undefined ? {} : { keyId }),
      ...(bands === undefined ? {} : { bands }),
    },
    writing,
  );
}

/** Names and bands of metals as they stand in the library now. */
function bandsOf(ids: readonly string[], library: Library): NonNullable<Body["bands"]> {
  return ids.flatMap((id) => {
    if (!library.has(id)) return [];
    const metal = library.metal(id);
    const { densityGPerCm3 } = metal;
    return [{ id, name: englishName(metal), low: densityGPerCm3.low, high: densityGPerCm3.high }];
  });
}

type Body = EntryOf<"report-issued">["body"];

/**
 * Takes a number and copy by writing the entry under a key made of both; a number taken meanwhile is passed over, and
 * what was printed under it stays on the disk unnamed.
 */
async function claimed(
  ledger: Ledger,
  subject: string,
  number: string | undefined,
  rest: Omit<Body, "number">,
  { print, now, ...as }: IssueOptions,
): Promise<EntryOf<"report-issued">> {
  const series = seriesOf(ledger);
  let next = number === undefined ? (await highestNumber(ledger, series)) + 1 : 0;
  for (let copy = rest.copy, tries = 0; tries < 1000; tries += 1) {
    const taken = number ?? `${series}${String(next).padStart(5, "0")}`;
    const key = `report-${taken}-copy-${copy}`;
    if ((await ledger.entry(key)) === null) {
      const body = { ...rest, number: taken, copy };
      const issue = { subject, at: now().toISOString(), seq: Number.MAX_SAFE_INTEGER, body };
      const printed = await print(await reportAsIssued(ledger, issue, as));
      try {
        const entry = await ledger.append("report-issued", subject, { ...body, print: printed }, { key });
        // what is printed on the report can be checked at once: its rows are signed for
        await ledger.checkpoint();
        return entry;
      } catch (cause) {
        if (!(cause instanceof LedgerError) || cause.kind !== "refused") throw cause;
      }
    }
    if (number === undefined) next += 1;
    else copy += 1;
  }
  throw new LedgerError("report.number.none-free", { tries: 1000 }, "busy");
}

/** Every signing key has a series of its own, so that benches that were apart never gave out the same number. */
function seriesOf({ key }: Ledger): string {
  return key === null ? "R-" : `R-${key.keyId.slice(0, 6).toUpperCase()}-`;
}

async function highestNumber(ledger: Ledger, series: string): Promise<number> {
  for (let before = Number.MAX_SAFE_INTEGER; ; ) {
    const issued = await ledger.entries({ kind: "report-issued", newestFirst: true, limit: 100, before });
    for (const entry of issued)
      if (entry.kind === "report-issued" && entry.body.number.startsWith(series))
        return Number(entry.body.number.slice(series.length));
    const last = issued.at(-1);
    if (!last) return 0;
    before = last.seq;
  }
}
