import { binomialInterval } from "./binomial.ts";
import type { Row } from "./class-of.ts";
import type { Figures } from "./outcome.ts";

/** A class with what was found. */
export interface Found {
  row: Row;
  figures: Figures;
}

/** The aims: coverage where what is stated is true, share not silently wrong where it is not, false stops. */
export const aims = { covered: [0.945, 0.97], safe: 0.95, falseStops: 0.005 } as const;

export function reaches({ row, figures }: Found): boolean {
  if (row.group === "falsely") return figures.safe >= aims.safe;
  const [from, to] = aims.covered;
  return figures.covered >= from && figures.covered <= to && figures.stopped <= aims.falseStops;
}

const percent = (share: number, decimals = 1) => (Number.isNaN(share) ? "" : (share * 100).toFixed(decimals));

function line({ row, figures }: Found): string[] {
  const { count, covered, warned, stopped, safe, relativeU } = figures;
  const spoken = Math.round(count * (1 - stopped));
  const [low, high] = binomialInterval(Math.round(covered * spoken), Math.max(1, spoken));
  const interval = spoken === 0 ? "" : `${percent(low)}–${percent(high)}`;
  return [
    row.name,
    `${count}`,
    spoken === 0 ? "" : percent(covered, 1),
    interval,
    percent(warned),
    percent(stopped),
    row.group === "falsely" ? percent(safe) : "",
    spoken === 0 ? "" : percent(relativeU, 2),
    reaches({ row, figures }) ? "" : "misses",
  ];
}

const head = [
  "class",
  "weighed",
  "covered %",
  "95 % interval",
  "warned %",
  "stopped %",
  "told or covered %",
  "U %",
  "aim",
];

/** The coverage table as Markdown, columns aligned. */
export function coverageTable(found: readonly Found[]): string {
  const body = (group: Row["group"]) => found.filter(({ row }) => row.group === group).map(line);
  const table = (rows: string[][]) => {
    const widths = head.map((_, i) => Math.max(...[head, ...rows].map((cells) => cells[i]!.length)));
    const written = (cells: readonly string[]) =>
      `| ${cells.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join(" | ")} |`;
    const rule = widths.map((width, i) => (i === 0 ? "-".repeat(width) : `${"-".repeat(width - 1)}:`));
    return [written(head), written(rule), ...rows.map(written)].join("\n");
  };
  const reasons = new Map<string, string[]>();
  for (const { row } of found)
    if (row.reason !== undefined) reasons.set(row.reason, [...(reasons.get(row.reason) ?? []), row.name]);
  const misses = found.filter((one) => !reaches(one));
  return [
    "### Everything stated is true",
    "",
    "Aim: 94.5 to 97 % covered, at most 0.5 % stopped.",
    "",
    table(body("truly")),
    "",
    "### Reality contradicts what is stated, and nobody says so",
    "",
    "Aim: in 95 % of all weighings the truth is covered, or a warning or a stop is given.",
    "",
    table(body("falsely")),
    "",
    "Why some miss their aim, or may:",
    "",
    ...[...reasons].map(([reason, names]) => `- ${names.map((name) => `“${name}”`).join(", ")}: ${reason}.`),
    "",
    `${found.length - misses.length} of ${found.length} classes reach their aim.`,
    "",
  ].join("\n");
}
