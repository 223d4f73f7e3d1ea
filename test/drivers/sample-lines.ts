import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { unescapeText } from "../../drivers/escape.ts";
import { createLineCutter } from "../../drivers/line.ts";
import type { LineMeaning, LineReader } from "../../drivers/reading.ts";
import type { ShapeSettings } from "../../drivers/shapes/shape.ts";

export interface Sample {
  written: string;
  expected: string;
}

export interface SampleFile {
  /** the shape that reads them: the name of the file unless a line "# shape: …" says otherwise */
  shape: string;
  settings: ShapeSettings;
  samples: Sample[];
}

/** A file of sample lines: `|line with escapes|  =>  meaning`; comments after #; `# comma: …`, `# decimals: …` as settings. */
export function sampleFile(path: URL): SampleFile {
  const text = readFileSync(path, "utf8");
  const stated = (name: string) => new RegExp(`^# ${name}: (\\S+)$`, "m").exec(text)?.[1];
  const comma = stated("comma") ?? "not-known";
  if (comma !== "decimal" && comma !== "thousands" && comma !== "not-known")
    throw new Error(`${path.pathname}: "# comma: ${comma}" is not decimal, thousands or not-known`);
  const decimals = stated("decimals");
  const samples = text
    .split("\n")
    .filter((row) => row !== "" && !row.startsWith("#"))
    .map((row) => {
      const [, written, expected] = /^\|(.*)\|\s+=>\s+(.+)$/.exec(row) ?? [];
      if (written === undefined || expected === undefined)
        throw new Error(`${path.pathname}: "${row}" is not |line|  =>  meaning`);
      return { written, expected };
    });
  if (!/^# source: .+/m.test(text))
    throw new Error(`${path.pathname} must say on a line "# source: …" where it comes from`);
  return {
    shape: stated("shape") ?? basename(path.pathname, ".txt"),
    settings: { comma, ...(decimals !== undefined && { impliedDecimals: Number(decimals) }) },
    samples,
  };
}

/** What a reader makes of one written sample, in the words of the sample files. */
export function meaningOf(read: LineReader, written: string): string {
  const meanings: string[] = [];
  const cutter = createLineCutter({
    firstLine: "keep",
    onLine: ({ text }) => meanings.push(inWords(read(text))),
    onTooLong: () => meanings.push("unknown-line"),
  });
  cutter.push(unescapeText(written));
  cutter.idle();
  return meanings.filter((meaning) => meaning !== "nothing").join(" + ") || "nothing";
}

export function inWords(meaning: LineMeaning): string {
  if (meaning === null) return "nothing";
  if ("event" in meaning) return meaning.event.kind;
  const { text, unit, stability } = meaning.reading;
  return `${text} ${unit} ${stability}`;
}
