import { afterEach, expect, test } from "vitest";
import { mostListening, takePlace } from "../../../server/web/stream-places.ts";

const leaving: (() => void)[] = [];
const gaveUp: string[] = [];
afterEach(() => {
  for (const leave of leaving.splice(0)) leave();
  gaveUp.length = 0;
});

function take(name: string, browser: string | undefined): boolean {
  const leave = takePlace(browser, () => gaveUp.push(name));
  if (leave) leaving.push(leave);
  return leave !== null;
}

test("the oldest windows of one browser give their streams up, so that its forms always find a connection", () => {
  for (const name of ["a1", "a2", "a3", "a4"]) take(name, "a");
  take("b1", "b");
  expect(gaveUp).toEqual([]);
  take("a5", "a");
  take("a6", "a");
  expect(gaveUp).toEqual(["a1", "a2"]);
  // one that left leaves room for another
  leaving.at(-1)!();
  take("a7", "a");
  expect(gaveUp).toEqual(["a1", "a2"]);
});

test("beyond the most streams there is no place until one leaves", () => {
  for (let i = 0; i < mostListening; i += 1) expect(take(`p${i}`, undefined)).toBe(true);
  expect(take("one more", "b")).toBe(false);
  leaving.shift()!();
  expect(take("one more", "b")).toBe(true);
  expect(gaveUp).toEqual([]);
});
