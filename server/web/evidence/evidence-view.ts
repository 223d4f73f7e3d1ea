import { z } from "zod";
import type { EvidencePageView } from "../../../views/evidence/page.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { densityText, plusMinus } from "../../../views/numbers.ts";
import { twoBodiesHref } from "../../../views/result-parts.ts";
import { isEvidenceKind } from "../../conformity/evidence/evidence.ts";
import { recordedDensity } from "../../conformity/recorded-density.ts";
import type { Entry } from "../../ledger/entry.ts";
import { claimedPermille } from "../../lots/light-for-claim.ts";
import type { AssayedMelts } from "../../melts/assayed-melts.ts";
import type { Library } from "../../metals/library.ts";
import type { Specification } from "../../metals/specifications/specification.ts";
import { liquidCelsius } from "../../reports/conditions.ts";
import type { Stated } from "../../reports/stated.ts";
import { weighingOf } from "../../weighing/evolve.ts";
import type { Test } from "../../weighing/item.ts";
import { recordedFineness } from "../../weighing/recorded-fineness.ts";
import type { RecordedStatement } from "../../weighing/recorded-statement.ts";
import { colourOf, colourOptions, finenessAnswer, type PreciousName } from "../metals/fineness-answer.ts";
import { resultViewOf } from "../results/result-view.ts";
import { madeTest } from "./evidence-made.ts";
import { type RefusedForm, sizeView } from "./size-view.ts";
import { testChoices } from "./test-choices.ts";
import { checksOfTests, excludedBy, excludedByTests, nextOf } from "./tests-view.ts";

/** The measured piece as every part of the page needs it. */
export interface MeasuredItem {
  statement: RecordedStatement;
  confidence: number;
  celsius: number;
  claim: string | undefined;
}

export interface EvidenceParts {
  entries: readonly Entry[];
  stated: Stated;
  library: Library;
  specifications: readonly Specification[];
  /** the other assayed melts of this house */
  melts: AssayedMelts;
  locale: Locale;
  zone: string;
  csrfToken: string;
  /** query of the page: metal and colour of the fineness */
  asked: { metal?: string; colour?: string };
  /** a form that was sent back */
  refused?: RefusedForm;
}

/** Density and all other evidence of a recorded piece, as its page draws it. */
export function evidenceView(subject: string, parts: EvidenceParts): EvidencePageView {
  const { entries, stated, library, locale, csrfToken } = parts;
  const item = measuredItem(stated, library);
  const { statement } = item;
  const tests = weighingOf(entries)?.tests ?? [];
  const { excluded_by_tests: excluded = [] } = statement;
  const action = `/records/${subject}/evidence`;
  const about = { subject, seen: entries.length };
  const { refused } = parts;
  const kind = refused && isEvidenceKind(refused.kind) ? refused.kind : undefined;
  const fineness = finenessOf(item, parts, `/records/${subject}`);
  return {
    record: {
      href: `/records/${subject}`,
      ticket: stated.piece.ticket ?? subject,
      density: `${densityText(statement.density_g_cm3, statement.expanded_g_cm3, locale)} g/cm³`,
      mass: `${plusMinus(statement.mass_g, 2 * statement.u_mass_g, locale)} g`,
    },
    result: resultViewOf(statement, library),
    checks: checksOfTests(statement),
    excluded: excludedByTests(excluded, library),
    evidence: {
      action,
      choices: testChoices,
      made: tests.flatMap((one) =>
        madeTest(one, { zone: parts.zone, excludes: (made) => excludedBy(made, excluded, library) }),
      ),
      next: nextOf(statement),
      ...(refused && kind ? { refused: { ...refused, kind } } : {}),
      csrfToken,
      about,
    },
    size: sizeView(tests, {
      specifications: parts.specifications,
      asksMass: false,
      zone: parts.zone,
      refused,
      action,
      csrfToken,
      about,
    }),
    ...(fineness === undefined ? {} : { fineness }),
    densityMatchesHref: densityMatchesHref(item, tests),
    twoBodiesHref: twoBodiesHref(statement, item.claim),
  };
}

export function measuredItem({ result, statement, piece: item }: Stated, library: Library): MeasuredItem {
  const { confidence } = result.request;
  const claim = item.claim ?? statement.conformity.claim ?? undefined;
  return {
    statement,
    confidence: typeof confidence === "number" ? confidence : 0.9545,
    celsius: liquidCelsius(result) ?? 20,
    claim: claim !== undefined && library.has(claim) ? claim : undefined,
  };
}

/** The density at 20 °C with its claim, and the disc that a size test measured. */
function densityMatchesHref({ statement, claim }: MeasuredItem, tests: readonly Test[]): string {
  const size = tests.findLast(({ entry, excluded }) => entry.body.test === "size" && excluded === undefined)
    ?.entry.body.size;
  const disc = measuredDisc.safeParse(size);
  return `/plan/density-matches?${new URLSearchParams({
    density: `${Number(statement.density_20_g_cm3.toPrecision(6))}`,
    uDensity: `${Number(statement.u_g_cm3.toPrecision(2))}`,
    ...(claim === undefined ? {} : { claim }),
    ...(disc.success
      ? {
          outline: "disc",
          diameter: `${disc.data.diameterMm}`,
          thickness: `${disc.data.thicknessMm}`,
        }
      : {}),
  })}`;
}

const measuredDisc = z.object({ diameterMm: z.number(), thicknessMm: z.number() });

/** Precious name of a family of the library, for those whose fineness a density can bound. */
const precious: Readonly<Record<string, PreciousName>> = { gold: "gold", silver: "silver" };

function finenessOf(item: MeasuredItem, { asked, library, melts, locale }: EvidenceParts, record: string) {
  const { statement, confidence, celsius, claim } = item;
  const claimed = claim !== undefined && library.has(claim) ? library.metal(claim) : undefined;
  const metal = precious[asked.metal ?? ""] ?? precious[claimed?.family ?? ""];
  if (metal === undefined) return undefined;
  const colour = colourOf(asked.colour);
  const permille = claimedPermille(claim ?? null);
  const stated = recordedFineness(statement, { confidence, celsius, library });
  return {
    action: `${record}/evidence`,
    priceHref: `${record}/price?${new URLSearchParams({ metal, colour })}`,
    metal,
    colour,
    colours: colourOptions(locale),
    open: asked.metal !== undefined || asked.colour !== undefined,
    answer: finenessAnswer(
      recordedDensity(statement, confidence),
      { metal, colour, celsius, ...(permille === undefined ? {} : { claimed: permille }) },
      {
        mass: { grams: statement.mass_g, expandedG: 2 * statement.u_mass_g },
        melts,
        stated: stated?.element === (metal === "gold" ? "Au" : "Ag") ? stated : undefined,
        locale,
      },
    ),
  };
}
