import { ReadlineParser } from "@serialport/parser-readline";
import { type LineCutter, type LineCutterOptions, lineText, longestLine } from "./line.ts";

/** Line ends an owner can name. */
export const lineEnds = { crlf: "\r\n", cr: "\r", lf: "\n" } as const;

export type LineEnd = keyof typeof lineEnds;

export function isLineEnd(name: string): name is LineEnd {
  return Object.hasOwn(lineEnds, name);
}

/**
 * Cuts at one stated line end and at nothing else, so that a stray CR in a burst of noise cannot tear a line in two.
 * The cutting is the serial library's own; the first partial line is dropped and the length is capped here.
 */
export function knownEnd(end: LineEnd): (options: LineCutterOptions) => LineCutter {
  return ({ onLine, onTooLong, firstLine = "drop" }) => {
    let parser = begin();
    let partial = firstLine === "drop";

    function begin(): ReadlineParser {
      const fresh = new ReadlineParser({
        delimiter: lineEnds[end],
        encoding: "latin1",
        includeDelimiter: true,
      });
      fresh.on("data", (line: string) => {
        if (parser === fresh) whole(Buffer.from(line, "latin1"));
      });
      return fresh;
    }
    function whole(bytes: Uint8Array): void {
      const dropped = partial;
      partial = false;
      if (dropped) return;
      if (bytes.length > longestLine) {
        onTooLong(bytes.slice(0, longestLine));
        return;
      }
      const text = lineText(bytes);
      if (text.trim() !== "") onLine({ bytes: Uint8Array.from(bytes), text });
    }
    return {
      push(chunk) {
        parser.write(Buffer.from(chunk));
        // The library keeps an unfinished line for ever; noise has no end.
        if (parser.buffer.length <= longestLine) return;
        onTooLong(Uint8Array.from(parser.buffer.subarray(0, longestLine)));
        parser = begin();
        partial = true;
      },
      idle() {},
      waiting: false,
      reset() {
        parser = begin();
        partial = firstLine === "drop";
      },
    };
  };
}
