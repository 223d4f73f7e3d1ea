import type { MadeTest } from "../../views/evidence/index.tsx";
import type { EvidencePageView } from "../../views/evidence/page.tsx";
import type { SizeView } from "../../views/evidence/size.tsx";
import { fixed, plusMinus } from "../../views/numbers.ts";
import type { Locale } from "../../views/words/index.ts";
import type { Library } from "../alloys/library.ts";
import type { Metal } from "../alloys/metal.ts";
import { computeResponse } from "../compute/contract.ts";
import { type Evidence, evidenceKinds } from "../evidence/evidence.ts";
import { outlineDoubt } from "../evidence/outline-and-displacement.ts";
import { foundWords, recordedEvidence } from "../evidence/recorded.ts";
import { type WeighedEvidence, weighEvidence } from "../evidence/weighed-evidence.ts";
import { findingWithEvidence } from "../findings/finding-with-evidence.ts";
import { recordedDensity } from "../findings/recorded-density.ts";
import { metalsAlive } from "../findings/what-fits.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";
import { liquidCelsius } from "../reports/conditions.ts";
import type { Stated } from "../reports/stated.ts";
import type { Specification } from "../specifications/specification.ts";
import { colourOf, colourOptions, finenessAnswer, type PreciousName } from "./fineness-answer.ts";
import { nameIn, whenOf } from "./record-view.ts";

export interface EvidenceParts {
  entries: readonly Entry[];
  stated: Stated;
  library: Library;
  specifications: readonly Specification[];
  locale: Locale;
  csrfToken: string;
  /** query of the page: metal and colour of the fineness */
  asked: { metal?: string; colour?: string };
  /** a form that was sent back */
  refused?: { kind: string; values: Record<string, string>; problems: SizeView["problems"] };
}

/** The measured piece as every part of the page needs it. */
interface MeasuredPiece {
  response: ReturnType<typeof computeResponse.parse>;
  confidence: number;
  celsius: number;
  claim: string | undefined;
}

/** Density and all other evidence of a recorded piece, as its page draws it. */
export function evidenceView(subject: string, parts: EvidenceParts): EvidencePageView {
  const { entries, stated, library, locale, csrfToken } = parts;
  const piece = measuredPiece(stated, library);
  const { response } = piece;
  const made = evidenceEntries(entries);
  const counting = made.flatMap(({ evidence, setAside }) =>
    evidence && setAside === undefined ? [evidence] : [],
  );
  const standing = standingOf(piece, counting, library);
  const action = `/records/${subject}/evidence`;
  const stepKey = `${subject}-evidence-${entries.length}`;
  const { refused } = parts;
  const kind = evidenceKinds.find((test) => test.kind === refused?.kind)?.kind;
  const fineness = finenessOf(piece, parts, action);
  return {
    record: {
      href: `/records/${subject}`,
      ticket: stated.piece.ticket ?? subject,
      density: `${plusMinus(response.density_g_cm3, response.expanded_g_cm3, locale)} g/cm³`,
      mass: `${plusMinus(response.mass_g, 2 * response.u_mass_g, locale)} g`,
    },
    ...(piece.claim === undefined ? {} : { claimName: nameIn(library, piece.claim) }),
    state: standing.state,
    because: standing.because,
    contradictions: standing.weighed.contradictions,
    doubts: standing.weighed.doubts,
    candidates: candidatesOf(standing, piece.claim, locale),
    evidence: {
      action,
      made: made.flatMap((one) => madeTest(one, standing)),
      ...(standing.weighed.nextTest === null ? {} : { next: standing.weighed.nextTest.says }),
      ...(refused && kind ? { refused: { ...refused, kind } } : {}),
      csrfToken,
      stepKey,
    },
    size: sizeView(piece, made, parts, action, stepKey),
    ...(fineness === undefined ? {} : { fineness }),
    twoBodiesHref: `/plan/two-bodies?${new URLSearchParams({
      question: "rest",
      massG: `${Number(response.mass_g.toPrecision(8))}`,
      density: `${Number(response.density_g_cm3.toPrecision(6))}`,
      uDensity: `${Number(response.u_g_cm3.toPrecision(2))}`,
    })}`,
    locale,
  };
}

function measuredPiece({ result, piece }: Stated, library: Library): MeasuredPiece {
  const response = computeResponse.parse(result.response);
  const { confidence } = result.request;
  const claim = piece.claim ?? response.finding.claim ?? undefined;
  return {
    response,
    confidence: typeof confidence === "number" ? confidence : 0.9545,
    celsius: liquidCelsius(result) ?? 20,
    claim: claim !== undefined && library.has(claim) ? claim : undefined,
  };
}

/** One entry of evidence: what it found, and whether it was set aside. */
interface EvidenceEntry {
  entry: EntryOf<"evidence">;
  evidence: Evidence | null;
  setAside: string | undefined;
}

function evidenceEntries(entries: readonly Entry[]): EvidenceEntry[] {
  const reasons = new Map(
    entries.flatMap((entry) => (entry.kind === "voiding" ? [[entry.body.entry, entry.body.reason]] : [])),
  );
  return entries.flatMap((entry) =>
    entry.kind === "evidence"
      ? [{ entry, evidence: recordedEvidence(entry.body.evidence), setAside: reasons.get(entry.id) }]
      : [],
  );
}

