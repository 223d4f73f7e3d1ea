import { metalTold, tellId, tell as tellMessage, tellValue } from "../../views/messages/tell.ts";
import type { NotExcludedMetal, Report } from "../../views/reports/report.ts";
import { calledById } from "../metals/composites/composite-by-id.ts";
import { builtIn, type Library } from "../metals/library.ts";
import type { Stated } from "./stated.ts";
import type { Writing } from "./writing.ts";

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
    state: tellMessage({ code: `report.state.${statement.conformity.state}` }, locale),
    because:
      typeof statement.answer === "string" ? tell(statement.answer) : tellMessage(statement.answer, locale),
    purposeMade: purposeMadeOf(statement, library, locale),
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

const isMet = ({ occurrence }: { occurrence?: string }) => occurrence !== "purpose-made";
/** So many bodies made for the density are named; all of them stand in the record. */
const named = 3;

function purposeMadeOf(
  { not_excluded }: Stated["statement"],
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
