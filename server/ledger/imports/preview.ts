import type { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { type CsvRow, readCsv } from "../csv.ts";
import { type ListName, lists, type WrongCell } from "./lists.ts";

/** A cell that cannot be taken over: where it stands, what stands there, what would be right. */
export interface RefusedCell {
  line: number;
  column: string;
  value: string;
  says: Message;
}

export interface ImportPreview {
  list: ListName;
  /** rows whose every cell is right; nothing is taken over before a person has seen the refused ones */
  rows: { line: number; values: Record<string, unknown> }[];
  refused: RefusedCell[];
  /** headings nobody asked for; their cells are left out */
  unknownColumns: string[];
}

/** What is wrong with a row as a whole; null when nothing is. */
export type RowCheck = (row: Record<string, unknown>) => WrongCell | null;

const mostRows = 100_000;

/**
 * Reads a list and shows what would be taken over, naming every refused cell. Headings are compared without regard to
 * case and spaces; a first column of the same value twice is refused, as one of the two would be lost.
 * `alsoWrong` looks at what only the bench can know of a row whose cells are right, such as whether its metal exists.
 * Pure: takes over nothing. Throws Refusal for text that is no table of this kind.
 */
export function previewImport(list: ListName, text: string, alsoWrong: RowCheck = () => null): ImportPreview {
  const { columns } = lists[list];
  const [head, ...body] = readCsv(text);
  if (!head || body.length === 0)
    throw new Refusal("import.list.empty", { columns: Object.keys(columns).join(",") }, "file");
  if (body.length > mostRows)
    throw new Refusal("import.list.too-long", { rows: body.length, most: mostRows }, "file");
  const headings = head.cells.map((cell) => cell.trim().toLowerCase().replaceAll(" ", "_"));
  const missing = Object.keys(columns).filter((name) => columns[name]?.needed && !headings.includes(name));
  if (missing.length > 0)
    throw new Refusal(
      "import.list.columns-missing",
      { missing, found: headings, columns: Object.keys(columns) },
      "file",
    );
  const twice = headings.filter((name, index) => name in columns && headings.indexOf(name) !== index);
  if (twice.length > 0) throw new Refusal("import.list.column-twice", { column: twice[0]! }, "file");

  const preview: ImportPreview = {
    list,
    rows: [],
    refused: [],
    unknownColumns: headings.filter((name) => !(name in columns)),
  };
  const seen = new Map<string, number>();
  for (const row of body) {
    const read = readRow(list, headings, row, alsoWrong);
    const refused = read.refused.length > 0 ? read.refused : repeated(list, read.values, row.line, seen);
    if (refused.length > 0) preview.refused.push(...refused);
    else preview.rows.push({ line: row.line, values: read.values });
  }
  return preview;
}

function readRow(list: ListName, headings: string[], { line, cells }: CsvRow, alsoWrong: RowCheck) {
  const { columns, wrong } = lists[list];
  const values: Record<string, unknown> = {};
  const refused: RefusedCell[] = [];
  for (const [name, { cell }] of Object.entries(columns)) {
    const at = headings.indexOf(name);
    const value = at < 0 ? "" : (cells[at] ?? "");
    const read = cell.safeParse(value);
    if (!read.success) refused.push({ line, column: name, value, says: saysOf(read.error.issues[0]) });
    else if (read.data !== undefined) values[name] = read.data;
  }
  for (const value of cells.slice(headings.length))
    if (value.trim() !== "")
      refused.push({
        line,
        column: "–",
        value,
        says: message("import.cell.behind-headings"),
      });
  const whole = refused.length === 0 ? (wrong?.(values) ?? alsoWrong(values)) : null;
  if (whole)
    refused.push({ line, column: whole.column, value: String(values[whole.column]), says: whole.says });
  return { values, refused };
}

/** The same id or ticket twice; old weighings may repeat a ticket, but not at the same moment. */
function repeated(
  list: ListName,
  values: Record<string, unknown>,
  line: number,
  seen: Map<string, number>,
): RefusedCell[] {
  const column = Object.keys(lists[list].columns)[0] ?? "";
  const value = String(values[column]);
  const key = list === "weighings" ? `${value} ${values.measured_at}` : value;
  const before = seen.get(key);
  seen.set(key, before ?? line);
  return before === undefined
    ? []
    : [{ line, column, value, says: message("import.cell.stands-already", { line: before }) }];
}

/** The message that the issue of a cell carries. */
function saysOf(issue: z.core.$ZodIssue | undefined): Message {
  const says = issue?.code === "custom" ? (issue.params?.says as Message | undefined) : undefined;
  return says ?? message("form.entry.not-text");
}