interface Standing extends Pick<EvidencePageView, "state" | "because"> {
  weighed: WeighedEvidence;
}

function standingOf(piece: MeasuredPiece, evidence: readonly Evidence[], library: Library): Standing {
  const { response, confidence, celsius, claim } = piece;
  const measured = recordedDensity(response, confidence);
  if (claim === undefined) {
    const fits = metalsAlive(measured, confidence, celsius, library);
    const others = library.metals.filter((m) => !fits.includes(m));
    const weighed = weighEvidence(fits, others, evidence);
    return {
      state: "undecided",
      because: `Nothing was claimed, so nothing is tested: density and the other tests leave ${weighed.alive.length} of the ${fits.length} candidates of the density.`,
      weighed,
    };
  }
  const found = findingWithEvidence(measured, claim, confidence, evidence, {
    celsius,
    massG: response.mass_g,
    library,
  });
  // Without other evidence the page repeats the finding of the record, word for word.
  const recorded = evidence.length === 0 ? response.finding : found;
  return { state: recorded.state, because: recorded.because, weighed: found.evidence };
}

function candidatesOf(
  { weighed }: Standing,
  claim: string | undefined,
  locale: Locale,
): EvidencePageView["candidates"] {
  const reasons = new Map<string, { name: string; because: string[] }>();
  for (const { id, name, because } of weighed.struck) {
    const one = reasons.get(id) ?? { name, because: [] };
    one.because.push(because);
    reasons.set(id, one);
  }
  const band = ({ densityGPerCm3: { low, high } }: Metal) =>
    `${fixed(low, 2, locale)} to ${fixed(high, 2, locale)}`;
  return [
    ...weighed.alive.map((m) => ({
      id: m.id,
      name: m.name,
      band: band(m),
      claimed: m.id === claim,
      struckBy: [],
    })),
    ...[...reasons].map(([id, { name, because }]) => ({
      id,
      name,
      band: "",
      claimed: id === claim,
      struckBy: because,
    })),
  ];
}

function madeTest({ entry, evidence, setAside }: EvidenceEntry, { weighed }: Standing): MadeTest[] {
  if (evidence === null) return [];
  const { words, by } = entry.body;
  const also = [words, by].filter((one) => typeof one === "string").join(", by ");
  return [
    {
      id: entry.id,
      kind: evidence.kind,
      found: `${entry.body.test === "size" ? foundWords(evidence) : entry.body.outcome}${also === "" ? "" : ` (${also})`}`,
      when: whenOf(entry.at),
      struckOut: [...new Set(weighed.struck.filter((s) => s.by === evidence.kind).map(({ name }) => name))],
      ...(setAside === undefined ? {} : { setAside }),
    },
  ];
}

function sizeView(
  { response }: MeasuredPiece,
  made: readonly EvidenceEntry[],
  { specifications, refused, csrfToken }: EvidenceParts,
  action: string,
  stepKey: string,
): SizeView {
  const sizes = made.filter(({ entry }) => entry.body.test === "size");
  const outline = made.findLast(
    ({ evidence, setAside }) => evidence?.kind === "outline" && setAside === undefined,
  )?.evidence;
  const doubt =
    outline?.kind === "outline"
      ? outlineDoubt(
          { cm3: outline.outlineCm3, uCm3: outline.uOutlineCm3 },
          { cm3: response.volume_cm3, uCm3: response.u_volume_cm3 },
        )
      : null;
  const own = refused?.kind === "size" ? refused : { values: {}, problems: [] };
  return {
    action,
    specifications: specifications.map(({ id, name, massG, finenessPermille }) => ({
      value: id,
      label: `${name}: ${massG} g, ${finenessPermille} ‰`,
    })),
    values: own.values,
    problems: own.problems,
    made: sizes.map(({ entry, setAside }) => ({
      id: entry.id,
      specification: String(entry.body.specification ?? ""),
      source: String(entry.body.source ?? ""),
      when: whenOf(entry.at),
      lines: Array.isArray(entry.body.lines) ? entry.body.lines.map(String) : [entry.body.outcome],
      ...(setAside === undefined ? {} : { setAside }),
    })),
    ...(doubt === null ? {} : { doubt }),
    csrfToken,
    stepKey,
  };
}

/** Precious name of a family of the library, for those whose fineness a density can bound. */
const precious: Readonly<Record<string, PreciousName>> = { gold: "gold", silver: "silver" };

function finenessOf(piece: MeasuredPiece, { asked, library, locale }: EvidenceParts, action: string) {
  const { response, confidence, celsius, claim } = piece;
  const claimed = claim === undefined ? undefined : library.metal(claim);
  const metal = precious[asked.metal ?? ""] ?? precious[claimed?.family ?? ""];
  if (metal === undefined) return undefined;
  const colour = colourOf(asked.colour);
  const permille = /-(\d{3})/.exec(claim ?? "")?.[1];
  return {
    action,
    metal,
    colour,
    colours: colourOptions,
    answer: finenessAnswer(
      recordedDensity(response, confidence),
      { metal, colour, celsius, ...(permille === undefined ? {} : { claimed: Number(permille) }) },
      { grams: response.mass_g, expandedG: 2 * response.u_mass_g },
      locale,
    ),
  };
}
