import { densityInWords } from "../plots/density.tsx";
import { type Locale, words } from "../words/index.ts";
import { type ShareSheet, shareWords } from "./share-sheet.ts";

/** The sheet as plain text; the density axis stands in it as its sentences. */
export function shareText(sheet: ShareSheet, locale: Locale): string {
  const { heading, warnings, named, density, stated, parts, foot } = shareWords(sheet, locale);
  const blocks = [
    [heading, ...warnings, ...named],
    [density, ...stated],
    ...parts.map((part) => [`${part.heading}:`, ...part.lines]),
    [`${words(locale).plots.densityAxis}:`, densityInWords({ ...sheet.plot, id: "share", locale })],
    [foot],
  ];
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}
