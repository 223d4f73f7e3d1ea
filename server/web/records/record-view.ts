import type { CurvePoint } from "../../../calibration/distribution.ts";
import { type Message, message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf, tellId, tellValue } from "../../../views/messages/tell.ts";
import { densityText, fixed, fromTo, inLocale, plusMinus } from "../../../views/numbers.ts";
import type { Capture as CaptureView } from "../../../views/records/captures.tsx";
import type { MeasuredView, RecordView } from "../../../views/records/view.ts";
import { bandsAround, budgetInput, measuredOf } from "../../../views/result-parts.ts";
import { type ComputeRequest, computeRequest } from "../../compute/contract.ts";
import type { Entry } from "../../ledger/entry.ts";
import type { BodyOf } from "../../ledger/kinds.ts";
import { called } from "../../metals/called.ts";
import type { Library } from "../../metals/library.ts";
import { statedIn } from "../../methods/index.ts";
import type { Standing } from "../../reports/stated.ts";
import { balanceLabel } from "../../station/balance-label.ts";
import { thermometerName } from "../../station/check-repository.ts";
import { metalBands } from "../../station/metal-bands.ts";
import type { Capture, Item } from "../../weighing/item.ts";
import { isMeasured, type RecordedStatement } from "../../weighing/recorded-statement.ts";
import { askOf, isImpossible } from "../../weighing/stop-checks.ts";
import { secondReadingView } from "../bench/second-person-view.ts";
import { resultViewOf } from "../results/result-view.ts";
import { dayOf, type Manner, whenOf } from "../when.ts";
import { amendmentViews } from "./amendment-views.ts";

/** Everything the page of one record shows, read from the entries about its piece. */
export function recordView(
  item: Item,
  entries: readonly Entry[],
  { result: stated, statement, entry, piece: described }: Standing,
  curve: readonly CurvePoint[],
  {
    csrfToken,
    locale,
    zone,
    library,
    judgedBy,
  }: Manner & {
    csrfToken: string;
    library: Library;
    /** the library as of the version that the statement names */
    judgedBy: Library;
  },
): Omit<
  RecordView,
  "photos" | "photoForm" | "excludePhoto" | "excludedPhotos" | "amendable" | "assay" | "refused"
> {
  const t = tellerOf(locale);
  const request = computeRequest.parse(stated.request);
  const first = entries.findLast((one) => one.kind === "result");
  const { checked } = stated;
  const voiding = entries.findLast((one) => one.kind === "voiding" && one.body.entry === first?.id);
  return {
    id: item.id,
    ticket: described.ticket ?? item.ticket,
    piece: described.description ?? item.description,
    ...(described.condition === undefined ? {} : { description: described.condition }),
    ...(described.operator === undefined ? {} : { operator: described.operator }),
    ...(described.customer === undefined ? {} : { broughtBy: described.customer }),
    saidByCustomer: item.claim === undefined ? t("record-page.nothing") : nameIn(library, item.claim, locale),
    when: whenOf(first?.at ?? entry.at, zone),
    method: t(`method.${item.method}.name`),
    ...(isMeasured(statement)
      ? {
          measured: measuredView(statement, curve, { claim: item.claim, request, library: judgedBy, locale }),
        }
      : {}),
    conditions: [...conditionsOf(request, statement, locale), ...profilesOf(checked, { locale, zone })],
    result: resultViewOf(statement, judgedBy),
    budget: (statement.budget ?? []).map((row) => budgetInput(row, locale)),
    captures: item.captures.map((capture) => captureView(capture, item, { locale, zone })),
    secondReadings: item.secondReadings.map((one) => secondReadingView(one, zone)),
    warnings: statement.checks,
    notes: entries.flatMap((entry) =>
      entry.kind === "note"
        ? [
            {
              when: whenOf(entry.at, zone),
              by: entry.body.by ?? "",
              message: "text" in entry.body ? entry.body.text : entry.body.message,
            },
          ]
        : entry.kind === "right-piece"
          ? [
              {
                when: whenOf(entry.at, zone),
                by: entry.body.by ?? "",
                message: rightPieceSays(entry.body, locale),
              },
            ]
          : entry.kind === "check-answered"
            ? [{ when: whenOf(entry.at, zone), by: entry.body.by ?? "", message: answeredSays(entry.body) }]
            : [],
    ),
    ...(entry.kind === "amendment" ? { amended: { when: whenOf(entry.at, zone), by: entry.body.by } } : {}),
    amendments: amendmentViews(entries, item, { locale, zone }),
    ...(checked?.closed && {
      closed: { since: whenOf(checked.closed.since, zone), message: checked.closed.says },
    }),
    ...(voiding?.kind === "voiding"
      ? {
          voided: {
            when: whenOf(voiding.at, zone),
            by: voiding.body.by ?? "",
            reason: tellValue(voiding.body.reason, locale),
          },
        }
      : {}),
    reports: entries.flatMap((entry) =>
      entry.kind === "report-issued"
        ? [
            {
              number: t("record-page.copy", { number: entry.body.number, copy: entry.body.copy }),
              href: `/records/${item.id}/reports/${entry.body.number}?copy=${entry.body.copy}`,
              when: whenOf(entry.at, zone),
            },
          ]
        : [],
    ),
    chain: { sequence: entry.seq, hash: entry.hash, previous: entry.prevHash },
    versions: Object.entries(stated.versions),
    csrfToken,
    stepKey: `${item.id}-${entries.length}`,
    version: entries.length,
    ...(item.stops.length === 0
      ? {}
      : {
          stopped: {
            ticket: described.ticket ?? item.ticket,
            about: { subject: item.id, seen: entries.length },
            checks: item.stops.map((sentence) => ({ message: sentence, ask: askOf(sentence) })),
            answerable: !item.stops.some(isImpossible),
          },
        }),
  };
}

