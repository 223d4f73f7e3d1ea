import { expect, test, vi } from "vitest";
import { knownEnd, type LineEnd } from "../../drivers/known-end.ts";

function cut(end: LineEnd) {
  const lines: string[] = [];
  const tooLong: number[] = [];
  const cutter = knownEnd(end)({
    onLine: ({ text }) => lines.push(text),
    onTooLong: (bytes) => tooLong.push(bytes.length),
  });
  return {
    lines,
    tooLong,
    push: (text: string) => cutter.push(Buffer.from(text, "latin1")),
    reset: () => cutter.reset(),
  };
}

test("a stated line end alone ends a line, however the line is chopped", async () => {
  const { lines, push } = cut("crlf");
  for (const piece of ["1035 g\r\n31.", "1035", " g\r", "\n  31.\r1035 g\r\n"]) push(piece);
  await vi.waitFor(() => expect(lines).toEqual(["31.1035 g", "  31.\r1035 g"]));
});

test("nothing is joined across a lost cable", async () => {
  const { lines, push, reset } = cut("lf");
  push("\n31.1035 g\n   3");
  reset();
  push("1.9999 g\n31.1036 g\n");
  await vi.waitFor(() => expect(lines).toEqual(["31.1035 g", "31.1036 g"]));
});

test("noise without the stated line end is thrown away", async () => {
  const { lines, tooLong, push } = cut("lf");
  push("\n");
  for (let i = 0; i < 50; i += 1) push("7".repeat(21));
  push("\n31.1035 g\n");
  await vi.waitFor(() => expect(lines).toEqual(["31.1035 g"]));
  expect(tooLong.length).toBeGreaterThan(3);
});
