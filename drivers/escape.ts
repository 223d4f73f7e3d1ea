import { Refusal } from "../calibration/refusal.ts";

const named = new Map([
  [0x09, "\\t"],
  [0x0a, "\\n"],
  [0x0d, "\\r"],
  [0x5c, "\\\\"],
]);

/** Bytes as printable text: ASCII stays, \r \n \t \\ by name, every other byte as \xNN. `unescape` turns it back. */
export function escapeBytes(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes)
    text +=
      named.get(byte) ??
      (byte >= 0x20 && byte < 0x7f
        ? String.fromCharCode(byte)
        : `\\x${byte.toString(16).toUpperCase().padStart(2, "0")}`);
  return text;
}

const escaped = /\\(x[0-9A-Fa-f]{2}|[rnt\\])|([\x20-\x5b\x5d-\x7e])/y;
const letters: Record<string, number> = { r: 0x0d, n: 0x0a, t: 0x09, "\\": 0x5c };

/**
 * Text with escapes as bytes: `\r`, `\n`, `\t`, `\\`, `\xNN`, all else printable ASCII.
 * Throws Refusal naming the first place that cannot be read.
 */
export function unescapeText(text: string): Uint8Array {
  const bytes: number[] = [];
  escaped.lastIndex = 0;
  while (escaped.lastIndex < text.length) {
    const at = escaped.lastIndex;
    const match = escaped.exec(text);
    if (!match)
      throw new Refusal(
        "balance.request.bytes",
        { request: text, place: at + 1, part: text.slice(at, at + 4) },
        "request",
      );
    const code = match[1];
    if (code === undefined) bytes.push((match[2] ?? " ").charCodeAt(0));
    else bytes.push(letters[code] ?? Number.parseInt(code.slice(1), 16));
  }
  return Uint8Array.from(bytes);
}
