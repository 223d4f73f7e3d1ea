import { readdirSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { isDecimal } from "../../calibration/decimal.ts";
import { StableReading } from "../../calibration/stable-reading/stable-reading.ts";
import { isMassUnit, stepGrams, toGrams } from "../../calibration/units.ts";
import { escapeBytes, unescapeText } from "../../drivers/escape.ts";
import { readByProfile } from "../../drivers/learning/reader.ts";
import { cutByProfile } from "../../drivers/learning/samples.ts";
import { createLineCutter } from "../../drivers/line.ts";
import type { BalanceEvent, LineMeaning, LineReader, LineRecord, Reading } from "../../drivers/reading.ts";
import { readAnyShape, readShape, shapeNamed } from "../../drivers/shapes/index.ts";
import { createStableLines, type ReadingRecord } from "../../drivers/steadiness.ts";
import { textOf } from "../../views/messages/catalogue.ts";
import { longRun, whole } from "../setup/long-run.ts";
import { day } from "./learning/day.ts";
import { lot } from "./learning/lot.ts";
import { manners } from "./learning/manners.ts";
import { scoreOf } from "./learning/score.ts";
import { sampleFile } from "./sample-lines.ts";

/** One manner of writing lines: true lines of it, and what its reader makes of some bytes. */
interface Family {
  name: string;
  lines: readonly Uint8Array[];
  /** a fresh reader, as after reopening: some remember earlier lines, damaged ones too */
  fresh(): (bytes: Uint8Array) => LineMeaning[];
}

const folder = new URL("./lines/", import.meta.url);

const shapeFamilies: Family[] = readdirSync(folder).map((file) => {
  const { shape, settings, samples } = sampleFile(new URL(file, folder));
  return {
    name: shape,
    lines: samples.map(({ written }) => unescapeText(written)).filter((line) => line.length > 0),
    fresh() {
      const read = readShape(shapeNamed(shape)!, settings);
      return (bytes) => meanings(read, bytes);
    },
  };
});

/** Invented manners of writing, learned from a day of theirs; none of the seeds that tuned the learner. */
const learnedFamilies = (): Family[] =>
  manners(lot(90_001))
    .filter(({ refused }, i) => refused === undefined && i % 8 === 1)
    .flatMap((manner, i) => {
      const { profile } = scoreOf(manner, lot(90_001 + i), { below: true }).learned;
      if (!profile) return [];
      const { sent } = day(manner, manner.load ?? 43_210, lot(90_501 + i), { below: true });
      return [
        {
          name: `the profile learned of ${manner.kind}, ${manner.name}`,
          lines: sent.slice(1).map(({ bytes }) => bytes),
          fresh() {
            const read = readByProfile(profile);
            const cutter = cutByProfile(profile, "keep");
            return (bytes: Uint8Array) => {
              cutter.reset();
              return [...cutter.push(bytes, 0), ...cutter.idle(10_000)].map((line) =>
                read(escapeBytes(line.bytes), line.bytes),
              );
            };
          },
        },
      ];
    });

/**
 * What happens to a line on a bad cable: a bit flips, a byte is lost or doubled, the line is split or cut short.
 * `lot` decides where and how.
 */
function mutated(line: Uint8Array, [kind, high, low]: readonly [number, number, number]): Uint8Array {
  const at = (256 * high + low) % line.length;
  switch (kind % 5) {
    case 0:
      return line.map((byte, i) => (i === at ? byte ^ (1 << (kind >> 5)) : byte));
    case 1:
      return Uint8Array.from([...line.subarray(0, at), ...line.subarray(at + 1)]);
    case 2:
      return Uint8Array.from([...line.subarray(0, at), line[at]!, ...line.subarray(at)]);
    case 3:
      return line.subarray(at);
    default:
      return Uint8Array.from([...line.subarray(0, at), 0x0d, 0x0a, ...line.subarray(at)]);
  }
}

let reading: LineReader;
let found: LineMeaning[] = [];
const cutter = createLineCutter({
  firstLine: "keep",
  onLine: ({ text }) => found.push(reading(text)),
  onTooLong() {},
});

function meanings(read: LineReader, bytes: Uint8Array): LineMeaning[] {
  reading = read;
  found = [];
  cutter.reset();
  cutter.push(bytes);
  cutter.idle();
  return found;
}

const hasAllValues = ({ code, params }: BalanceEvent) =>
  [...(textOf(code, "en")?.uses.keys() ?? [])].every((name) => name in params);

/** A meaning is whole: a decimal with its unit and its grams, or an event with all its values. */
function flaw(meaning: LineMeaning): string | null {
  if (meaning === null) return null;
  if ("event" in meaning) return hasAllValues(meaning.event) ? null : "an event with a value missing";
  const { text, unit, grams } = meaning.reading;
  if (!isDecimal(text) || !isMassUnit(unit)) return `"${text}" "${unit}" is no reading`;
  if (grams !== toGrams(text, unit)) return `${text} ${unit} is not ${grams} g`;
  return /^-[0.]*$/.test(text) ? "negative zero" : null;
}

const record = (reading: Reading, seconds: number): ReadingRecord =>
  ({ at: "", monotonicMs: seconds * 1000, raw: "", reading }) satisfies LineRecord;

/**
 * A line that was damaged and still reads as a weight comes among true ones. If a reading is taken with it, that must
 * be the true one, to one last place.
 */
function isBelieved(truth: Reading, wrong: Reading): boolean {
  const lineOf = createStableLines();
  const reading = new StableReading();
  const lines = Array.from({ length: 24 }, (_, i) => record(i === 6 ? wrong : truth, i * 0.25));
  for (const line of lines) {
    const judgement = reading.hear(lineOf(line));
    if (judgement.state === "taken")
      return (
        Math.abs(judgement.taken.value - Number(truth.grams)) > 1.001 * stepGrams(truth.text, truth.unit)
      );
  }
  return false;
}

/** The same, found out once for each pair: a line is short, so many a damage comes again. */
const believed = new Map<string, boolean>();
function slipsThrough(truth: Reading, wrong: Reading): boolean {
  const pair = JSON.stringify([truth, wrong]);
  const known = believed.get(pair) ?? isBelieved(truth, wrong);
  believed.set(pair, known);
  return known;
}

/** Damaged lines of one run; four bytes of lot decide each. */
const perRun = 250;

/** Runs damaged lines of a family through its reader; gives how many there were and how many read as another number. */
function damage(family: Family, atLeast: number): { mutations: number; misread: number } {
  let mutations = 0;
  let misread = 0;
  const bytes = 4 * perRun;
  fc.assert(
    fc.property(fc.uint8Array({ minLength: bytes, maxLength: bytes }), (lots) => {
      const read = family.fresh();
      for (let i = 0; i < bytes; i += 4) {
        const line = family.lines[lots[i]! % family.lines.length]!;
        const truth = read(line).find((meaning) => meaning && "reading" in meaning);
        mutations += 1;
        for (const meaning of read(mutated(line, [lots[i + 1]!, lots[i + 2]!, lots[i + 3]!]))) {
          const wrong = flaw(meaning);
          if (wrong) throw new Error(`${escapeBytes(line)} of ${family.name}: ${wrong}`);
          if (!meaning || !("reading" in meaning) || !truth || !("reading" in truth)) continue;
          if (meaning.reading.text === truth.reading.text && meaning.reading.unit === truth.reading.unit)
            continue;
          misread += 1;
          if (slipsThrough(truth.reading, meaning.reading))
            throw new Error(
              `${family.name}: ${truth.reading.text} ${truth.reading.unit} became ${meaning.reading.text} ${meaning.reading.unit} and was believed`,
            );
        }
      }
    }),
    { numRuns: Math.ceil(atLeast / perRun), endOnFailure: true },
  );
  return { mutations, misread };
}

/**
 * By night a million to every generic shape, and to a learned profile, whose reader is slower, a twentieth of that. By
 * day the shapes share fifty thousand, and a profile gets a thousand.
 */
test.each([
  {
    name: "every generic shape",
    families: () => shapeFamilies,
    each: longRun(1_000_000, 50_000 / shapeFamilies.length),
  },
  { name: "twenty learned profiles", families: learnedFamilies, each: longRun(50_000, 1_000) },
])(
  "damaged lines of $name raise no error, give no half reading, and none passes for the weight beside true lines",
  {
    timeout: 3_600_000,
  },
  ({ name, families, each }) => {
    const told = families().map((family) => damage(family, each));
    const sum = (of: "mutations" | "misread") => told.reduce((total, one) => total + one[of], 0);
    const fewest = Math.min(...told.map(({ mutations }) => mutations));
    if (whole)
      console.log(
        `${name}, ${told.length} of them: ${sum("mutations")} damaged lines, ${fewest} or more each; ${sum("misread")} read as another number, and each of those was contradicted by the lines beside it`,
      );
    expect(told.length).toBeGreaterThan(10);
    expect(fewest).toBeGreaterThanOrEqual(each);
    // The test is worth something only if many damaged lines did read as other numbers.
    expect(sum("misread")).toBeGreaterThan(sum("mutations") / 100);
  },
);

test("any bytes at all, in any pieces, give whole meanings", () => {
  fc.assert(
    fc.property(fc.array(fc.uint8Array({ maxLength: 60 }), { maxLength: 6 }), (chunks) => {
      const read = readAnyShape();
      const cutter = createLineCutter({
        firstLine: "keep",
        onLine: ({ text }) => expect(flaw(read(text))).toBeNull(),
        onTooLong() {},
      });
      for (const chunk of chunks) cutter.push(chunk);
      cutter.idle();
    }),
    { numRuns: longRun(2000), seed: 7 },
  );
});

test("lines made of the characters of weights give whole meanings", () => {
  const character = fc.constantFrom(..."0123456789+-.,[]() gGkmctozdwNT?*\x02\x03\f".split(""));
  fc.assert(
    fc.property(fc.array(fc.string({ unit: character, maxLength: 24 }), { maxLength: 8 }), (lines) => {
      const read = readAnyShape();
      for (const line of lines) expect(flaw(read(line))).toBeNull();
    }),
    { numRuns: longRun(5000), seed: 7 },
  );
});

test("however a stream of true lines is chopped, the same readings come out", () => {
  const stream = Buffer.from(
    "  31.1035 g stable\r\n-  1.6110 g stable\r\n 155.5175 ct moving\r\n\x02+   31.10 g\x03\r\n   OVER\r\n",
    "latin1",
  );
  const whole = meanings(readAnyShape(), stream);
  fc.assert(
    fc.property(fc.array(fc.nat({ max: stream.length }), { maxLength: 12 }), (cuts) => {
      const read = readAnyShape();
      const found: LineMeaning[] = [];
      const cutter = createLineCutter({
        firstLine: "keep",
        onLine: ({ text }) => found.push(read(text)),
        onTooLong() {},
      });
      let from = 0;
      for (const cut of [...cuts.sort((a, b) => a - b), stream.length]) {
        cutter.push(stream.subarray(from, cut));
        from = cut;
      }
      cutter.idle();
      expect(found).toEqual(whole);
    }),
    { numRuns: longRun(1000), seed: 7 },
  );
});
