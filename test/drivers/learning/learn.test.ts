import { afterAll, describe, expect, test } from "vitest";
import { checkProfile } from "../../../drivers/learning/samples.ts";
import { whole } from "../../setup/long-run.ts";
import { lot } from "./lot.ts";
import { manners } from "./manners.ts";
import { type Score, scoreOf } from "./score.ts";

const seed = 70_211;
const all = manners(lot(seed));

/** By night every manner in every story; by day the first story has a third of them, the others a tenth. */
const stories = [
  { name: "a value below zero typed", told: { below: true }, share: 3 },
  { name: "nothing below zero seen", told: { below: false }, share: 10 },
  { name: "below zero seen, not typed", told: { below: true, typesBelow: false }, share: 10 },
  { name: "lines up to 400 ms late", told: { below: true, pace: "jitter" as const }, share: 10 },
  { name: "two lines in one packet", told: { below: true, pace: "packets" as const }, share: 10 },
  { name: "a line when its key is pressed", told: { below: true, pace: "on-key" as const }, share: 10 },
];

const line = ({ manner, because }: Score) => `${manner.kind}, ${manner.name}: ${because}`;

describe.each(stories)("$name", ({ told, share }) => {
  const scores = all
    .filter((_, i) => whole || i % share === seed % share)
    .map((manner, i) => scoreOf(manner, lot(seed + 7 * i), told));
  // What shows itself below zero only, nobody can miss who never typed such a value, or saw a line now and then.
  const belowKnown = told.below && told.typesBelow !== false && told.pace !== "on-key";
  const judged = scores.filter(({ manner }) => belowKnown || !manner.hidesAboveZero);
  // a number in bytes shows how it is written below zero only, and is refused for that
  const readable = scores.filter(
    ({ manner, because }) => !manner.refused && because !== "learn.failed.binary-below-zero",
  );
  const of = (verdict: Score["verdict"], some = scores) => some.filter((one) => one.verdict === verdict);

  test("no manner is learned wrong", () => {
    expect(of("wrong", judged).map(line)).toEqual([]);
  });

  test("nine of ten that carry a readable number are learned", () => {
    const others = readable.filter(({ verdict }) => verdict !== "learned").map(line);
    expect(of("learned", readable).length, others.join("\n")).toBeGreaterThanOrEqual(0.9 * readable.length);
  });

  test("what nobody can read is refused for its true reason", () => {
    const unreadable = judged.filter((score) => score.manner.refused);
    const wrongly = unreadable.filter((score) => !score.manner.refused!.includes(score.because));
    expect(wrongly.map(line)).toEqual([]);
  });

  test("every profile reads its own sample lines", () => {
    const failing = scores.filter(({ learned }) => learned.profile && !checkProfile(learned.profile).passed);
    expect(failing.map(line)).toEqual([]);
  });

  afterAll(() => {
    const kinds = [...new Set(scores.map(({ manner }) => manner.kind))];
    const table = kinds.map((kind) => {
      const here = scores.filter(({ manner }) => manner.kind === kind);
      return {
        kind,
        manners: here.length,
        learned: of("learned", here).length,
        asked: here.filter(({ asked }) => asked).length,
        refused: of("refused", here).length,
        idle: of("idle", here).length,
        wrong: of("wrong", here).length,
      };
    });
    if (whole) console.table(table);
  });
});

test("there are at least 120 manners of writing", () => {
  expect(all.length).toBeGreaterThanOrEqual(120);
  expect(new Set(all.map(({ kind, name }) => `${kind} ${name}`)).size).toBeGreaterThanOrEqual(120);
});
