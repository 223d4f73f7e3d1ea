import { escapeBytes } from "../../../drivers/escape.ts";
import { type Learned, learn } from "../../../drivers/learning/learn.ts";
import type { Profile } from "../../../drivers/learning/profile.ts";
import type { Answers, Question } from "../../../drivers/learning/questions.ts";
import { readByProfile } from "../../../drivers/learning/reader.ts";
import type { Recording } from "../../../drivers/learning/recording.ts";
import { cutByProfile } from "../../../drivers/learning/samples.ts";
import { type HalfMinute, halfMinute, usualSteps } from "./half-minute.ts";
import { type InventedFormat, inventedFormat } from "./invented-format.ts";
import { decimalTextOf } from "./invented-line.ts";
import { chance } from "./seeded-random.ts";

export interface Score {
  seed: number;
  verdict: "right" | "unsure" | "wrong";
  because: string;
  format: InventedFormat;
  learned: Learned;
}

/** Learns one invented balance from half a minute, then tries what was learned on another half minute of it. */
export function scoreOf(seed: number): Score {
  const by = chance(seed);
  const format = inventedFormat(by);
  // A mark of thousands can only be learned from a weight that needs one.
  const least = format.field.grouping === "" ? 1200 : 1200 * 10 ** format.decimals;
  const loadSteps = by.whole(least, Math.max(48_000, 2 * least));
  const overload = by.yes(0.4) ? [{ phase: "overloaded" as const, seconds: 3 }] : [];
  const minute = halfMinute(format, { steps: [...usualSteps, ...overload], loadSteps }, by);
  const learned = learnWithOwner(minute.recording, format, minute);
  const fresh = halfMinute(
    { ...format, noise: 0 },
    {
      steps: [
        ...usualSteps,
        { phase: "overloaded", seconds: 2 },
        { phase: "empty", seconds: 2 },
        { phase: "below-zero", seconds: 3 },
      ],
      loadSteps: by.whole(1200, 90_000),
    },
    by,
  );
  return { seed, format, learned, ...judged(learned, format, fresh) };
}

/** Answers what is asked as an owner would who looks at the display. */
function learnWithOwner(recording: Recording, format: InventedFormat, minute: HalfMinute): Learned {
  const answers: Answers = {};
  let learned = learn(recording, { answers });
  for (let tries = 0; tries < 4 && learned.questions.length > 0; tries += 1) {
    for (const question of learned.questions) answers[question.id] = answer(question, format, minute);
    learned = learn(recording, { answers });
  }
  return learned;
}

function answer(question: Question, format: InventedFormat, { sent }: HalfMinute): string {
  if (question.id === "unit") return format.unit.unit;
  if (question.id === "comma") return format.decimals === 0 ? "thousands" : "decimal";
  if (question.id === "which-number") {
    const gross = question.options!.find(({ message }) => !/GR/.test(String(message.params?.text)));
    return gross?.value ?? "";
  }
  // The owner reads the display while the quoted line comes.
  const seven = (line: Uint8Array) => (format.parity === "none" ? line : line.map((byte) => byte & 0x7f));
  const place = format.block.indexOf("weight");
  const asked = sent.find(({ lines }) =>
    String(question.asks.params?.line).includes(escapeBytes(seven(lines[place]!))),
  );
  return asked?.means?.text ?? decimalTextOf(0, format.decimals);
}

function judged(
  learned: Learned,
  format: InventedFormat,
  fresh: HalfMinute,
): Pick<Score, "verdict" | "because"> {
  const { profile } = learned;
  if (!profile)
    return { verdict: "unsure", because: (learned.failed ?? learned.questions[0]?.asks)?.code ?? "" };
  const sure = (field: string) => learned.findings.find((f) => f.field === field)?.sure ?? true;
  const expected = fresh.sent.flatMap(({ means }) => (means ? [means] : []));
  const missed: string[] = [];
  let misread = "";
  for (const { sent, got } of readOneByOne(profile, fresh)) {
    const told = sent.means;
    if (got.length === 0 && told) missed.push(told.text);
    for (const reading of got) {
      if (reading.text !== told?.text)
        misread ||= `${reading.text} was read, ${told?.text ?? "no weight"} was sent`;
      else if (reading.unit !== format.unit.unit)
        misread ||= `unit ${reading.unit}, sent ${format.unit.unit}`;
      else if (told.stability !== reading.stability) {
        missed.push(`the state of ${told.text}`);
        if (reading.stability !== "unknown" || (sure("motion") && !doubtsAMark(profile)))
          misread ||= `${reading.text} is ${reading.stability}, sent as ${told.stability}`;
      }
    }
    if (got.length > 1) misread ||= `${got.length} readings for one`;
  }
  if (misread) {
    const doubtful = ["number", "decimals", "unit", "motion", "coverage", "block"].filter((f) => !sure(f));
    return doubtful.length > 0
      ? { verdict: "unsure", because: `${misread}; unsure of ${doubtful.join(", ")}` }
      : { verdict: "wrong", because: misread };
  }
  // A minus that was not seen while learning may be refused later: that is said, and is no number.
  const counted = sure("sign") ? missed : missed.filter((text) => !text.startsWith("-"));
  if (counted.length > Math.max(2, 0.05 * expected.length))
    return {
      verdict: "unsure",
      because: `${counted.length} of ${expected.length} not read, such as ${counted[0]}`,
    };
  return { verdict: "right", because: "" };
}

/** The profile itself says of some mark that it was seen too seldom. */
const doubtsAMark = ({ weight }: Profile) =>
  weight.some((part) => part.is === "mark" && part.marks.some(({ means }) => means === "unsure"));

/** Feeds the bytes of one reading after the other, so that every reading is known by what was sent for it. */
function* readOneByOne(profile: Profile, { sent }: HalfMinute) {
  const cutter = cutByProfile(profile, "keep");
  const read = readByProfile(profile);
  for (const [i, one] of sent.slice(1).entries()) {
    const bytes = one.lines.flatMap((line) => [...line]);
    const atMs = 500 * i;
    const half = i % bytes.length;
    const lines = [
      ...cutter.push(Uint8Array.from(bytes.slice(0, half)), atMs),
      ...cutter.push(Uint8Array.from(bytes.slice(half)), atMs + 2),
      ...cutter.idle(atMs + 400),
    ];
    const got = lines.flatMap((line) => {
      const meaning = read(escapeBytes(line.bytes), line.bytes);
      return meaning && "reading" in meaning ? [meaning.reading] : [];
    });
    yield { sent: one, got };
  }
}
