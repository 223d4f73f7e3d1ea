import { expect, test } from "vitest";
import { escapeBytes, unescapeText } from "../../drivers/escape.ts";
import { createLineCutter, longestLine } from "../../drivers/line.ts";

function cut(chunks: string[], firstLine: "drop" | "keep" = "keep") {
  const lines: string[] = [];
  const raw: string[] = [];
  let tooLong = 0;
  const cutter = createLineCutter({
    firstLine,
    onLine: ({ text, bytes }) => {
      lines.push(text);
      raw.push(escapeBytes(bytes));
    },
    onTooLong: () => {
      tooLong += 1;
    },
  });
  for (const chunk of chunks) cutter.push(unescapeText(chunk));
  cutter.idle();
  return { lines, raw, tooLong };
}

test("CR LF, LF, CR and LF CR each end a line once", () => {
  for (const end of ["\\r\\n", "\\n", "\\r", "\\n\\r"])
    expect(cut([`31.10 g${end}31.11 g${end}31.12 g${end}`]).lines).toEqual(["31.10 g", "31.11 g", "31.12 g"]);
});

test("a line that arrives byte by byte is the same line", () => {
  const bytes = [...unescapeText("+   31.1035 g\\r\\n-    0.0002 g\\r\\n")].map((byte) =>
    escapeBytes(Uint8Array.of(byte)),
  );
  expect(cut(bytes).lines).toEqual(["+   31.1035 g", "-    0.0002 g"]);
});

test("the first, partial line after opening is dropped", () => {
  expect(cut(["1035 g\\r\\n31.1036 g\\r\\n"], "drop").lines).toEqual(["31.1036 g"]);
});

test("a frame that begins while the first line is still dropped is a whole line", () => {
  expect(cut(["34g\\x03x\\x02+0311034g\\x03x"], "drop").lines).toEqual(["\x02+0311034g\x03x"]);
});

test("a frame keeps its check bytes and ends at the next frame or at silence", () => {
  expect(cut(["\\x02+0311034g\\x03x\\x02+0311035g\\x03y"]).lines).toEqual([
    "\x02+0311034g\x03x",
    "\x02+0311035g\x03y",
  ]);
});

test("noise without a line end is thrown away once it is too long, and the next line is whole", () => {
  const noise = "7".repeat(3 * longestLine);
  expect(cut([noise, "7\\r\\n31.10 g\\r\\n"])).toMatchObject({ lines: ["31.10 g"], tooLong: 1 });
});

test("the raw line keeps every byte, line end included", () => {
  expect(cut(["\\x1131.10 g\\x00\\r\\n"])).toMatchObject({
    lines: ["31.10 g"],
    raw: ["\\x1131.10 g\\x00\\r\\n"],
  });
});

test("seven bits with even or odd parity are recognised by their fingerprint", () => {
  // The two byte sequences of "31.10 g" are computed: bit 7 makes the number of ones even, or odd.
  expect(cut(["\\x33\\xB1\\x2E\\xB1\\x30\\xA0\\xE7\\x8D\\x0A"]).lines).toEqual(["31.10 g"]);
  expect(cut(["\\xB3\\x31\\xAE\\x31\\xB0\\x20\\x67\\x0D\\x8A"]).lines).toEqual(["31.10 g"]);
});

test("one flipped eighth bit is not taken for parity", () => {
  expect(cut(["\\xB31.10 g\\r\\n"]).lines).toEqual(["\u00B31.10 g"]);
});

test("escaped bytes come back as the same bytes", () => {
  const all = Uint8Array.from({ length: 256 }, (_, i) => i);
  expect(unescapeText(escapeBytes(all))).toEqual(all);
});

test("an escape that cannot be read says where it is and what would be right", () => {
  expect(() => unescapeText("P\\q")).toThrow(
    expect.objectContaining({
      code: "balance.request.bytes",
      params: { request: "P\\q", place: 2, part: "\\q" },
    }),
  );
});
