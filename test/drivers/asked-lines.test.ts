import { expect, test } from "vitest";
import { requestBytes } from "../../drivers/asked-lines.ts";

const asked =
  (request: string, ownerAgreed = true) =>
  () =>
    requestBytes({ request, ownerAgreed, when: "timer" });

test("a request is sent byte for byte as its owner typed it", () => {
  expect([...asked("W?\\x05\\r\\n")()]).toEqual([0x57, 0x3f, 0x05, 0x0d, 0x0a]);
});

test("nothing is sent before the owner has agreed", () => {
  expect(asked("W?\\r\\n", false)).toThrow(expect.objectContaining({ code: "balance.request.not-agreed" }));
});

test("a request that reads as if it would zero, tare, adjust or switch off is refused", () => {
  for (const request of [
    "ZERO\\r\\n",
    "tare",
    "T\\r\\n",
    "z\\r",
    "Start calibration\\r",
    "OFF\\r\\n",
    "RESET",
  ])
    expect(asked(request), request).toThrow(
      expect.objectContaining({ code: "balance.request.changing", params: { request } }),
    );
});

test("an empty or unreadable request says what would be right", () => {
  expect(asked("")).toThrow(expect.objectContaining({ code: "balance.request.empty" }));
  expect(asked("W\\z")).toThrow(
    expect.objectContaining({ params: { request: "W\\z", place: 2, part: "\\z" } }),
  );
});
