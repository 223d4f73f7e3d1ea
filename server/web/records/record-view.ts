import type { CurvePoint } from "../../../calibration/distribution.ts";
import { fixed, fromTo, inLocale, plusMinus } from "../../../views/numbers.ts";
import type { Capture as CaptureView } from "../../../views/records/captures.tsx";
import type { RecordView } from "../../../views/records/show.tsx";
import {
  bandsAround,
  budgetInput,
  domainAround,
  findingViewOf,
  measuredOf,
} from "../../../views/result-parts.ts";
import { type Locale, words } from "../../../views/words/index.ts";
import { toldValue } from "../../../views/words/told.ts";
import {
  type ComputeRequest,
  type ComputeResponse,
  computeRequest,
  computeResponse,
} from "../../compute/contract.ts";
import { lookAlike, satisfies } from "../../conformity/look-alike.ts";
import { toldApartHere } from "../../conformity/plan/usual-suspects.ts";
import type { Entry } from "../../ledger/entry.ts";
import type { BodyOf } from "../../ledger/kinds.ts";
import type { Library } from "../../metals/library.ts";
import type { Stated } from "../../reports/stated.ts";
import { metalBands } from "../../station/metal-bands.ts";
import { secondReadingView } from "../../station/second-person-view.ts";
import type { Capture, Piece } from "../../weighing/piece.ts";
import { whenOf } from "../when.ts";
import { amendmentViews } from "./amendment-views.ts";

/** Everything the page of one record shows, read from the entries about its piece. */
export function recordView(
  piece: Piece,
  entries: readonly Entry[],
  { result: stated, entry, piece: told }: Stated,
  curve: readonly CurvePoint[],
  { csrfToken, locale, library }: { csrfToken: string; locale: Locale; library: Library },
): Omit<RecordView, "photos" | "photoForm" | "photoAside" | "photosAside" | "amendable" | "assay"> {
  const bands = metalBands(library);
  const say = words(locale).record;
  const request = computeRequest.parse(stated.request);
  const response = computeResponse.parse(stated.response);
  const first = entries.findLast((one) => one.kind === "result");
  const { checked } = stated;
  const voiding = entries.findLast((one) => one.kind === "voiding" && one.body.entry === first?.id);
  const { density_g_cm3: value, expanded_g_cm3: expanded, interval_g_cm3: interval } = response;
  return {
    id: piece.id,
    ticket: told.ticket ?? piece.ticket,
    piece: told.description ?? piece.description,
    ...(told.condition === undefined ? {} : { description: told.condition }),
    ...(told.operator === undefined ? {} : { operator: told.operator }),
    ...(told.customer === undefined ? {} : { broughtBy: told.customer }),
    saidByCustomer: piece.claim === undefined ? say.nothing : toldValue(nameIn(library, piece.claim), locale),
    when: whenOf(first?.at ?? entry.at),
    method: words(locale).bench.methods[piece.method].name,
    density: `${plusMinus(value, expanded, locale)} g/cm³`,
    densityWords: say.intervalWords(
      inLocale(String(+(request.confidence * 100).toFixed(4)), locale),
      fromTo(interval[0], interval[1], locale),
      words(locale).bench.result[response.interval_from],
      fixed(response.k, 2, locale),
    ),
    results: resultsOf(response, locale),
    conditions: [...conditionsOf(request, response, locale), ...profilesOf(checked, locale)],
    finding: {
      ...findingOf(response, library),
      plainly: toldApartHere(response.finding.claim, response.alive, library),
    },
    plot: {
      measured: measuredOf(response, curve, request.confidence),
      bands: bandsAround(bands, piece.claim, response, locale),
      domain: domainAround(response),
      ...(piece.claim === undefined ? {} : { claimId: piece.claim }),
    },
    budget: response.budget.map((row) => budgetInput(row, locale)),
    captures: piece.captures.map((capture) => captureView(capture, piece, locale)),
    secondReadings: piece.secondReadings.map(secondReadingView),
    warnings: response.warnings,
    notes: entries.flatMap((entry) =>
      entry.kind === "note"
        ? [{ when: whenOf(entry.at), by: entry.body.by ?? "", says: entry.body.text }]
        : entry.kind === "right-piece"
          ? [{ when: whenOf(entry.at), by: entry.body.by ?? "", says: rightPieceSays(entry.body, locale) }]
          : [],
    ),
    ...(entry.kind === "amendment" ? { amended: { when: whenOf(entry.at), by: entry.body.by } } : {}),
    amendments: amendmentViews(entries, piece, locale),
    ...(checked?.closed && {
      closed: { since: whenOf(checked.closed.since), says: checked.closed.says },
    }),
    ...(voiding?.kind === "voiding"
      ? { voided: { when: whenOf(voiding.at), by: voiding.body.by ?? "", reason: voiding.body.reason } }
      : {}),
    reports: entries.flatMap((entry) =>
      entry.kind === "report-issued"
        ? [
            {
              number: say.copy(entry.body.number, entry.body.copy),
              href: `/records/${piece.id}/reports/${entry.body.number}?copy=${entry.body.copy}`,
              when: whenOf(entry.at),
            },
          ]
        : [],
    ),
    chain: { sequence: entry.seq, hash: entry.hash, previous: entry.prevHash },
    versions: Object.entries(stated.versions),
    csrfToken,
    stepKey: `${piece.id}-${entries.length}`,
  };
}

