import { describe, expect, it } from "vitest";
import { fixed, fromTo, inLocale, plusMinus, readNumber, share } from "../../views/numbers.ts";

describe("a typed number", () => {
  it.each([
    ["2,97", "2.97"],
    ["2.97", "2.97"],
    ["31,10", "31.10"],
    [" 31.1035 ", "31.1035"],
    ["−0,05", "-0.05"],
    ["+3", "3"],
    [",5", "0.5"],
    ["1 234,5", "1234.5"],
    ["1'234.50", "1234.50"],
    ["0,125", "0.125"],
    ["31.103", "31.103"],
    ["1,234,567", "1234567"],
    ["1.234.567,5", "1234567.5"],
  ])("%s is read as %s", (typed, text) => {
    expect(readNumber(typed)).toEqual({ kind: "number", text });
  });

  it.each([
    ["1,234", ["1.234", "1234"]],
    ["12,345", ["12.345", "12345"]],
    ["1.234,5", ["1234.5", "1.2345"]],
    ["1,234.5", ["1234.5", "1.2345"]],
  ])("%s comes back as a question with both readings", (typed, readings) => {
    const answer = readNumber(typed);
    expect(answer).toMatchObject({ kind: "question", typed, readings });
    expect(answer.kind === "question" && answer.says).toContain(readings[0]);
  });

  it("is no question when the mark is the language's own decimal mark", () => {
    expect(readNumber("1,234", "de")).toEqual({ kind: "number", text: "1.234" });
    expect(readNumber("1.234", "de")).toMatchObject({ kind: "question", readings: ["1.234", "1234"] });
  });

  it.each(["", "abc", "31.1 g", "1,2,3", "1.2.3", ".", "1.234,5,6", "1e3", "Infinity"])(
    "%j is refused with a sentence that shows what is right",
    (typed) => {
      const answer = readNumber(typed);
      expect(answer.kind).toBe("refused");
      expect(answer.kind === "refused" && answer.says).toMatch(/Right: /);
    },
  );
});

describe("a number is written", () => {
  it("with the decimal mark of the language and a true minus sign", () => {
    expect(inLocale("-31.10", "de")).toBe("−31,10");
    expect(fixed(-0.0001, 2)).toBe("0.00");
  });

  it("with its uncertainty to two significant digits (GUM 7.2.6)", () => {
    expect(plusMinus(10.36412, 0.0304)).toBe("10.364 ± 0.030");
    expect(plusMinus(10.36412, 0.0304, "de")).toBe("10,364 ± 0,030");
  });

  it("as an interval whose ends carry the same decimals", () => {
    expect(fromTo(10.30412, 10.42412)).toBe("10.304 to 10.424");
    expect(fromTo(10.3, 10.3, "de")).toBe("10,3000 bis 10,3000");
  });

  it("as a share that never hides a small contribution as zero", () => {
    expect(share(0.004)).toBe("under 1 %");
    expect(share(0.617)).toBe("62 %");
    expect(share(0)).toBe("0 %");
  });
});
