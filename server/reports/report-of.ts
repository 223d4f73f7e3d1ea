import { tellId, tell as tellMessage, tellValue } from "../../views/messages/tell.ts";
import type { Line, Organisation, Replacement, Report } from "../../views/reports/report.ts";
import type { Entry } from "../ledger/entry.ts";
import { called } from "../metals/called.ts";
import { builtIn, type Library } from "../metals/library.ts";
import { conditionsOf, correctionsOf, liquidCelsius, methodOf, readingsOf } from "./conditions.ts";
import { decisionOf } from "./decision.ts";
import { opinionOf } from "./opinion.ts";
import { withoutReservedWords } from "./reserved-words.ts";
import { budgetOf, resultsOf, uncertaintyStatement } from "./results.ts";
import { type Stated, statedBy } from "./stated.ts";
import { type Writing, writingIn } from "./writing.ts";

export interface ReportOptions {
  organisation?: Organisation;
  number: string;
  copy: number;
  /** ISO 8601 */
  issuedAt: string;
  authorisedBy?: string;
  /** id of the key that signs the ledger, to be printed for the offline check */
  keyId?: string;
  /** with the owner's metals; default the built-in library */
  library?: Library;
  /** how the equipment stood in its checks, in words */
  checks?: string[];
  /** names and bands as the report was issued with; those of the library where one is missing */
  bands?: readonly { id: string; name: string; low: number; high: number }[];
}

/**
 * What a report of one measurement states, from the entries about the piece (oldest first), in the language of the
 * writing. ISO/IEC 17025:2017, 7.8.2 to 7.8.8, as far as it applies: items with nothing behind them are left out, not
 * invented. Without an accreditation the reserved words are taken out of every text. Throws Refusal while there is
 * no result.
 */
export function reportOf(
  entries: readonly Entry[],
  options: ReportOptions,
  writing: Writing = writingIn("en"),
): Report {
  const { organisation = {} } = options;
  const { t, number } = writing;
  const stated = statedBy(entries);
  const { piece: item, result, statement, entry } = stated;
  const { request } = result;
  const confidence = typeof request.confidence === "number" ? request.confidence : 0.9545;
  const shift = (statement.density_20_g_cm3 ?? statement.density_g_cm3) - statement.density_g_cm3;
  const claim = statement.conformity.claim ?? item.claim ?? null;
  const { claim: saidToBe, mass_g, stones, marks, note } = item.customerSupplied ?? {};
  const report: Report = {
    locale: writing.locale,
    onlyEnglish: writing.onlyEnglish,
    title: t("report.title"),
    organisation: lines(
      [t("report.organisation.name"), organisation.name],
      [t("report.organisation.address"), organisation.address],
      [t("report.organisation.contact"), organisation.contact],
      [t("report.organisation.location"), organisation.location],
      [
        t("report.organisation.accreditation"),
        organisation.accreditation &&
          `${organisation.accreditation.body}, ${organisation.accreditation.number}`,
      ],
    ),
    number: options.number,
    copy: options.copy,
    customer: item.customer ?? null,
    method: methodOf(result, writing),
    item: itemOf(stated, claim, options, writing),
    photos: stated.photos.map(({ at, body: { hash, type, shows = "", width, height } }) => ({
      hash,
      type,
      shows,
      at,
      width,
      height,
    })),
    dates: lines(
      [t("report.dates.received"), item.receivedAt ?? stated.opened?.at],
      [t("report.dates.done"), workDone(stated, writing)],
      [t("report.dates.issued"), options.issuedAt],
    ),
    sampling: item.sampling ?? t("report.sampling"),
    results: resultsOf(statement, liquidCelsius(result), writing),
    uncertaintyStatement: uncertaintyStatement(statement, confidence, writing),
    deviations: deviationsOf(stated, writing),
    authorisedBy: options.authorisedBy ?? null,
    conditions: [
      ...conditionsOf(stated, writing),
      ...lines(
        [t("report.organisation.verified-scale"), organisation.verifiedScale],
        [t("report.conditions.operator"), item.operator],
        [t("report.conditions.checks"), options.checks?.join("; ")],
      ),
    ],
    corrections: correctionsOf(result, writing),
    readings: readingsOf(stated, writing),
    budget: budgetOf(statement, writing),
    decision: decisionOf(stated, confidence, writing),
    opinion: opinionOf(stated, options, writing),
    otherTests: stated.evidence.map(
      ({ at, body }) =>
        `${tellId("test.name", body.test, writing.locale)}: ${typeof body.outcome === "string" ? body.outcome : tellMessage(body.outcome, writing.locale)} (${at}${typeof body.by === "string" ? `, ${body.by}` : ""})`,
    ),
    customerSupplied: lines(
      [t("report.supplied.claim"), saidToBe],
      [t("report.supplied.mass"), mass_g && `${number(mass_g)} g`],
      [t("report.supplied.stones"), stones],
      [t("report.supplied.marks"), marks],
      [t("report.supplied.note"), note],
    ),
    replaces: replacement(stated),
    voided: stated.voided?.body.reason ?? null,
    warnings: statement.checks.map((one) =>
      typeof one === "string" ? writing.tell(one) : tellMessage(one, writing.locale),
    ),
    statements: ([1, 2] as const).map((place) => t(`report.statements.${place}`)),
    cautions: ([1, 2] as const).map((place) => t(`report.cautions.${place}`)),
    plot: {
      value: statement.density_g_cm3 + shift,
      low: statement.interval_g_cm3[0] + shift,
      high: statement.interval_g_cm3[1] + shift,
      confidence,
      claim,
    },
    record: {
      subject: entry.subject,
      entry: entry.id,
      hash: entry.hash,
      row: entry.seq,
      keyId: options.keyId ?? null,
      checkHow: options.keyId
        ? t("report.record.how-with-key", { subject: entry.subject, key: options.keyId })
        : t("report.record.how", { subject: entry.subject }),
      versions: Object.entries(result.versions).map(([name, value]) => ({
        label: tellId("record-page.version", name, writing.locale),
        value,
      })),
    },
    issuedAt: options.issuedAt,
  };
  return organisation.accreditation ? report : unaccredited(report, writing);
}

