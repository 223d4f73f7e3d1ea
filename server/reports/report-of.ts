import { tellId, tell as tellMessage, tellValue } from "../../views/messages/tell.ts";
import type { Line, Organisation, Replacement, Report } from "../../views/reports/report.ts";
import { type AssayOfItem, assaysOf } from "../laboratory/assay.ts";
import type { Entry } from "../ledger/entry.ts";
import { called } from "../metals/called.ts";
import { builtIn, type Library } from "../metals/library.ts";
import { conditionsOf, correctionsOf, liquidCelsius, methodOf, readingsOf } from "./conditions.ts";
import { decisionOf } from "./decision.ts";
import { opinionOf } from "./opinion.ts";
import { budgetOf, headlineOf, resultsOf, uncertaintyStatement } from "./results.ts";
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
  /** what else was weighed under the ticket on the day, in words */
  attempts?: string[];
  /** how the equipment stood in its checks, in words */
  checks?: string[];
  /** names and bands as the report was issued with; those of the library where one is missing */
  bands?: readonly { id: string; name: string; low: number; high: number }[];
}

/**
 * What a report of one measurement states, from the entries about the piece (oldest first), in the language of the
 * writing. ISO/IEC 17025:2017, 7.8.2 to 7.8.8, as far as it applies: what nobody stated is told as not stated. What a
 * person wrote stands as it was written. Throws Refusal while there is no result.
 */
