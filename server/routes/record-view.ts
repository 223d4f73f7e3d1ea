import type { CurvePoint } from "../../calibration/distribution.ts";
import { fixed, fromTo, inLocale, plusMinus } from "../../views/numbers.ts";
import type { Amendment } from "../../views/records/amendments.tsx";
import type { Capture as CaptureView } from "../../views/records/captures.tsx";
import type { RecordView } from "../../views/records/show.tsx";
import {
  bandsAround,
  budgetInput,
  domainAround,
  findingViewOf,
  measuredOf,
} from "../../views/result-parts.ts";
import { type Locale, words } from "../../views/words/index.ts";
import type { Library } from "../alloys/library.ts";
import { metalBands } from "../bench/metal-bands.ts";
import type { Capture, Piece } from "../bench/piece.ts";
import {
  type ComputeRequest,
  type ComputeResponse,
  computeRequest,
  computeResponse,
} from "../compute/contract.ts";
import { lookAlike, satisfies } from "../findings/look-alike.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";

/** Everything the page of one record shows, read from the entries about its piece. */
export function recordView(
  piece: Piece,
  entries: readonly Entry[],
  result: EntryOf<"result">,
  curve: readonly CurvePoint[],
  { csrfToken, locale, library }: { csrfToken: string; locale: Locale; library: Library },
): RecordView {
  const bands = metalBands(library);
  const request = computeRequest.parse(result.body.request);
  const response = computeResponse.parse(result.body.response);
  const voiding = entries.findLast((entry) => entry.kind === "voiding" && entry.body.entry === result.id);
  const { density_g_cm3: value, expanded_g_cm3: expanded, interval_g_cm3: interval } = response;
  return {
    id: piece.id,
    ticket: piece.ticket,
    piece: piece.description,
    saidByCustomer: piece.claim === undefined ? "nothing" : nameIn(library, piece.claim),
    when: whenOf(result.at),
    method: words(locale).bench.methods[piece.method].name,
    density: `${plusMinus(value, expanded, locale)} g/cm³`,
    densityWords: `${request.confidence * 100} % interval ${fromTo(interval[0], interval[1], locale)} g/cm³ at the temperature of the water, ${words(locale).bench.result[response.interval_from]}; k = ${response.k.toFixed(2)}.`,
    results: resultsOf(response, locale),
    conditions: conditionsOf(request, response),
    finding: findingOf(response, library),
    plot: {
      measured: measuredOf(response, curve, request.confidence),
      bands: bandsAround(bands, piece.claim, response, locale),
      domain: domainAround(response),
      ...(piece.claim === undefined ? {} : { claimId: piece.claim }),
    },
    budget: response.budget.map((row) => budgetInput(row, locale)),
    captures: piece.captures.map((capture) => captureView(capture, locale)),
    warnings: response.warnings,
    notes: entries.flatMap((entry) =>
      entry.kind === "note"
        ? [{ when: whenOf(entry.at), by: entry.body.by ?? "", says: entry.body.text }]
        : [],
    ),
    photos: [],
    amendments: entries.flatMap((entry) => (entry.kind === "amendment" ? [amendmentView(entry, piece)] : [])),
    ...(voiding?.kind === "voiding"
      ? { voided: { when: whenOf(voiding.at), by: voiding.body.by ?? "", reason: voiding.body.reason } }
      : {}),
    reports: entries.flatMap((entry) =>
      entry.kind === "report-issued"
        ? [
            {
              number: `${entry.body.number}, copy ${entry.body.copy}`,
              href: `/records/${piece.id}/reports/${entry.body.number}?copy=${entry.body.copy}`,
              when: whenOf(entry.at),
            },
          ]
        : [],
    ),
    chain: { sequence: result.seq, hash: result.hash, previous: result.prevHash },
    versions: Object.entries(result.body.versions),
    csrfToken,
    locale,
    stepKey: `${piece.id}-${entries.length}`,
  };
}

/** Name of a metal; its id where an owner has since taken it out of the library. */
export function nameIn(library: Library, id: string): string {
  return library.has(id) ? library.metal(id).name : id;
}

/** A moment as the page writes it: date and time of day, UTC. */
export function whenOf(at: string): string {
  return `${at.slice(0, 10)} ${at.slice(11, 19)} UTC`;
}

function captureView(capture: Capture, locale: Locale): CaptureView {
  const { roles, readings } = words(locale).bench;
  return {
    id: capture.id,
    role: roles[capture.role],
    reading: `${inLocale(capture.text, locale)} ${capture.unit}`,
    when: whenOf(capture.at),
    from: capture.balance,
    settled: readings.howTaken[capture.takenBy],
    ...(capture.setAside
      ? { voided: { when: whenOf(capture.setAside.at), reason: capture.setAside.reason } }
      : {}),
    lines: capture.lines,
  };
}

function resultsOf(response: ComputeResponse, locale: Locale): RecordView["results"] {
  return [
    ["Mass", `${plusMinus(response.mass_g, 2 * response.u_mass_g, locale)} g`],
    ["Volume", `${plusMinus(response.volume_cm3, 2 * response.u_volume_cm3, locale)} cm³`],
    ["Density at 20 °C", `${plusMinus(response.density_20_g_cm3, response.expanded_g_cm3, locale)} g/cm³`],
    ["Relative density 20/4", fixed(response.relative_density.d20_4, 4, locale)],
    ["Dry over displaced, uncorrected", fixed(response.relative_density.apparent, 4, locale)],
  ];
}

function conditionsOf(request: ComputeRequest, response: ComputeResponse): RecordView["conditions"] {
  const { liquid, balance, hanger } = request;
  const named =
    liquid.kind === "water"
      ? `water, ${liquid.purity}, ${liquid.temperature_c} °C (u ${liquid.temperature_u_c.toPrecision(2)} °C)`
      : `${liquid.name}, as stated`;
  return [
    ["Liquid", named],
    ["Density of the liquid", `${response.liquid_density_g_cm3.toFixed(6)} g/cm³`],
    ["Density of the air", `${response.air_density_kg_m3.toFixed(4)} kg/m³`],
    ["Readability", `${balance.readability_g} g`],
    [
      "Repeatability",
      `${balance.repeatability_g.toPrecision(2)} g dry, ${(balance.immersed_repeatability_g ?? balance.repeatability_g).toPrecision(2)} g immersed`,
    ],
    ["Linearity", balance.linearity_g === 0 ? "not stated" : `±${balance.linearity_g} g`],
    ["Wire", hanger.wire_mm === 0 ? "not stated" : `${hanger.wire_mm} mm`],
  ];
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

function amendmentView(entry: EntryOf<"amendment">, piece: Piece): Amendment {
  const { reason, by, piece: changed } = entry.body;
  const names = { ticket: "Ticket", description: "Piece" } as const;
  return {
    id: entry.id,
    when: whenOf(entry.at),
    by,
    reason,
    changes: (["ticket", "description"] as const).flatMap((name) => {
      const to = changed?.[name];
      return to === undefined ? [] : [{ what: names[name], from: piece[name], to }];
    }),
  };
}
