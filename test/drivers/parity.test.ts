import { expect, test } from "vitest";
import { carryingParity, checkingParity } from "../../drivers/parity.ts";

const text = Buffer.from("QA     31.10 g\r\n");

test.each(["even", "odd"] as const)("seven bits with %s parity come through without it", (parity) => {
  expect(Buffer.from(checkingParity(parity)(carryingParity(text, parity)))).toEqual(text);
});

test("a flipped bit leaves a character that is none", () => {
  const sent = carryingParity(text, "even");
  for (let at = 0; at < sent.length; at += 1)
    for (let bit = 0; bit < 8; bit += 1) {
      const check = checkingParity("even");
      check(sent);
      const got = check(sent.map((byte, i) => (i === at ? byte ^ (1 << bit) : byte)));
      expect(got[at]! >= 0x80).toBe(true);
    }
});

test("where the driver has taken the parity off, the characters stay", () => {
  const check = checkingParity("even");
  expect(Buffer.from(check(text))).toEqual(text);
});