export function reportOf(
  entries: readonly Entry[],
  options: ReportOptions,
  writing: Writing = writingIn("en"),
): Report {
  const { organisation = {} } = options;
  const { t, number, when, zone } = writing;
  const stated = statedBy(entries);
  const { piece: item, result, statement, entry } = stated;
  const { request } = result;
  const confidence = typeof request.confidence === "number" ? request.confidence : 0.9545;
  const shift = (statement.density_20_g_cm3 ?? statement.density_g_cm3) - statement.density_g_cm3;
  const claim = statement.conformity.claim ?? item.claim ?? null;
  const { claim: saidToBe, mass_g, stones, marks, note } = item.customerSupplied ?? {};
  const opinion = opinionOf(stated, options, writing);
  const celsius = liquidCelsius(result);
  return {
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
    headline: headlineOf(statement, { answer: opinion.because, confidence, celsius }, writing),
    demonstration: stated.captures.some(({ entry: { body } }) => body.source === "simulated"),
    customer: item.customer || t("report.not-stated"),
    method: methodOf(result, writing),
    item: itemOf(stated, claim, options, writing),
    photos: stated.photos.map(({ at, body: { hash, type, shows = "", width, height } }) => ({
      hash,
      type,
      shows,
      at: when(at),
      width,
      height,
    })),
    dates: lines(
      [t("report.dates.received"), when(item.receivedAt ?? stated.opened?.at ?? entry.at)],
      [t("report.dates.done"), workDone(stated, writing)],
      [t("report.dates.issued"), `${when(options.issuedAt)} (${zone(options.issuedAt)})`],
    ),
    sampling: item.sampling ?? t("report.sampling"),
    results: resultsOf(statement, celsius, writing),
    uncertaintyStatement: uncertaintyStatement(statement, confidence, writing),
    deviations: deviationsOf(stated, writing),
    authorisedBy: options.authorisedBy ?? null,
    conditions: [
      ...conditionsOf(stated, writing),
      ...lines(
        [t("report.organisation.verified-scale"), organisation.verifiedScale],
        [t("report.conditions.operator"), item.operator || t("report.not-stated")],
        [t("report.conditions.checks"), options.checks?.join("; ")],
      ),
    ],
    corrections: correctionsOf(result, writing),
    readings: readingsOf(stated, writing),
    budget: budgetOf(statement, writing),
    decision: decisionOf(stated, confidence, writing),
    opinion,
    attempts: options.attempts ?? [],
    laboratory: assaysOf(entries).map((one) => laboratoryLine(one, writing)),
    amendments: stated.amendments.map(({ at, body: { reason, by: one, second } }) => {
      const by = second === undefined ? one : t("signed.with-second", { by: one, second });
      return t("report.amended", { at: when(at), by, reason });
    }),
    signatures: [
      t("report.sign.weighed", { named: item.operator ? "yes" : "no", by: item.operator ?? "" }),
      t("report.sign.second"),
      t("report.sign.organisation"),
    ],
    otherTests: stated.evidence.map(
      ({ at, body }) =>
        `${tellId("test.name", body.test, writing.locale)}: ${typeof body.outcome === "string" ? body.outcome : tellMessage(body.outcome, writing.locale)} (${when(at)}${typeof body.by === "string" ? `, ${body.by}` : ""})`,
    ),
    customerSupplied: lines(
      [t("report.supplied.claim"), saidToBe],
      [t("report.supplied.mass"), mass_g && `${number(mass_g)} g`],
      [t("report.supplied.stones"), stones],
      [t("report.supplied.marks"), marks],
      [t("report.supplied.note"), note],
    ),
    replaces: replacement(stated, writing),
    voided: stated.voided ? tellValue(stated.voided.body.reason, writing.locale) : null,
    warnings: statement.checks.map((one) =>
      typeof one === "string" ? writing.tell(one) : tellMessage(one, writing.locale),
    ),
    statements: ([1, 2, 3] as const).map((place) => t(`report.statements.${place}`)),
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
}

/** A laboratory's finding as it was written down; one that was set aside says so. */
function laboratoryLine({ entry: { body }, excluded }: AssayOfItem, { t, number }: Writing): string {
  const { permille, expanded_permille: expanded, coverage_factor: k = "2", metal, laboratory, report } = body;
  const found = t("report.laboratory.found", {
    permille: expanded === undefined ? number(permille) : `${number(permille)} ± ${number(expanded)}`,
    k: expanded === undefined ? "none" : number(k),
    metal: t(`lots.metals.${metal}`),
    laboratory,
    report,
    method: body.method,
    day: body.date,
  });
  return excluded === undefined ? found : t("report.laboratory.excluded", { found, reason: excluded });
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
    [t("report.item.description"), item.description || t("report.not-stated")],
    [t("report.item.condition"), item.condition || t("report.not-stated")],
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

function workDone({ captures, entry }: Stated, { t, when }: Writing): string {
  const first = when(captures[0]?.entry.at ?? entry.at);
  const last = when(entry.at);
  return first === last ? first : t("report.dates.from-to", { first, last });
}

function deviationsOf({ captures, secondReadings }: Stated, { t, number, when }: Writing): string[] {
  // what was set aside, and the temperatures, are no readings of the balance that were used
  const used = captures.filter(({ entry, voided }) => voided === null && "reading" in entry.body);
  const typed = used.filter(({ entry }) => entry.body.source === "typed").length;
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
        : [t("report.deviations.voided", { at: when(entry.at), shown: shown(entry.body), reason: voided })],
    ),
    ...clockWentBack(captures.map(({ entry }) => entry)).map(([from, to]) =>
      t("report.deviations.clock", { from: when(from), to: when(to) }),
    ),
    ...(typed > 0 ? [t("report.deviations.typed", { typed, all: used.length })] : []),
    ...secondReadings.flatMap(({ at, body }) =>
      body.readings
        .filter(({ agrees }) => !agrees)
        .map(({ what, reading, against_g }) =>
          t("report.deviations.second-person", {
            by: body.by,
            at: when(at),
            what: t(`report.readings.roles.${what}`) ?? what,
            read: `${number(reading.text)} ${reading.unit}`,
            typed: `${number(against_g)} g`,
          }),
        ),
    ),
    ...secondReadings.flatMap(({ at, body: { by, temperature } }) =>
      temperature?.agrees === false
        ? [
            t("report.deviations.second-person", {
              by,
              at: when(at),
              what: t("second-person.of-temperature"),
              read: `${number(temperature.celsius)} °C`,
              typed: `${number(temperature.against)} °C`,
            }),
          ]
        : [],
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
function replacement({ amendments, issued }: Stated, { when }: Writing): Replacement | null {
  const last = amendments.at(-1);
  if (!last) return null;
  const before = issued.findLast((report) => report.seq < last.seq);
  return {
    number: before?.body.number ?? null,
    reason: last.body.reason,
    by: last.body.by,
    at: when(last.at),
  };
}
