import { builtIn, type Library } from "../alloys/library.ts";
import { type Conformity, conformity as conformityShape } from "../compute/contract.ts";
import { riskSays, ruleSays } from "../findings/decision-words.ts";
import type { Entry } from "../ledger/entry.ts";
import { conditionsOf, correctionsOf, liquidCelsius, methodOf, readingsOf } from "./conditions.ts";
import type { AliveMetal, House, Line, Replacement, Report } from "./report.ts";
import { withoutReservedWords } from "./reserved-words.ts";
import { budgetOf, resultsOf, uncertaintyStatement } from "./results.ts";
import { type Stated, statedBy } from "./stated.ts";

export interface ReportOptions {
  house?: House;
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

const states = {
  agrees: "agrees with the claim",
  "agrees-not-alone": "agrees with the claim, but not with it alone",
  disagrees: "disagrees with the claim",
  undecided: "undecided",
};

/**
 * What a report of one measurement states, from the entries about the piece (oldest first).
 * ISO/IEC 17025:2017, 7.8.2 to 7.8.8, as far as it applies: items with nothing behind them are left out, not invented.
 * Without an accreditation the reserved words are taken out of every text. Throws RangeError while there is no result.
 */
export function reportOf(entries: readonly Entry[], options: ReportOptions): Report {
  const { house = {}, library = builtIn, bands = [] } = options;
  const stated = statedBy(entries);
  const { piece, result, entry } = stated;
  const { response, request } = result;
  const confidence = typeof request.confidence === "number" ? request.confidence : 0.9545;
  const celsius = liquidCelsius(result);
  const finding = response.finding;
  const shift = (response.density_20_g_cm3 ?? response.density_g_cm3) - response.density_g_cm3;
  const claim = finding?.claim ?? piece.claim ?? null;
  const report: Report = {
    title: "Report of a density test",
    house: lines(
      ["Issued by", house.name],
      ["Address", house.address],
      ["Contact", house.contact],
      ["Place of the work", house.location],
      ["Accreditation", house.accreditation && `${house.accreditation.body}, ${house.accreditation.number}`],
    ),
    number: options.number,
    copy: options.copy,
    customer: piece.customer ?? null,
    method: methodOf(result),
    item: lines(
      ["Ticket", piece.ticket],
      ["Description", piece.description],
      ["Condition", piece.condition],
      ["Lot", piece.lot],
      ["Claim tested", claim === null ? "none" : nameOf(claim, library)],
      ...stated.photos.map(
        ({ body: { shows = "of the item", hash } }) => ["Photo", `${shows}, SHA-256 ${hash}`] as const,
      ),
    ),
    photos: stated.photos.map(({ at, body: { hash, type, shows = "", width, height } }) => ({
      hash,
      type,
      shows,
      at,
      width,
      height,
    })),
    dates: lines(
      ["Received", piece.receivedAt ?? stated.opened?.at],
      ["Work done", workDone(stated)],
      ["Issued", options.issuedAt],
    ),
    sampling: piece.sampling ?? "None: the whole piece was tested.",
    results: resultsOf(response, celsius),
    uncertaintyStatement: uncertaintyStatement(response, confidence),
    deviations: deviationsOf(stated),
    authorisedBy: options.authorisedBy ?? null,
    conditions: [
      ...conditionsOf(stated),
      ...lines(
        ["Scale verified for trade", house.verifiedScale],
        ["Operator", piece.operator],
        ["Checks of the equipment", options.checks?.join("; ")],
      ),
    ],
    corrections: correctionsOf(result),
    readings: readingsOf(stated),
    budget: budgetOf(response),
    decision: decisionOf(stated, confidence),
    opinion: {
      heading: "Opinion and interpretation (not a measured result)",
      state: finding ? states[finding.state] : "no claim was tested",
      because: finding?.because ?? "No claim was tested.",
      alive: (response.alive ?? []).map((id) => {
        const band = bands.find((one) => one.id === id);
        return band ? { id, name: band.name, band: [band.low, band.high] as const } : alive(id, library);
      }),
    },
    otherTests: stated.evidence.map(
      ({ at, body }) =>
        `${body.test}: ${body.outcome} (${at}${typeof body.by === "string" ? `, ${body.by}` : ""})`,
    ),
    customerSupplied: lines(
      ["Said to be", piece.customerSupplied?.claim],
      ["Mass, as stated", piece.customerSupplied?.mass_g && `${piece.customerSupplied.mass_g} g`],
      ["Stones", piece.customerSupplied?.stones],
      ["Marks", piece.customerSupplied?.marks],
      ["Note", piece.customerSupplied?.note],
    ),
    replaces: replacement(stated),
    voided: stated.voided?.body.reason ?? null,
    warnings: response.warnings ?? [],
    statements: [
      "The results relate only to the item tested, as it was received.",
      "This report shall not be reproduced except in full.",
    ],
    cautions: [
      "Density is evidence of the whole volume, not proof of composition: every material listed as alive fits it. The referee methods are ISO 11426 (gold, cupellation) and ISO 11427 (silver), done by licensed laboratories.",
      "Hallmarking, dealing and weighing for trade are ruled by local law; scales used for buying need legal verification.",
    ],
    plot: {
      value: response.density_g_cm3 + shift,
      low: response.interval_g_cm3[0] + shift,
      high: response.interval_g_cm3[1] + shift,
      confidence,
      claim,
    },
    record: {
      subject: entry.subject,
      entry: entry.id,
      hash: entry.hash,
      row: entry.seq,
      keyId: options.keyId ?? null,
      checkHow: `on the bench, underhook export --record ${entry.subject} --out record.json; then, on any computer and without a network, underhook verify record.json${options.keyId === undefined ? "" : ` --key ${options.keyId}`}. The hash it names must be the one printed here.`,
      versions: Object.entries(result.versions).map(([label, value]) => ({ label, value })),
    },
    issuedAt: options.issuedAt,
  };
  return house.accreditation ? report : unaccredited(report);
}

function unaccredited(report: Report): Report {
  const { value, count } = withoutReservedWords({ ...report, record: { ...report.record, hash: "" } });
  if (count > 0)
    value.deviations.push(
      `${count} ${count === 1 ? "word that is" : "words that are"} reserved to accredited laboratories ${count === 1 ? "was" : "were"} left out of this report.`,
    );
  return { ...value, record: { ...value.record, hash: report.record.hash } };
}

function lines(...given: readonly (readonly [label: string, value: string | null | undefined])[]): Line[] {
  return given.flatMap(([label, value]) => (value ? [{ label, value }] : []));
}

function nameOf(id: string, library: Library): string {
  return library.has(id) ? `${library.metal(id).name} (${id})` : id;
}

function alive(id: string, library: Library): AliveMetal {
  if (!library.has(id)) return { id, name: id, band: null };
  const { name, densityGPerCm3 } = library.metal(id);
  return { id, name, band: [densityGPerCm3.low, densityGPerCm3.high] };
}

function workDone({ captures, entry }: Stated): string {
  const first = captures[0]?.entry.at ?? entry.at;
  return first === entry.at ? first : `${first} to ${entry.at}`;
}

function deviationsOf({ captures }: Stated): string[] {
  const voided = captures.filter((capture) => capture.voided !== null);
  const typed = captures.filter(({ entry }) => entry.body.source === "typed").length;
  const simulated = captures.some(({ entry }) => entry.body.source === "simulated");
  return [
    ...(simulated ? ["DEMONSTRATION: readings of a simulated balance; no piece was weighed."] : []),
    ...voided.map(
      ({ entry, voided }) =>
        `A reading of ${entry.at} (${captureShown(entry.body)}) was declared void: ${voided}.`,
    ),
    ...(typed > 0
      ? [`${typed} of ${captures.length} readings were typed by the operator, not received from the balance.`]
      : []),
  ];
}

function captureShown(body: Stated["captures"][number]["entry"]["body"]): string {
  return "reading" in body ? `${body.what} ${body.reading.text} ${body.reading.unit}` : `${body.celsius} °C`;
}

function decisionOf({ piece, result }: Stated, confidence: number): string[] {
  const percent = `${+(confidence * 100).toFixed(2)} %`;
  const rule =
    piece.decisionRule ??
    `A material is excluded when its whole density band lies outside the coverage interval for ${percent}; otherwise it stays alive.${result.response.finding?.conformity ? "" : " No other rule was agreed."}`;
  const risk = `Risk: of pieces that truly are the claimed metal, at most ${+((1 - confidence) * 100).toFixed(2)} % would be excluded by chance. A material inside the interval is not shown to be present; "fits" is not "is".`;
  const kept = conformityShape.safeParse(result.response.finding?.conformity);
  const conformity = kept.success ? kept.data : undefined;
  return result.response.finding
    ? [`Decision rule: ${rule}`, risk, ...(conformity ? conformityLines(conformity) : [])]
    : ["No claim was tested and no decision rule applies."];
}

/** The verdict on the claim's limits under the rule kept with the piece when it was opened. */
function conformityLines(conformity: Conformity): string[] {
  const { limits_g_cm3: limits, acceptance_g_cm3: acceptance } = conformity;
  const between = ([low, high]: readonly [number, number]) => `${low.toFixed(3)} to ${high.toFixed(3)} g/cm³`;
  return [
    `Rule for the claim's limits, agreed before measuring: ${ruleSays(conformity.rule)} ${riskSays(conformity.worst_acceptance_risk, acceptance)}`,
    `Limits at the temperature of the liquid: ${between(limits)}${acceptance ? `; accepted under the rule: ${between(acceptance)}` : ""}. ${verdictNames[conformity.verdict]}: ${conformity.says}`,
  ];
}

const verdictNames = {
  pass: "Pass",
  "conditional-pass": "Conditional pass",
  "conditional-fail": "Conditional fail",
  fail: "Fail",
} as const;

/** What the latest amendment replaces: the report issued before it, if there was one. */
function replacement({ amendments, issued }: Stated): Replacement | null {
  const last = amendments.at(-1);
  if (!last) return null;
  const before = issued.findLast((report) => report.seq < last.seq);
  return { number: before?.body.number ?? null, reason: last.body.reason, by: last.body.by, at: last.at };
}
