import { Refusal } from "../../calibration/refusal.ts";
/**
 * One cell of a CSV file (RFC 4180). Text that a spreadsheet would take for a formula (leading = + - @, tab or
 * carriage return) gets an apostrophe in front; numbers stay numbers, with a point. A semicolon or tab is quoted too,
 * so that a reader that guesses the separator sees commas only.
 */
export function csvCell(value: string | number | boolean | null | undefined): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "number" || typeof value === "boolean") return String(value);
  const guarded = /^\s*[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",;\t\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/** One line of a CSV file, with its line end. */
export function csvLine(cells: Parameters<typeof csvCell>[0][]): string {
  return `${cells.map(csvCell).join(",")}\r\n`;
}

/** A cell of a CSV file that was read, with where it stood. */
export interface CsvRow {
  /** line in the file where the row begins, from 1 */
  line: number;
  cells: string[];
}

/**
 * Reads CSV text (RFC 4180) row by row: quoted cells may hold the separator, quotes and line ends. The separator is the one of
 * comma, semicolon and tab that the first line holds most of outside quotes. Empty lines are left out; an apostrophe that guards
 * against a formula is taken off. Throws Refusal when a quote is never closed.
 */
export function* csvRows(text: string): Generator<CsvRow> {
  const source = text.replace(/^\uFEFF/, "");
  const separator = separatorOf(source);
  const special = new RegExp(`["\\r\\n${separator}]`, "g");
  let cells: string[] = [];
  let cell = "";
  let quoted = false;
  let line = 1;
  let began = 1;
  const endCell = () => {
    cells.push(/^'\s*[=+\-@]/.test(cell) ? cell.slice(1) : cell);
    cell = "";
  };
  const endRow = (): CsvRow[] => {
    endCell();
    const row = { line: began, cells };
    cells = [];
    return row.cells.some((each) => each.trim() !== "") ? [row] : [];
  };
  for (let at = 0; at < source.length; at += 1) {
    special.lastIndex = at;
    const next = special.exec(source)?.index ?? source.length;
    cell += source.slice(at, next);
    at = next;
    const sign = source[at] ?? "";
    if (sign === "\n") line += 1;
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (source[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (sign === '"') {
      if (cell === "") quoted = true;
      else cell += sign;
    } else if (sign === separator) endCell();
    else if (sign === "\n") {
      yield* endRow();
      began = line;
    }
  }
  if (quoted) throw new Refusal("import.csv.quotes-open", { line: began }, "file");
  if (cell !== "" || cells.length > 0) yield* endRow();
}

/** The separator that the first line tells; a line longer than any heading is not looked through. */
function separatorOf(text: string): string {
  const first =
    text
      .slice(0, 10_000)
      .replace(/"(?:[^"]|"")*"/g, "")
      .split(/\r?\n/, 1)[0] ?? "";
  const counted = [",", ";", "\t"].map((sign) => ({ sign, count: first.split(sign).length }));
  return counted.reduce((best, next) => (next.count > best.count ? next : best)).sign;
}
