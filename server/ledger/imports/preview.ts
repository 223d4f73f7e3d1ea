import type { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import type { DecimalMark } from "../../../calibration/typed-number.ts";
import { type CsvRow, csvRows } from "../csv.ts";
import { inTurns } from "../turns.ts";
import { type Heading, headingsOf } from "./headings.ts";
import { MarkSeen } from "./list-mark.ts";
import { type ListName, listsWith, type WrongCell } from "./lists.ts";

/** A cell that cannot be taken over: where it stands, what stands there, what would be right. */
export interface RefusedCell {
  line: number;
  column: string;
  value: string;
  message: Message;
}

export interface ImportPreview {
  list: ListName;
  /** rows whose every cell is right; nothing is taken over before a person has seen the refused ones */
  rows: { line: number; values: Record<string, unknown> }[];
  refused: RefusedCell[];
  /** headings nobody asked for; their cells are left out */
  unknownColumns: string[];
}

type Row = Record<string, unknown>;

/** What is wrong with a row as a whole, or the row as it is taken over. */
export type RowCheck = (row: Row) => WrongCell | { row: Row };

const mostRows = 100_000;

/**
 * Reads a list and shows what would be taken over, naming every refused cell. A heading is the name of a column or a
 * word for it; a first column of the same value twice is refused, as one of the two would be lost. The decimal mark is
 * the one the numbers show, else that of the page; a number that the list leaves open is refused with what it can mean.
 * `asRow` looks at what only the bench can know of a row whose cells are right, such as whether its metal exists.
 * Takes over nothing; a long list is read with turns for other work between. Throws Refusal for text that is no table of this kind.
 */
export async function previewImport(
  list: ListName,
  text: string,
  { mark = ".", asRow = (row) => ({ row }) }: { mark?: DecimalMark; asRow?: RowCheck } = {},
): Promise<ImportPreview> {
  const { columns } = listsWith(mark)[list];
  const [head, ...body] = await rowsOf(text);
  if (!head || body.length === 0)
    throw new Refusal("import.list.empty", { columns: Object.keys(columns).join(",") }, "file");
  const found = headingsOf(head.cells, Object.keys(columns));
  const headings = found.map(({ column }) => column);
  const other = found.find(({ otherUnit }) => otherUnit !== undefined);
  if (other)
    throw new Refusal("import.list.unit-other", { column: other.column, unit: other.otherUnit! }, "file");
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
  const rowRead = {
    headings: found,
    asRow,
    list: listsWith((await markOf(body, headings)) ?? mark)[list],
  };
  for await (const row of inTurns(body)) {
    const read = readRow(rowRead, row);
    const refused =
      read.refused.length > 0
        ? read.refused
        : repeated({ list, column: Object.keys(columns)[0] ?? "" }, read.values, row.line, seen);
    if (refused.length > 0) preview.refused.push(...refused);
    else preview.rows.push({ line: row.line, values: read.values });
  }
  return preview;
}

/** The heading and the rows under it. Throws Refusal for more rows than are taken at once, before the others are read. */
async function rowsOf(text: string): Promise<CsvRow[]> {
  const rows: CsvRow[] = [];
  for await (const row of inTurns(csvRows(text))) {
    if (rows.length > mostRows) throw new Refusal("import.list.too-long", { most: mostRows }, "file");
    rows.push(row);
  }
  return rows;
}

/** The decimal mark that the cells of the columns show whose names end in a unit, as they were written. */
async function markOf(
  body: readonly CsvRow[],
  headings: readonly string[],
): Promise<DecimalMark | undefined> {
  const at = headings.flatMap((name, index) => (/_(g|g_cm3|mm|c|permille)$/.test(name) ? [index] : []));
  const seen = new MarkSeen();
  for await (const { cells } of inTurns(body)) for (const index of at) seen.read(cells[index] ?? "");
  return seen.mark;
}

interface RowRead {
  list: ReturnType<typeof listsWith>[ListName];
  headings: readonly Heading[];
  asRow: RowCheck;
}

function readRow({ list: { columns, wrong }, headings, asRow }: RowRead, { line, cells }: CsvRow) {
  const values: Row = {};
  const refused: RefusedCell[] = [];
  for (const [name, { cell }] of Object.entries(columns)) {
    const at = headings.findIndex(({ column }) => column === name);
    const value = at < 0 ? "" : (cells[at] ?? "");
    const read = cell.safeParse(value);
    if (!read.success) refused.push({ line, column: name, value, message: messageOf(read.error.issues[0]) });
    else if (headings[at]?.unitOpen && value.trim() !== "" && !/\p{L}/u.test(value))
      refused.push({
        line,
        column: name,
        value,
        message: message("import.cell.unit-open", { column: name }),
      });
    else if (read.data !== undefined) values[name] = read.data;
  }
  for (const value of cells.slice(headings.length))
    if (value.trim() !== "")
      refused.push({ line, column: "–", value, message: message("import.cell.behind-headings") });
  if (refused.length > 0) return { values, refused };
  const faulty = wrong?.(values);
  const whole = faulty ? faulty : asRow(values);
  if ("row" in whole) return { values: whole.row, refused };
  const { column, message: found } = whole;
  return { values, refused: [{ line, column, value: String(values[column]), message: found }] };
}

/** The same id or ticket twice; old weighings may repeat a ticket, but not at the same moment. */
function repeated(
  { list, column }: { list: ListName; column: string },
  values: Row,
  line: number,
  seen: Map<string, number>,
): RefusedCell[] {
  const value = String(values[column]);
  const key = list === "weighings" ? `${value} ${values.measured_at}` : value;
  const before = seen.get(key);
  seen.set(key, before ?? line);
  return before === undefined
    ? []
    : [{ line, column, value, message: message("import.cell.stands-already", { line: before }) }];
}

/** The message that the issue of a cell carries. */
function messageOf(issue: z.core.$ZodIssue | undefined): Message {
  const sentence = issue?.code === "custom" ? (issue.params?.message as Message | undefined) : undefined;
  return sentence ?? message("form.entry.not-text");
}
