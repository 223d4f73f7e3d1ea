import { expect, test } from "vitest";
import { burstText, placeBurst } from "../../drivers/key-burst.ts";
import { readAnyShape } from "../../drivers/shapes/index.ts";

const strokes = (keys: string[], gapMs: number) => keys.map((key, i) => ({ key, atMs: i * gapMs }));
const dry = { id: "dry", takesWeight: true };
const immersed = { id: "immersed", takesWeight: true };
const ticket = { id: "ticket", takesWeight: false };
const place = (text: string, focused: typeof dry, waiting: (typeof dry)[]) =>
  placeBurst(text, focused, waiting, readAnyShape());

test("keys that come faster than a person types are a burst, and a person's keys are not", () => {
  expect(burstText(strokes([..."31.1035", "Enter"], 8))).toBe("31.1035");
  expect(burstText(strokes([..."  31.1035 g", "Tab"], 8))).toBe("  31.1035 g");
  expect(burstText(strokes([..."31.1035", "Enter"], 90))).toBeNull();
  expect(burstText(strokes([..."42"], 8))).toBeNull();
});

test("what a person typed before the burst does not belong to it", () => {
  const before = strokes([..."no 4"], 150);
  const after = strokes([..."31.10", "Enter"], 5).map(({ key, atMs }) => ({ key, atMs: atMs + 2000 }));
  expect(burstText([...before, ...after])).toBe("31.10");
});

test("a weight goes into the field that has the focus when that takes a weight", () => {
  expect(place("31.1035 g", dry, [dry, immersed])).toEqual({ field: "dry", text: "31.1035", unit: "g" });
  expect(place("31,10", dry, [dry])).toEqual({ field: "dry", text: "31.10", unit: null });
});

test("typed into another field it moves to the one that waits for a weight", () => {
  expect(place("31.1035", ticket, [immersed])).toEqual({ field: "immersed", text: "31.1035", unit: null });
});

test("it is refused when several fields wait, when none does, and when it is no weight", () => {
  expect(place("31.1035", ticket, [dry, immersed])).toMatchObject({
    refused: expect.stringMatching(/several fields wait/),
  });
  expect(place("31.1035", ticket, [])).toMatchObject({ refused: expect.stringMatching(/no field waits/) });
  for (const text of ["4006381333931x", "Err 4", "12 pcs", "1,234"])
    expect(place(text, dry, [dry]), text).toMatchObject({
      refused: expect.stringMatching(/Nothing was entered/),
    });
});
