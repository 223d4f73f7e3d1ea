import { message } from "../../calibration/message.ts";
import { metalTold, tellId, tell as tellMessage, tellValue } from "../../views/messages/tell.ts";
import type { NotExcludedMetal, Report } from "../../views/reports/report.ts";
import { calledById } from "../metals/composites/composite-by-id.ts";
import { builtIn, type Library } from "../metals/library.ts";
import type { Stated } from "./stated.ts";
import type { Writing } from "./writing.ts";

type Statement = Stated["statement"];

/** Where names and bands come from: those of the issue, of the library where one is missing. */
interface Bands {
  library?: Library;
  bands?: readonly { id: string; name: string; low: number; high: number }[];
}

/** What the density means for the claim, and what it does not exclude: by the names and bands of the issue. */
export function opinionOf(
  { statement }: Stated,
  { library = builtIn, bands = [] }: Bands,
  { locale, tell }: Writing,
): Report["opinion"] {
  return {
    state: stateOf(statement, locale),
    because:
      typeof statement.answer === "string" ? tell(statement.answer) : tellMessage(statement.answer, locale),
    purposeMade: purposeMadeOf(statement, library, locale),
    fineness: finenessOf(statement, locale),
    hazards: (statement.cautions ?? []).map((id) => tellId("hazard.of", id, locale)),
    notExcluded: statement.not_excluded.filter(isMet).map(({ id, occurrence }) => {
      const met =
        occurrence === undefined || id === statement.conformity.claim
          ? ""
          : tellId("result.occurrence", occurrence, locale);
      const band = bands.find((one) => one.id === id);
      return band
        ? { id, name: metalTold(band, locale), occurrence: met, band: [band.low, band.high] as const }
        : {
            id,
            name: tellValue(calledById(id, library), locale),
            occurrence: met,
            band: bandOf(id, library),
          };
    }),
  };
}

/** Where the claim stands; an excluded one with what excludes it, since that need not be the density. */
function stateOf({ conformity: { state, says: sentence } }: Statement, locale: Writing["locale"]): string {
  return tellMessage(state === "excluded" && sentence ? sentence : { code: `report.state.${state}` }, locale);
}

function finenessOf({ fineness }: Statement, locale: Writing["locale"]): string[] {
  if (!fineness) return [];
  const { element, permille, fine_g, laboratory_results: by } = fineness;
  const stated = message("report.opinion.fineness", {
    element: { metal: `el-${element.toLowerCase()}` },
    low_permille: permille[0],
    high_permille: permille[1],
    least_g: fine_g[0],
    most_g: fine_g[1],
  });
  const [low_permille, high_permille] = by?.family.permille ?? permille;
  return [
    stated,
    ...(by?.narrows
      ? [message("result.results.narrows", { results: by.results, low_permille, high_permille })]
      : []),
  ].map((one) => tellMessage(one, locale));
}

const isMet = ({ occurrence }: { occurrence?: string }) => occurrence !== "purpose-made";
/** So many bodies made for the density are named; all of them stand in the record. */
const named = 3;

function purposeMadeOf(
  { not_excluded }: Statement,
  library: Library,
  locale: Writing["locale"],
): string | null {
  const made = not_excluded.filter((one) => !isMet(one));
  if (made.length === 0) return null;
  const names = made.slice(0, named).map(({ id }) => calledById(id, library));
  return tellMessage(
    {
      code: "report.opinion.purpose-made",
      params: { names, count: made.length, more: made.length - names.length },
    },
    locale,
  );
}

/** The band of a metal of the library; none for a made-up piece, or one that is gone. */
function bandOf(id: string, library: Library): NotExcludedMetal["band"] {
  if (!library.has(id)) return null;
  const { low, high } = library.metal(id).densityGPerCm3;
  return [low, high];
}