function rightPieceSays({ announced, weighed, reason }: BodyOf<"right-piece">, locale: Locale): string {
  const say = words(locale).otherPiece;
  return say.note(inLocale(weighed, locale), inLocale(announced, locale), reason);
}

/** Name of a metal; its id where an owner has since taken it out of the library. */
export function nameIn(library: Library, id: string): string {
  return library.has(id) ? library.metal(id).name : id;
}

function captureView(capture: Capture, piece: Piece, locale: Locale): CaptureView {
  const { roles, readings } = words(locale).bench;
  const confirmed = piece.secondReadings.findLast(({ body }) => body.agrees && body.of.includes(capture.id));
  const by = confirmed && words(locale).captures.confirmed(confirmed.body.by, whenOf(confirmed.at));
  return {
    id: capture.id,
    role: roles[capture.role],
    reading: `${inLocale(capture.text, locale)} ${capture.unit}`,
    when: whenOf(capture.at),
    from: capture.balance,
    settled: [readings.howTaken[capture.takenBy], by].filter(Boolean).join(", "),
    ...(capture.setAside
      ? { voided: { when: whenOf(capture.setAside.at), reason: capture.setAside.reason } }
      : {}),
    lines: capture.lines,
  };
}

function resultsOf(response: ComputeResponse, locale: Locale): RecordView["results"] {
  const say = words(locale).record.results;
  return [
    [say.mass, `${plusMinus(response.mass_g, 2 * response.u_mass_g, locale)} g`],
    [say.volume, `${plusMinus(response.volume_cm3, 2 * response.u_volume_cm3, locale)} cm³`],
    [say.density20, `${plusMinus(response.density_20_g_cm3, response.expanded_g_cm3, locale)} g/cm³`],
    [say.relative, fixed(response.relative_density.d20_4, 4, locale)],
    [say.apparent, fixed(response.relative_density.apparent, 4, locale)],
  ];
}

function conditionsOf(
  request: ComputeRequest,
  response: ComputeResponse,
  locale: Locale,
): RecordView["conditions"] {
  const say = words(locale).record;
  const digits = (text: string) => inLocale(text, locale);
  const { liquid, balance, hanger } = request;
  const named =
    liquid?.kind === "water"
      ? say.water(
          toldValue(liquid.purity, locale),
          digits(String(liquid.temperature_c)),
          digits(liquid.temperature_u_c.toPrecision(2)),
        )
      : liquid && say.asStated(liquid.name);
  const inLiquid: RecordView["conditions"] =
    named === undefined
      ? []
      : [
          [say.liquid, named],
          [say.liquidDensity, `${fixed(response.liquid_density_g_cm3, 6, locale)} g/cm³`],
        ];
  return [
    ...inLiquid,
    [say.airDensity, `${fixed(response.air_density_kg_m3, 4, locale)} kg/m³`],
    [say.readability, `${digits(String(balance.readability_g))} g`],
    [
      say.repeatability,
      say.dryAndImmersed(
        digits(balance.repeatability_g.toPrecision(2)),
        digits((balance.immersed_repeatability_g ?? balance.repeatability_g).toPrecision(2)),
      ),
    ],
    [say.linearity, balance.linearity_g === 0 ? say.notStated : `±${digits(String(balance.linearity_g))} g`],
    [say.wire, !hanger?.wire_mm ? say.notStated : `${digits(String(hanger.wire_mm))} mm`],
  ];
}

/** Which versions of the profiles the budget took its numbers from. */
function profilesOf(checked: BodyOf<"result">["checked"], locale: Locale): RecordView["conditions"] {
  const say = words(locale).record;
  return (checked?.profiles ?? []).map(({ of, version, validUntil }) => [
    say.profileOf(toldValue(of, locale)),
    say.profileVersion(version, validUntil.slice(0, 10)),
  ]);
}

/** The finding as it was recorded; why each look-alike is alive follows from the library. */
function findingOf({ finding, alive }: ComputeResponse, library: Library) {
  const claimed =
    finding.claim !== null && library.has(finding.claim) ? library.metal(finding.claim) : undefined;
  const known = alive.filter((id) => library.has(id)).map((id) => library.metal(id));
  const others = known.filter((m) => claimed === undefined || !satisfies(m, claimed));
  return findingViewOf(
    {
      ...(claimed ? { claim: claimed.id } : {}),
      state: finding.state,
      because: finding.because,
      lookAlikes: others.map((m) => lookAlike(m, claimed)),
      suspicions: [],
    },
    metalBands(library),
    finding.conformity,
  );
}
