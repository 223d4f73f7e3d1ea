import { tell as tellMessage } from "../../views/messages/tell.ts";
import type { RemainingMetal, Report } from "../../views/reports/report.ts";
import { builtIn, type Library } from "../metals/library.ts";
import type { Stated } from "./stated.ts";
import type { Writing } from "./writing.ts";

/** Where names and bands come from: those of the issue, of the library where one is missing. */
interface Bands {
  library?: Library;
  bands?: readonly { id: string; name: string; low: number; high: number }[];
}

/** What the density means for the claim, and what it leaves alive: by the names and bands of the issue. */
export function opinionOf(
  { statement }: Stated,
  { library = builtIn, bands = [] }: Bands,
  { locale, name, tell }: Writing,
): Report["opinion"] {
  return {
    state: tellMessage({ code: `report.state.${statement.conformity.state}` }, locale),
    because:
      typeof statement.answer === "string" ? tell(statement.answer) : tellMessage(statement.answer, locale),
    alive: statement.not_excluded.map(({ id }) => {
      const band = bands.find((one) => one.id === id);
      const metal = band ? { id, name: band.name, band: [band.low, band.high] as const } : alive(id, library);
      return { ...metal, name: name(metal.name) };
    }),
  };
}

function alive(id: string, library: Library): RemainingMetal {
  if (!library.has(id)) return { id, name: id, band: null };
  const { name, densityGPerCm3 } = library.metal(id);
  return { id, name, band: [densityGPerCm3.low, densityGPerCm3.high] };
}
