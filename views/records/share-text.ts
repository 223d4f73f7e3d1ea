import type { Locale } from "../messages/language.ts";
import { tellerOf } from "../messages/tell.ts";
import { densityInWords } from "../plots/density.tsx";
import { type ShareSheet, shareWords } from "./share-sheet.ts";

/** The sheet as plain text; the density axis stands in it as its sentences. */
export function shareText(sheet: ShareSheet, locale: Locale): string {
  const { heading, warnings, named, density, stated, parts, foot } = shareWords(sheet, locale);
  const blocks = [
    [heading, ...warnings, ...named],
    [density, ...stated],
    ...parts.map((part) => [`${part.heading}:`, ...part.lines]),
    [`${tellerOf(locale)("plots.density-axis")}:`, densityInWords({ ...sheet.plot, id: "share", locale })],
    [foot],
  ];
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}
