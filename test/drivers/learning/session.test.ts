import { describe, expect, test } from "vitest";
import { advance, beginSession, type Session, sessionNow, steps } from "../../../drivers/learning/session.ts";

/** Lets time pass in tenths of a second, with a burst of bytes every `burstMs`. */
function played(seconds: number, burstMs: number, session: Session = beginSession(0), fromMs = 0): Session {
  let now = session;
  for (let atMs = fromMs + 100; atMs <= fromMs + seconds * 1000; atMs += 100) {
    if (burstMs > 0 && atMs % burstMs === 0) now = advance(now, { kind: "bytes", atMs });
    now = advance(now, { kind: "tick", atMs });
  }
  return now;
}

describe("the guided half minute", () => {
  test("the steps that must be done take about half a minute", () => {
    const least = steps.filter((step) => !step.optional).reduce((sum, step) => sum + step.leastMs, 0);
    expect(least).toBeGreaterThanOrEqual(28_000);
    expect(least).toBeLessThanOrEqual(35_000);
  });

  test("a balance that sends by itself is led through by the clock, and the moments are kept", () => {
    const session = played(32.5, 200);
    expect(session.moments.map(({ phase }) => phase)).toEqual([
      "empty",
      "putting-on",
      "loaded",
      "touched",
      "settled",
      "taking-off",
      "empty",
      "below-zero",
    ]);
    expect(session.finished).toBe(false);
    expect(sessionNow(session, 32_500).canSkip).toBe(true);
  });

  test("optional steps can be left out, others cannot", () => {
    const begun = beginSession(0);
    expect(advance(begun, { kind: "skip", atMs: 10 })).toBe(begun);
    let session = played(32.5, 200);
    session = advance(session, { kind: "skip", atMs: 33_000 });
    session = advance(session, { kind: "skip", atMs: 33_500 });
    expect(session.finished).toBe(true);
    expect(sessionNow(session, 34_000).message.code).toBe("learn.step.done");
    expect(advance(session, { kind: "tick", atMs: 99_000 })).toBe(session);
  });

  test("a silent balance makes the owner press the print key, and waits for it", () => {
    const waiting = played(60, 0);
    expect(waiting.step).toBe(0);
    expect(sessionNow(waiting, 60_000).message).toMatchObject({ code: "learn.on-key", params: { times: 4 } });
    const pressed = played(5, 1000, waiting, 60_000);
    expect(pressed.step).toBe(1);
  });

  test("a slow balance gets more time in every step", () => {
    const session = played(5, 2000);
    expect(session.step).toBe(0);
    expect(played(3.2, 2000, session, 5000).step).toBe(1);
  });
});
