import { describe, expect, it } from "vitest";
import { readNumber } from "../../calibration/typed-number.ts";
import { readQuantity } from "../../calibration/typed-quantity.ts";

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
    ["1.234,5", "1234.5"],
    ["1,234.5", "1234.5"],
    ["-3,110.35", "-3110.35"],
    ["1,234.567", "1234.567"],
  ])("%s is read as %s", (typed, text) => {
    expect(readNumber(typed)).toEqual({ kind: "number", text });
  });

  it.each([
    ["1,234", ["1.234", "1234"]],
    ["12,345", ["12.345", "12345"]],
  ])("%s comes back as a question whose meanings are understood when they are typed", (typed, meanings) => {
    expect(readNumber(typed)).toMatchObject({
      kind: "question",
      meanings,
      message: { code: "form.number.two-meanings" },
    });
    for (const meaning of meanings) expect(readNumber(meaning)).toEqual({ kind: "number", text: meaning });
  });

  it("is no question when the mark is the language's own decimal mark, or stands on a display", () => {
    expect(readNumber("1,234", { mark: "," })).toEqual({ kind: "number", text: "1.234" });
    expect(readNumber("1.234", { mark: ",", displayed: true })).toEqual({ kind: "number", text: "1.234" });
    const asked = readNumber("1.234", { mark: "," });
    expect(asked).toMatchObject({ kind: "question", meanings: ["1,234", "1234"] });
    if (asked.kind !== "question") return;
    for (const meaning of asked.meanings) expect(readNumber(meaning, { mark: "," }).kind).toBe("number");
  });

  it.each([
    ["", "form.number.empty"],
    ["abc", "form.number.not-a-number"],
    [".", "form.number.not-a-number"],
    ["1e3", "form.number.not-a-number"],
    ["Infinity", "form.number.not-a-number"],
    ["1,2,3", "form.number.two-marks"],
    ["1.2.3", "form.number.two-marks"],
    ["12.34,5", "form.number.two-marks"],
    ["1234,567.8", "form.number.two-marks"],
    ["1.234,5,6", "form.number.two-marks"],
    ["1.23.456,5", "form.number.two-marks"],
  ])("%j is refused", (typed, code) => {
    expect(readNumber(typed)).toMatchObject({ kind: "refused", message: { code } });
  });
});

describe("a number typed with its unit", () => {
  it.each([
    ["31.10 g", "g", "31.10"],
    ["31.10g", "g", "31.10"],
    ["31.10", "g", "31.10"],
    ["1 234,5 g", "g", "1234.5"],
    // 1 ozt = 31.1034768 g exactly: NIST SP 811 (2008), appendix B.8 [clause from memory]
    ["2 ozt", "g", "62.2069536"],
    ["5 mg", "g", "0.005"],
    ["2.5 cm", "mm", "25.0"],
    ["1 in", "mm", "25.4"],
    ["21,4 °C", "°C", "21.4"],
    ["21.4 C", "°C", "21.4"],
    // 32 °F = 0 °C and 212 °F = 100 °C by definition
    ["32 °F", "°C", "0.0"],
    ["212f", "°C", "100.0"],
    ["293.15 K", "°C", "20.000"],
    ["10490 kg/m3", "g/cm³", "10.490"],
    ["75 %", "‰", "750"],
    ["585 ‰", "%", "58.5"],
    // 100 % IACS = 58 MS/m: IEC 60028:1925 [clause from memory]
    ["58 MS/m", "% IACS", "100"],
    ["-0.05 g", "g", "-0.05"],
  ])("%s where %s is asked gives %s", (typed, unit, text) => {
    expect(readQuantity(typed, { unit })).toEqual({ kind: "number", text });
  });

  it("is refused when the unit is unknown or measures something else", () => {
    expect(readQuantity("5 stone", { unit: "g" })).toMatchObject({
      message: { code: "form.unit.unknown", params: { unit: "stone", asked: "g" } },
    });
    expect(readQuantity("31.1 g", { unit: "°C" })).toMatchObject({ message: { code: "form.unit.other" } });
    expect(readQuantity("5 Mg", { unit: "g" })).toMatchObject({ message: { code: "form.unit.unknown" } });
    expect(readQuantity("5 g", { unit: "" })).toMatchObject({ message: { code: "form.unit.none" } });
  });

  it("is asked about when the unit stands against the list beside it, or means two things", () => {
    expect(readQuantity("1 ozt", { unit: "g", unitChosen: true })).toMatchObject({
      kind: "refused",
      message: { code: "form.unit.two", params: { typed: "ozt", chosen: "g" } },
    });
    expect(readQuantity("1 g", { unit: "g", unitChosen: true })).toEqual({ kind: "number", text: "1" });
    expect(readQuantity("10 gr", { unit: "g" })).toMatchObject({
      kind: "question",
      meanings: ["10 g", "10 gn"],
    });
    expect(readQuantity("1,234 g", { unit: "g" })).toMatchObject({
      kind: "question",
      meanings: ["1.234 g", "1234 g"],
    });
  });

  it("asks whether a temperature beyond the range is one in °F, and takes the answer", () => {
    const water = { unit: "°C", from: 0, to: 40, mark: "," as const };
    expect(readQuantity("70,5", water)).toMatchObject({
      kind: "question",
      meanings: ["70,5 °F"],
      message: { code: "form.number.fahrenheit", params: { celsius: { decimal: "21.39" } } },
    });
    expect(readQuantity("70,5 °F", water)).toEqual({ kind: "number", text: "21.39" });
    expect(readQuantity("70 °C", water)).toMatchObject({ message: { code: "form.number.out-of-range" } });
    expect(readQuantity("400", water)).toMatchObject({ message: { code: "form.number.out-of-range" } });
  });
});
