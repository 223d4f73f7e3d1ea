import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { rows } from "./classes.ts";
import type { Figures } from "./outcome.ts";
import type { Found } from "./table.ts";

const file = new URL("found.json", import.meta.url);
const readme = new URL("../../README.md", import.meta.url);

/** Where the README holds the table. */
const marks = [
  "<!-- coverage: written by npm run coverage -- --write -->",
  "<!-- end of coverage -->",
] as const;

/** What the last whole run found, by the name of the class; empty before there was one. */
export function recorded(): Readonly<Record<string, Figures>> {
  if (!existsSync(file)) return {};
  // JSON has no NaN: a share of nothing
  return JSON.parse(readFileSync(file, "utf8"), (_, value) => value ?? Number.NaN) as Record<string, Figures>;
}

/** The recorded classes in the order of the list; a class that was never run is left out. */
export function recordedRows(): Found[] {
  const found = recorded();
  return rows.flatMap((row) => {
    const figures = found[row.name];
    return figures === undefined ? [] : [{ row, figures }];
  });
}

/** Keeps what was found; classes that were not run keep theirs. */
export function keep(found: readonly Found[]): void {
  const kept: Record<string, Figures> = { ...recorded() };
  for (const { row, figures } of found)
    kept[row.name] = Object.fromEntries(
      Object.entries(figures).map(([key, value]) => [key, Number.isNaN(value) ? null : +value.toFixed(5)]),
    ) as unknown as Figures;
  const ordered = rows.flatMap(({ name }) => (kept[name] === undefined ? [] : [[name, kept[name]]]));
  writeFileSync(file, `${JSON.stringify(Object.fromEntries(ordered), null, 2)}\n`);
}

/** The table that stands in the README. */
export function tableInReadme(): string {
  const text = readFileSync(readme, "utf8");
  const [from, to] = [text.indexOf(marks[0]), text.indexOf(marks[1])];
  return from < 0 || to < 0 ? "" : text.slice(from + marks[0].length, to).trim();
}

/** Writes the table into the README, between its marks. */
export function writeReadme(table: string): void {
  const text = readFileSync(readme, "utf8");
  const [from, to] = [text.indexOf(marks[0]), text.indexOf(marks[1])];
  if (from < 0 || to < 0)
    throw new Error(`README.md has no ${marks.join(" … ")}; put both lines where the table belongs.`);
  writeFileSync(readme, `${text.slice(0, from + marks[0].length)}\n\n${table.trim()}\n\n${text.slice(to)}`);
}