/** The numbers of a measurement, and where they lie on the density axis. */
function measuredView(
  statement: RecordedStatement,
  curve: readonly CurvePoint[],
  of: { claim: string | undefined; request: ComputeRequest; library: Library; locale: Locale },
): MeasuredView {
  const { claim, request, library, locale } = of;
  const t = tellerOf(locale);
  const { density_g_cm3: value, expanded_g_cm3: expanded, interval_g_cm3: interval } = statement;
  return {
    density: `${densityText(value, expanded, locale)} g/cm³`,
    densityWords: t("record-page.interval-words", {
      percent: inLocale(String(+(request.confidence * 100).toFixed(4)), locale),
      interval: fromTo(interval[0], interval[1], locale),
      from: t(`bench.result.${statement.interval_from}`),
      k: fixed(statement.k, 2, locale),
    }),
    results: resultsOf(statement, locale),
    plot: {
      measured: measuredOf(statement, curve, request.confidence),
      bands: bandsAround(metalBands(library), claim, statement, locale),
      ...(claim === undefined ? {} : { claimId: claim }),
    },
  };
}

function answeredSays({ checks, found }: BodyOf<"check-answered">): Message {
  return message("record.check-answered", { asks: checks.map(askOf), found });
}

function rightPieceSays({ announced, weighed, reason }: BodyOf<"right-piece">, locale: Locale): string {
  const t = tellerOf(locale);
  return t("other-piece.note", {
    weighed: inLocale(weighed, locale),
    announced: inLocale(announced, locale),
    reason,
  });
}

/** Name of a metal; its id where an owner has since taken it out of the library. */
export function nameIn(library: Library, id: string, locale: Locale): string {
  return library.has(id) ? tellValue(called(library.metal(id)), locale) : id;
}

function captureView(capture: Capture, item: Item, { locale, zone }: Manner): CaptureView {
  const t = tellerOf(locale);
  const confirmed = item.secondReadings.findLast(({ body }) => body.agrees && body.of.includes(capture.id));
  const by =
    confirmed && t("captures.confirmed", { by: confirmed.body.by, when: whenOf(confirmed.at, zone) });
  return {
    id: capture.id,
    role: t(`bench.roles.${capture.role}`),
    reading: `${inLocale(capture.text, locale)} ${capture.unit}`,
    when: whenOf(capture.at, zone),
    from: balanceLabel(capture.balance),
    settled: [t(`bench.readings.how-taken.${capture.takenBy}`), by].filter(Boolean).join(", "),
    ...(capture.excluded
      ? {
          voided: {
            when: whenOf(capture.excluded.at, zone),
            reason: tellValue(capture.excluded.reason, locale),
          },
        }
      : {}),
    lines: capture.lines,
  };
}

