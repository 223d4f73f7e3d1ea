import { renderToString } from "preact-render-to-string";
import type { Locale } from "../messages/language.ts";
import { type Band, nearest } from "../plots/bands.tsx";
import { drawDensity } from "../plots/density-drawing.tsx";
import { plotWidths } from "../plots/figure.tsx";
import { drawnInInk, ink } from "./share-ink.ts";
import { type ShareSheet, shareWords } from "./share-sheet.ts";
import { shareText } from "./share-text.ts";

const margin = 30;
const width = plotWidths.wide + 2 * margin;
const family = "system-ui, 'Segoe UI', Helvetica, Arial, sans-serif";

/** Room for letters of a size: generous, since the picture takes whatever sans-serif is at hand. */
function wrapped(text: string, size: number): string[] {
  const most = Math.floor(plotWidths.wide / (0.54 * size));
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** All that is not excluded and the claim, and of what is ruled out the nearest few: the text counts the rest. */
function bandsDrawn({ plot: { bands, claimId, measured } }: ShareSheet): Band[] {
  const out = ({ id, notExcluded }: Band) => notExcluded === false && id !== claimId;
  return [...bands.filter((band) => !out(band)), ...nearest(bands.filter(out), measured?.value).slice(0, 5)];
}

interface Style {
  size: number;
  weight?: number;
  fill?: string;
  /** free room above the first line */
  above?: number;
}

/**
 * The sheet as one SVG that needs nothing from outside: no style sheet, no font, no script. Drawn light on every device,
 * since it is looked at elsewhere.
 */
export function sharePicture(sheet: ShareSheet, locale: Locale): string {
  const { heading, warnings, named, density, stated, parts, foot } = shareWords(sheet, locale);
  const content: string[] = [];
  let y = margin - 6;
  const write = (text: string, { size, weight = 400, fill = ink.ink, above = 0 }: Style) => {
    y += above;
    for (const line of wrapped(text, size)) {
      y += Math.round(size * 1.4);
      content.push(
        renderToString(
          <text x={margin} y={y} font-size={size} font-weight={weight} fill={fill}>
            {line}
          </text>,
        ),
      );
    }
  };
  write(heading, { size: 20, weight: 600 });
  for (const warning of warnings) write(warning, { size: 16, weight: 600, fill: ink.warning, above: 2 });
  for (const line of named) write(line, { size: 15 });
  write(density, { size: 30, weight: 600, above: 6 });
  for (const line of stated) write(line, { size: 15, fill: ink.pencil });
  const [readings, ...rest] = parts;
  const part = (one: (typeof parts)[number]) => {
    write(one.heading, { size: 15, weight: 600, fill: ink.blue, above: 10 });
    for (const line of one.lines) write(line, { size: 15 });
  };
  if (readings) part(readings);
  y += 22;
  const plot = { ...sheet.plot, bands: bandsDrawn(sheet), id: "share", locale };
  const axis = drawDensity(plot, plotWidths.wide);
  content.push(
    `<g transform="translate(${margin} ${y})">${drawnInInk(renderToString(<g>{axis.content}</g>))}</g>`,
  );
  y += Math.ceil(axis.height);
  for (const one of rest) part(one);
  y += 14;
  content.push(`<line x1="${margin}" x2="${width - margin}" y1="${y}" y2="${y}" stroke="${ink.rule}"/>`);
  write(foot, { size: 15, weight: 600 });
  const height = y + margin;
  const spoken = renderToString(
    <>
      <title>{heading}</title>
      <desc>{shareText(sheet, locale)}</desc>
    </>,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" lang="${locale}" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="${family}" role="img">${spoken}<rect width="${width}" height="${height}" fill="${ink.paper}"/>${content.join("")}</svg>\n`;
}
