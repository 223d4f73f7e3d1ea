import { describe, expect, test } from "vitest";
import { checkProfile } from "../../../drivers/learning/samples.ts";
import { scoreOf } from "./score.ts";

/** Seeds up to 200 served for tuning the learner; these were drawn afterwards and never looked at. */
const heldOut = Array.from({ length: 60 }, (_, i) => 70_001 + i);

describe("sixty line formats that the learner has never seen", () => {
  const scores = heldOut.map(scoreOf);
  const list = (verdict: string) =>
    scores.filter((s) => s.verdict === verdict).map((s) => `${s.seed}: ${s.because}`);

  test("none is learned wrong without saying that it is unsure", () => {
    expect(list("wrong")).toEqual([]);
  });

  test("at least 57 of 60 are learned right, the same share as 38 of 40", () => {
    expect(
      scores.filter((s) => s.verdict === "right").length,
      list("unsure").join("\n"),
    ).toBeGreaterThanOrEqual(57);
  });

  test("every profile passes its own sample lines", () => {
    const failing = scores.flatMap(({ seed, learned }) =>
      learned.profile && !checkProfile(learned.profile).passed ? [seed] : [],
    );
    expect(failing).toEqual([]);
  });
});
