import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { roundedPair, toPlace } from "../../calibration/rounding.ts";

describe("a value is written with its uncertainty", () => {
  it("as in GUM 7.2.6: 10.057 62 Ω with 27 mΩ becomes 10.058 Ω", () => {
    // JCGM 100:2008, 7.2.6: "if y = 10,057 62 Ω with u_c(y) = 27 mΩ, y should be rounded to 10,058 Ω".
    expect(roundedPair(10.05762, 0.027)).toEqual({ value: "10.058", u: "0.027", decimals: 3 });
  });

  it("as in GUM 7.2.6: 28.05 kHz of uncertainty becomes 28 kHz", () => {
    expect(roundedPair(1234.567, 28.05).u).toBe("28");
    expect(roundedPair(1234.567, 28.05).value).toBe("1235");
  });

  it("keeps trailing zeros, since they are information", () => {
    expect(roundedPair(10.4, 0.03)).toEqual({ value: "10.400", u: "0.030", decimals: 3 });
  });

  it("keeps two digits when rounding carries into a new place", () => {
    expect(roundedPair(10.364, 0.0996)).toEqual({ value: "10.36", u: "0.10", decimals: 2 });
    expect(roundedPair(10.364, 9.96)).toEqual({ value: "10", u: "10", decimals: 0 });
  });

  it("rounds to tens and hundreds when the uncertainty is that large", () => {
    expect(roundedPair(12345, 678)).toEqual({ value: "12350", u: "680", decimals: -1 });
    expect(roundedPair(123456, 7890)).toEqual({ value: "123500", u: "7900", decimals: -2 });
  });

  it("never writes minus zero", () => {
    expect(toPlace(-0.0004, 3)).toBe("0.000");
    expect(toPlace(-4, -1)).toBe("0");
  });

  it("refuses an uncertainty of zero and says why", () => {
    expect(() => roundedPair(10.4, 0)).toThrow(TypeError);
    expect(() => roundedPair(10.4, Number.NaN)).toThrow(TypeError);
    expect(() => roundedPair(Number.POSITIVE_INFINITY, 1)).toThrow(TypeError);
  });

  it("moves the value by at most half a unit of its last place", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e4, noNaN: true }),
        (value, u) => {
          const { value: text, u: uText, decimals } = roundedPair(value, u);
          const place = 10 ** -decimals;
          // 1e-9 of a place allows for the decimal text being read back into a binary number
          expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(place * (0.5 + 1e-9) + 1e-9);
          expect(uText.replace(/^0\.0*|\./g, "").length).toBeGreaterThanOrEqual(2);
        },
      ),
    );
  });
});
