import { describe, expect, it } from "vitest";
import { fixed, fromTo, inLocale, plusMinus, share } from "../../views/numbers.ts";

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
