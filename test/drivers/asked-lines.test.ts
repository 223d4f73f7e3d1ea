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
  expect(asked("W?\\r\\n", false)).toThrow(/has not agreed to it yet/);
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
    expect(asked(request), request).toThrow(/never sent by themselves/);
});

test("an empty or unreadable request says what would be right", () => {
  expect(asked("")).toThrow(/is empty\. Right:/);
  expect(asked("W\\z")).toThrow(/place 2/);
});