function unaccredited(report: Report, { t }: Writing): Report {
  const { value, count } = withoutReservedWords(
    { ...report, record: { ...report.record, hash: "" } },
    t("report.reserved-word"),
  );
  if (count > 0) value.deviations.push(t("report.deviations.reserved", { count }));
  return { ...value, record: { ...value.record, hash: report.record.hash } };
}

function lines(...given: readonly (readonly [label: string, value: string | null | undefined])[]): Line[] {
  return given.flatMap(([label, value]) => (value ? [{ label, value }] : []));
}

function itemOf(
  { piece: item, photos }: Stated,
  claim: string | null,
  { library = builtIn }: ReportOptions,
  { t, locale }: Writing,
): Line[] {
  const nameOf = (id: string) =>
    library.has(id) ? `${tellValue(called(library.metal(id)), locale)} (${id})` : id;
  return lines(
    [t("report.item.ticket"), item.ticket],
    [t("report.item.description"), item.description],
    [t("report.item.condition"), item.condition],
    [t("report.item.lot"), item.lot],
    [t("report.item.claim"), claim === null ? t("report.item.no-claim") : nameOf(claim)],
    ...photos.map(
      ({ body: { shows = "", hash } }) =>
        [
          t("report.item.photo"),
          t("report.item.photo-is", { shows: shows === "" ? t("report.item.photo-of-item") : shows, hash }),
        ] as const,
    ),
  );
}

function workDone({ captures, entry }: Stated, { t }: Writing): string {
  const first = captures[0]?.entry.at ?? entry.at;
  return first === entry.at ? first : t("report.dates.from-to", { first, last: entry.at });
}

function deviationsOf({ captures, secondReadings }: Stated, { t, number }: Writing): string[] {
  const typed = captures.filter(({ entry }) => entry.body.source === "typed").length;
  const simulated = captures.some(({ entry }) => entry.body.source === "simulated");
  const shown = (body: Stated["captures"][number]["entry"]["body"]) =>
    "reading" in body
      ? `${t(`report.readings.roles.${body.what}`) ?? body.what} ${number(body.reading.text)} ${body.reading.unit}`
      : `${number(body.celsius)} °C`;
  return [
    ...(simulated ? [t("report.deviations.simulated")] : []),
    ...captures.flatMap(({ entry, voided }) =>
      voided === null
        ? []
        : [t("report.deviations.voided", { at: entry.at, shown: shown(entry.body), reason: voided })],
    ),
    ...clockWentBack(captures.map(({ entry }) => entry)).map(([from, to]) =>
      t("report.deviations.clock", { from, to }),
    ),
    ...(typed > 0 ? [t("report.deviations.typed", { typed, all: captures.length })] : []),
    ...secondReadings.flatMap(({ at, body }) =>
      body.readings
        .filter(({ agrees }) => !agrees)
        .map(({ what, reading, against_g }) =>
          t("report.deviations.second-person", {
            by: body.by,
            at,
            what: t(`report.readings.roles.${what}`) ?? what,
            read: `${number(reading.text)} ${reading.unit}`,
            typed: `${number(against_g)} g`,
          }),
        ),
    ),
  ];
}

/** Where the clock went back between two readings: their order is that of the ledger, their times are not to be trusted. */
function clockWentBack(inOrder: readonly { at: string }[]): (readonly [from: string, to: string])[] {
  return inOrder.flatMap(({ at }, place) => {
    const before = inOrder[place - 1]?.at;
    return before !== undefined && at < before ? [[before, at] as const] : [];
  });
}

/** What the latest amendment replaces: the report issued before it, if there was one. */
function replacement({ amendments, issued }: Stated): Replacement | null {
  const last = amendments.at(-1);
  if (!last) return null;
  const before = issued.findLast((report) => report.seq < last.seq);
  return { number: before?.body.number ?? null, reason: last.body.reason, by: last.body.by, at: last.at };
}
