import { describe, expect, it } from "vitest";
import { z } from "zod";
import { message } from "../../../../calibration/message.ts";
import { type Entries, readForm, refuseEntry } from "../../../../server/web/forms/form.ts";

const sizes = ({ number, maybeDecimal, text, maybeText, choice, box, day }: Entries) =>
  z
    .object({
      width: number({ unit: "mm", from: 0.05, to: 1000, what: message("form.field.width") }),
      height: maybeDecimal({ unit: "mm", aboveZero: true }),
      count: number({ from: 1, to: 100, whole: true }),
      by: text({ most: 5 }),
      note: maybeText(),
      metal: choice(["gold", "silver"], { first: "gold" }),
      agreed: box(),
      on: day(),
    })
    .superRefine(({ agreed }, context) => {
      if (!agreed) refuseEntry(context, "agreed", message("form.choice.not-offered", { typed: "" }));
    });

describe("a form", () => {
  it("gives typed values, numbers with comma, point and unit", () => {
    const body = {
      width: "2,5 cm",
      height: " 1.20 ",
      count: "3",
      by: " M. ",
      agreed: "yes",
      on: "2026-03-02",
      _csrf: "x",
    };
    expect(readForm(sizes, body, "de")).toEqual({
      values: {
        width: 25,
        height: "1.20",
        count: 3,
        by: "M.",
        note: undefined,
        metal: "gold",
        agreed: true,
        on: "2026-03-02",
      },
    });
  });

  it("names every entry that is wrong, each with its message", () => {
    const body = { width: "9 g", height: "0", count: "1.5", by: "Marianne", metal: "tin", on: "2026-02-30" };
    const read = readForm(sizes, body, "en");
    expect("problems" in read && read.problems).toMatchObject([
      { fieldId: "width", error: { code: "form.entry", params: { message: { code: "form.unit.other" } } } },
      { fieldId: "height", error: { code: "form.number.not-above-zero" } },
      { fieldId: "count", error: { code: "form.number.whole" } },
      { fieldId: "by", error: { code: "form.text.too-long", params: { length: 8, most: 5 } } },
      { fieldId: "metal", error: { code: "form.choice.not-offered", params: { typed: "tin" } } },
      { fieldId: "on", error: { code: "form.day.not-a-day" } },
    ]);
  });

  it("looks at what holds between entries once each is right, and refuses what is no text", () => {
    const body = { width: "1", count: "1", by: "M", on: "2026-03-02" };
    expect(readForm(sizes, body, "en")).toMatchObject({ problems: [{ fieldId: "agreed" }] });
    expect(readForm(sizes, { ...body, by: ["a", "b"], agreed: "yes" }, "en")).toEqual({
      problems: [{ fieldId: "by", error: { code: "form.entry.not-text" } }],
    });
    expect("problems" in readForm(sizes, undefined, "en")).toBe(true);
  });
});
