import { describe, expect, test } from "vitest";
import { Refusal } from "../../../calibration/refusal.ts";
import {
  beginSession,
  goOn,
  heard,
  isFinished,
  leaveOut,
  type Session,
  sessionNow,
  steps,
} from "../../../drivers/learning/session.ts";
import { refusalOf } from "../../refusal-of.ts";

const nothing = { text: "", unit: "" };
const typed = { text: "31.10", unit: "g" };

/** Lines come in the present step, then the owner goes on. */
function done(session: Session, atMs: number, display = typed): Session {
  const now = heard(heard(session));
  return goOn(now, atMs, sessionNow(now).asksDisplayed ? display : nothing);
}

describe("the set-up, step by step", () => {
  test("waits for a line and for the owner, however long both take", () => {
    const begun = beginSession(0);
    expect(refusalOf(() => goOn(begun, 900_000, nothing))).toMatchObject({ code: "learn.no-line-yet" });
    const one = heard(begun);
    expect(sessionNow(one).lineCame).toBe(false);
    expect(() => goOn(one, 900_000, nothing)).toThrow(Refusal);
    expect(goOn(heard(one), 900_000, nothing)).toMatchObject({
      step: 1,
      moments: [{ atMs: 0 }, { atMs: 900_000 }],
    });
  });

  test("goes through every step and keeps what was read off, and when", () => {
    let session = beginSession(0);
    for (let i = 0; !isFinished(session); i += 1) session = done(session, 1000 * (i + 1));
    expect(session.moments.map(({ phase }) => phase)).toEqual(steps.map(({ phase }) => phase));
    expect(session.displayed.map(({ atMs, text, unit }) => [atMs, text, unit])).toEqual([
      [3000, "31.10", "g"],
      [5000, "31.10", "g"],
      [8000, "31.10", "g"],
    ]);
  });

  test("asks for the display, with its unit, before it goes on from a weight at rest", () => {
    const loaded = heard(heard(done(done(beginSession(0), 1), 2)));
    expect(sessionNow(loaded)).toMatchObject({ message: { code: "learn.step.loaded" }, asksDisplayed: true });
    expect(refusalOf(() => goOn(loaded, 3, nothing))).toMatchObject({
      code: "learn.display-not-typed",
      at: "text",
    });
    expect(refusalOf(() => goOn(loaded, 3, { text: "31.10", unit: " " }))).toMatchObject({ at: "unit" });
  });

  test("may leave out a step that is optional and no other, and says nothing about the pan then", () => {
    const begun = beginSession(0);
    expect(leaveOut(begun, 5)).toBe(begun);
    const touched = done(done(done(begun, 1), 2), 3);
    expect(leaveOut(touched, 4).moments.at(-2)).toEqual({ atMs: 4, phase: "unmarked" });
  });

  test("never asks to load the balance beyond its range", () => {
    expect(steps.map(({ phase }) => String(phase))).not.toContain("overloaded");
  });
});