function resultsOf(statement: RecordedStatement, locale: Locale): MeasuredView["results"] {
  const t = tellerOf(locale);
  const { volume_cm3: volume, u_volume_cm3: u_volume = 0, relative_density: relative } = statement;
  return [
    [t("record-page.results.mass"), `${plusMinus(statement.mass_g, 2 * statement.u_mass_g, locale)} g`],
    ...(volume === undefined
      ? []
      : [[t("record-page.results.volume"), `${plusMinus(volume, 2 * u_volume, locale)} cm³`] as const]),
    [
      t("record-page.results.density20"),
      `${densityText(statement.density_20_g_cm3, statement.expanded_g_cm3, locale)} g/cm³`,
    ],
    ...(relative === undefined
      ? []
      : [[t("record-page.results.relative"), fixed(relative.d20_4, 4, locale)] as const]),
    // nothing is displaced without a liquid
    ...(relative === undefined || statement.liquid_density_g_cm3 == null
      ? []
      : [[t("record-page.results.apparent"), fixed(relative.apparent, 4, locale)] as const]),
  ];
}

function conditionsOf(
  request: ComputeRequest,
  statement: Standing["statement"],
  locale: Locale,
): RecordView["conditions"] {
  const t = tellerOf(locale);
  const digits = (text: string) => inLocale(text, locale);
  const { liquid, balance, hanger } = request;
  const named =
    liquid?.kind === "water"
      ? t("record-page.water", {
          purity: tellId("settings.waters", liquid.purity, locale),
          celsius: digits(String(liquid.temperature_c)),
          u: digits(liquid.temperature_u_c.toPrecision(2)),
        })
      : liquid && t("record-page.as-stated", { name: liquid.name });
  const inLiquid: RecordView["conditions"] =
    named === undefined || (statement.liquid_density_g_cm3 == null && isMeasured(statement))
      ? []
      : [
          [t("record-page.liquid"), named],
          ...(statement.liquid_density_g_cm3 == null
            ? []
            : [
                [
                  t("record-page.liquid-density"),
                  `${fixed(statement.liquid_density_g_cm3, 6, locale)} g/cm³`,
                ] as const,
              ]),
        ];
  return [
    ...inLiquid,
    ...statedIn(request).map(
      ({ label, value }) => [t(label.code, label.params), t(value.code, value.params)] as const,
    ),
    ...(statement.air_density_kg_m3 == null
      ? []
      : [[t("record-page.air-density"), `${fixed(statement.air_density_kg_m3, 4, locale)} kg/m³`] as const]),
    [t("record-page.readability"), `${digits(String(balance.readability_g))} g`],
    [
      t("record-page.repeatability"),
      t("record-page.dry-and-immersed", {
        dry: digits(balance.repeatability_g.toPrecision(2)),
        immersed: digits((balance.immersed_repeatability_g ?? balance.repeatability_g).toPrecision(2)),
      }),
    ],
    [
      t("record-page.linearity"),
      balance.linearity_g === 0 ? t("record-page.not-stated") : `±${digits(String(balance.linearity_g))} g`,
    ],
    [
      t("record-page.wire"),
      !hanger?.wire_mm ? t("record-page.not-stated") : `${digits(String(hanger.wire_mm))} mm`,
    ],
  ];
}

/** Which versions of the profiles the budget took its numbers from. */
function profilesOf(
  checked: BodyOf<"result">["checked"],
  { locale, zone }: Manner,
): RecordView["conditions"] {
  const t = tellerOf(locale);
  const nameOf = (of: string) => {
    return of === thermometerName ? t("checks-page.profile.thermometer") : balanceLabel(of);
  };
  return (checked?.profiles ?? []).map(({ of, version, validUntil }) => [
    t("record-page.profile-of", { name: nameOf(of) }),
    t("record-page.profile-version", { version, until: dayOf(validUntil, zone) }),
  ]);
}
