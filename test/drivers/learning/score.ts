import { escapeBytes } from "../../../drivers/escape.ts";
import { learn } from "../../../drivers/learning/learn.ts";
import type { Learned } from "../../../drivers/learning/learned.ts";
import type { Profile } from "../../../drivers/learning/profile.ts";
import type { Answers } from "../../../drivers/learning/questions.ts";
import { readByProfile } from "../../../drivers/learning/reader.ts";
import { cutByProfile } from "../../../drivers/learning/samples.ts";
import { type Day, day, type Pace, readAs } from "./day.ts";
import type { Lot } from "./lot.ts";
import type { Manner } from "./manner.ts";

export interface Score {
  manner: Manner;
  /** idle: learned, and then most true lines were unknown */
  verdict: "learned" | "refused" | "wrong" | "idle" | "stuck";
  asked: boolean;
  because: string;
  learned: Learned;
  /** shares of lines that were read, of those above zero and of those below */
  above: number;
  below: number;
  /** share of readings at rest that were read as stable */
  rest: number;
}

/** What every owner of these knows: whether lines come by themselves; how a minus looks nobody knows who never saw one. */
const answersKnown = (pace: Pace | undefined): Record<string, RegExp> => ({
  sends: pace === "on-key" ? /on-key/ : /by-itself/,
  "below-zero": /minus-before/,
});

/** Learns a manner from one day of it and reads another: other loads, below zero, line by line. */
export function scoreOf(
  manner: Manner,
  by: Lot,
  told: { below: boolean; pace?: Pace; typesBelow?: boolean },
): Score {
  const load = manner.load ?? by.whole(12_000, 48_000) * (manner.decimals > 3 ? 10 : 1);
  const { recording } = day(manner, load, by, told);
  const answers: Answers = {};
  let learned = learn(recording, { answers });
  let asked = false;
  for (let i = 0; i < 3 && learned.questions; i += 1) {
    asked = true;
    for (const { id, options } of learned.questions) {
      const wanted = manner.answers?.[id] ?? answersKnown(told.pace)[id];
      const chosen = options.find(
        ({ value, message }) => wanted?.test(value) || wanted?.test(String(message.params?.text)),
      );
      answers[id] = (chosen ?? options[0])!.value;
    }
    learned = learn(recording, { answers });
  }
  const base = { manner, asked, learned, above: 0, below: 0, rest: 0 };
  if (learned.refused) return { ...base, verdict: "refused", because: learned.refused.code };
  if (learned.questions)
    return { ...base, verdict: "stuck", because: learned.questions.map(({ id }) => id).join() };
  const fresh = [
    day(manner, Math.round(load * 0.57), by, { below: true }),
    day(manner, Math.round(load * 0.91), by, { below: true }),
  ];
  const { misread, above, below, rest } = judged(learned.profile, manner, fresh);
  if (misread) return { ...base, verdict: "wrong", because: misread, above, below, rest };
  const enough = above >= 0.95;
  return {
    ...base,
    verdict: enough ? "learned" : "idle",
    because: enough ? "" : `only ${Math.round(above * 100)} % read`,
    above,
    below,
    rest,
  };
}

function judged(profile: Profile, manner: Manner, fresh: readonly Day[]) {
  const counts = { above: [0, 0], below: [0, 0], rest: [0, 0] };
  let misread = "";
  for (const { sent } of fresh) {
    const cutter = cutByProfile(profile, "keep");
    const read = readByProfile(profile);
    for (const [i, { bytes, moment, step }] of sent.entries()) {
      const lines = [...cutter.push(bytes, 500 * i), ...cutter.idle(500 * i + 400)];
      const got = lines.flatMap((line) => {
        const meaning = read(escapeBytes(line.bytes), line.bytes);
        return meaning && "reading" in meaning ? [meaning.reading] : [];
      });
      const truth = readAs(manner, moment.net);
      const side = moment.net < 0 ? counts.below : counts.above;
      side[1]! += 1;
      if (got.length > 1) misread ||= `${got.length} readings for one`;
      for (const reading of got) {
        side[0]! += 1;
        const told = `${escapeBytes(bytes)} was read as ${reading.text} ${reading.unit} ${reading.stability}, shown ${truth.text} ${truth.unit} ${moment.still ? "at rest" : "moving"}`;
        if (reading.text !== truth.text || reading.unit !== truth.unit) misread ||= told;
        if (reading.stability !== "unknown" && (reading.stability === "stable") !== moment.still)
          misread ||= told;
        if (reading.stability !== "unknown" && !manner.tells)
          misread ||= `${told}, which the line cannot say`;
        if (moment.still && !/putting|taking|touched/.test(step)) {
          counts.rest[1]! += 1;
          if (reading.stability === "stable") counts.rest[0]! += 1;
        }
      }
    }
  }
  const share = ([some, all]: number[]) => (all === 0 ? 1 : some! / all!);
  return { misread, above: share(counts.above), below: share(counts.below), rest: share(counts.rest) };
}
