import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { learn } from "../../../drivers/learning/learn.ts";
import { type Profile, profileJsonSchema } from "../../../drivers/learning/profile.ts";
import type { Answers } from "../../../drivers/learning/questions.ts";
import { readByProfile } from "../../../drivers/learning/reader.ts";
import { recordingFromText } from "../../../drivers/learning/recording.ts";
import {
  checkProfile,
  exportProfile,
  importProfile,
  meaningOfBytes,
} from "../../../drivers/learning/samples.ts";
import { longRun } from "../../setup/long-run.ts";

/** Invented lines: a mark before the number, "QA" at rest and "QB" in motion. */
const pasted = [
  "# empty",
  ...Array(8).fill("QA      0.00 g"),
  "# putting-on",
  "QB     12.40 g",
  "QB     90.17 g",
  "QB     28.33 g",
  "QB     35.02 g",
  "# loaded",
  ...Array(8).fill("QA     31.10 g"),
  "# displayed 31.10 g",
  "# touched",
  "QB     44.19 g",
  "QB     61.72 g",
  "QB     38.06 g",
  "QB     52.90 g",
  "# at-rest",
  ...Array(8).fill("QA     31.10 g"),
  "# taking-off",
  "QB     17.31 g",
  "QB     -2.87 g",
  "QB      9.44 g",
  "# empty",
  ...Array(8).fill("QA      0.00 g"),
  "# below-zero",
  "QB     -3.60 g",
  "QB    -29.88 g",
  ...Array(8).fill("QA    -31.10 g"),
  "# displayed -31.10 g",
].join("\n");

const bytesOf = (text: string) => new TextEncoder().encode(text);

function learned(): Profile {
  const { profile, refused, questions } = learn(recordingFromText(pasted), { name: "pasted balance" });
  expect([refused, questions]).toEqual([undefined, undefined]);
  return profile!;
}

describe("a profile learned from pasted text with the moments marked by hand", () => {
  const profile = learned();
  const read = readByProfile(profile);
  const meaning = (line: string) => read(line, bytesOf(line));

  test("reads the mark that went with rest as steady and the other as moving", () => {
    expect(meaning("QA    131.07 g")).toEqual({
      reading: { text: "131.07", unit: "g", grams: "131.07", stability: "stable" },
    });
    expect(meaning("QB     -0.41 g")).toEqual({
      reading: { text: "-0.41", unit: "g", grams: "-0.41", stability: "moving" },
    });
  });

  test.each([
    ["a mark never seen", "QC    131.07 g"],
    ["another unit", "QA    131.07ct"],
    ["a missing character", "QA   131.07 g"],
    ["other decimals", "QA    131.7  g"],
    ["two numbers", "QA 1  131.07 g"],
    ["a number alone", "131.07"],
  ])("never makes a number of %s", (_, line) => {
    expect(meaning(line)).toMatchObject({ event: { kind: "unknown-line" } });
  });

  test("passes its own sample lines, and fails when one of them is altered", () => {
    expect(checkProfile(profile)).toEqual({ passed: true, failures: [] });
    const altered = structuredClone(profile);
    altered.samples[0]!.reading!.text = "7.77";
    const { passed, failures } = checkProfile(altered);
    expect(passed).toBe(false);
    expect(failures[0]).toMatchObject({
      code: "profile.sample.differs",
      params: { expected: { params: { reading: { decimal: "7.77" }, unit: "g" } } },
    });
  });

  test("goes out and comes back unchanged", () => {
    expect(importProfile(exportProfile(profile))).toEqual(profile);
  });

  test.each([
    ["no JSON", "weight: 3", "profile.not-json", {}],
    ["another format", JSON.stringify({ ...profile, format: 2 }), "profile.format", { format: "2" }],
    ["an unknown key", JSON.stringify({ ...profile, colour: "red" }), "profile.damaged", { at: "{ }" }],
    ["a wrong value", JSON.stringify({ ...profile, blockLines: 0 }), "profile.damaged", { at: "blockLines" }],
    [
      "no number",
      JSON.stringify({ ...profile, weight: [{ is: "text", text: "x" }] }),
      "profile.damaged.number",
      {},
    ],
    [
      "samples it does not read",
      JSON.stringify({ ...profile, unit: { unit: "kg", from: "line" } }),
      "profile.samples",
      { failure: { code: "profile.sample.differs" } },
    ],
  ])("is refused when it has %s", (_, text, code, params) => {
    let refused: unknown;
    try {
      importProfile(text);
    } catch (error) {
      refused = error;
    }
    expect(refused).toMatchObject({ code, params });
  });

  test("a profile of an earlier version, with findings in words, is read as it was written", () => {
    const kept = { field: "unit", sure: true, says: "The unit in the line is g." };
    const earlier = JSON.stringify({ ...profile, findings: [kept] });
    expect(importProfile(earlier).findings).toEqual([kept]);
  });

  test("a finding whose values are no values of a message is refused", () => {
    const finding = {
      field: "unit",
      sure: true,
      message: { code: "learn.unit.line", params: { unit: null } },
    };
    expect(() => importProfile(JSON.stringify({ ...profile, findings: [finding] }))).toThrow(
      expect.objectContaining({ code: "profile.damaged" }),
    );
  });

  test("the published schema is the one in use", () => {
    const published = new URL("../../../drivers/learning/profile.schema.json", import.meta.url);
    expect(JSON.parse(readFileSync(published, "utf8"))).toEqual(profileJsonSchema());
  });
});

const code = (text: string, answers = {}) => {
  const { refused, questions, profile } = learn(recordingFromText(text), { answers });
  return refused?.code ?? questions?.map(({ id }) => id).join() ?? profile?.unit.unit;
};

describe("what was typed decides, and what it does not decide is asked or refused", () => {
  const commas = pasted.replaceAll(/(-?\d+)\.(\d\d) g/g, (_, whole) => `${`${whole},234`.padStart(7)} g`);

  test.each([
    [
      "31234 g",
      commas
        .replaceAll("QA       0,234", "QA           0")
        .replaceAll(/# displayed +(-?)31,234 g/g, "# displayed $131234 g"),
      "31234",
    ],
    ["31.234 g", commas.replaceAll(/# displayed +(-?)31,234 g/g, "# displayed $131.234 g"), "31.234"],
  ])("a comma means what makes it %s", (_, text, expected) => {
    const { profile } = learn(recordingFromText(text));
    const line = text.split("\n").find((one) => one.startsWith("QA") && one.includes("31,234"))!;
    expect(meaningOfBytes(profile!, bytesOf(`${line}\n`))).toMatchObject({ reading: { text: expected } });
  });

  test("the unit is the one of the display, where the line has none", () => {
    expect(code(pasted.replaceAll(/^(Q.*) g$/gm, "$1").replaceAll(/^(#.*) g$/gm, "$1 ct"))).toBe("ct");
  });

  test("the point stands where the display has it, where the line sends none", () => {
    const text = pasted.replaceAll(/^(Q.*) (-?\d+)\.(\d\d) g$/gm, "$1  $2$3 g");
    const { profile } = learn(recordingFromText(text));
    expect(profile && meaningOfBytes(profile, bytesOf("QA      3110 g\n"))).toMatchObject({
      reading: { text: "31.10" },
    });
  });

  test.each([
    ["nothing came", "# empty\n# displayed 31.10 g", "learn.failed.nothing-came"],
    ["nothing was typed", pasted.replaceAll(/^# displayed.*$/gm, ""), "learn.refused.nothing-typed"],
    [
      "the number never followed the weight",
      pasted.slice(0, pasted.indexOf("# below-zero")).replaceAll(/-?\d+\.\d\d/g, "31.10"),
      "learn.refused.stands-still",
    ],
    ["it counts pieces", pasted.replaceAll(" g", " pcs"), "learn.refused.quantity"],
    ["the line names another unit", pasted.replaceAll(/^(Q.*) g$/gm, "$1 ct"), "learn.refused.other-unit"],
    [
      "another value was typed",
      pasted.replaceAll("displayed 31.10", "displayed 31.12"),
      "learn.refused.not-all",
    ],
    [
      "one of two typed values is in no line",
      pasted.replaceAll("displayed -31.10", "displayed -31.12"),
      "learn.refused.not-all",
    ],
    ["the sign is lost", pasted.replaceAll(/^(Q.*)-(\d)/gm, "$1 $2"), "learn.refused.sign"],
    [
      "two units were typed",
      pasted.replaceAll("displayed -31.10 g", "displayed -31.10 ct"),
      "learn.refused.two-units",
    ],
  ])("%s: refused", (_, text, expected) => {
    expect(code(text)).toBe(expected);
  });

  test("a refusal shows two lines as they came", () => {
    const { refused } = learn(recordingFromText(pasted.replaceAll("displayed 31.10", "displayed 7.77")));
    expect(refused?.params?.lines).toEqual([{ code: "learn.mark", params: { mark: "QA     31.10 g\\n" } }]);
  });

  test("which of two numbers, where both follow the weight", () => {
    const both = pasted
      .slice(0, pasted.indexOf("# below-zero"))
      .replaceAll(/^(Q.)( *)(-?\d+\.\d\d) g$/gm, "$1 N$2$3 G$2$3 g");
    expect(code(both)).toBe("number");
    expect(code(both, { number: "9" })).toBe("number");
    expect(code(both, { number: "1" })).toBe("below-zero");
    expect(code(both, { number: "1", "below-zero": "minus-before" })).toBe("g");
  });

  test("which kind of line the display shows, where lines of several kinds take turns; others are read as none", () => {
    let sent = 0;
    const turns = pasted.replaceAll(/^Q.*$/gm, (line) => `${line} ${".:"[++sent % 2]}`);
    expect(code(turns)).toBe("turns");
    const kindOf = (answers: Answers) => {
      const { profile } = learn(recordingFromText(turns), { answers });
      return [".", ":"].map((mark) => {
        const meaning = meaningOfBytes(profile!, bytesOf(`QA     31.10 g ${mark}\n`));
        return meaning && "reading" in meaning ? meaning.reading.text : null;
      });
    };
    expect(kindOf({ turns: "1" })).toEqual(["31.10", null]);
    expect(kindOf({ turns: "2" })).toEqual([null, "31.10"]);
    expect(kindOf({ turns: "all" })).toEqual(["31.10", "31.10"]);
  });

  test("live and filtered numbers that take turns without a mark are asked about, and refused unless all are one kind", () => {
    const raw = [...Array(8).fill(0), 4, 19, 33, 46, 58, 69, 79, 87, 93, 97, ...Array(12).fill(98)];
    const way = [...raw, ...raw.toReversed(), ...raw, ...raw.toReversed()].map((grams) => grams * 0.317);
    let filtered = 0;
    const sent = way.map((grams, i) => {
      filtered += 0.35 * (grams - filtered);
      return i % 2 === 0 ? grams : filtered;
    });
    const lines = (numbers: readonly number[]) => {
      const line = (grams: number) => `${grams.toFixed(2).padStart(9)} g`;
      const turn = raw.length - 6;
      return [
        ...["# empty", ...numbers.slice(0, 8).map(line), "# putting-on", ...numbers.slice(8, turn).map(line)],
        ...["# loaded", ...numbers.slice(turn, turn + 12).map(line), "# displayed 31.07 g", "# taking-off"],
        ...[...numbers.slice(turn + 12, -8).map(line), "# empty", ...numbers.slice(-8).map(line)],
      ].join("\n");
    };
    const known: Answers = { sends: "by-itself", "below-zero": "minus-before" };
    expect(code(lines(way), known)).toBe("g");
    expect(code(lines(sent), known)).toBe("kinds");
    expect(code(lines(sent), { ...known, kinds: "several" })).toBe("learn.refused.two-kinds");
    expect(code(lines(sent), { ...known, kinds: "one" })).toBe("g");
  });

  test("lines that hold the number before while the pan moves are no reading", () => {
    let rest = "0.00";
    const held = pasted
      .split("\n")
      .map((line) => {
        rest = /^QA *(-?[\d.]+)/.exec(line)?.[1] ?? rest;
        return line.startsWith("QB") ? `QB${rest.padStart(10)} g` : line;
      })
      .join("\n");
    const { profile } = learn(recordingFromText(held), { answers: { sends: "by-itself" } });
    expect(meaningOfBytes(profile!, bytesOf("QA     31.10 g\n"))).toMatchObject({
      reading: { text: "31.10" },
    });
    for (const line of ["QB     31.10 g", "QB      0.00 g"])
      expect(meaningOfBytes(profile!, bytesOf(`${line}\n`))).toMatchObject({
        event: { kind: "unknown-line" },
      });
  });

  test("a mark that came beside zero only may be another mode of the balance: asked, and else read as none", () => {
    const mode = pasted.replace("# empty\n", "# empty\nQP      0.00 g\nQP      0.00 g\nQP      0.00 g\n");
    expect(code(mode)).toBe("near-zero");
    const readingOf = (answer: string, line: string) => {
      const { profile } = learn(recordingFromText(mode), { answers: { "near-zero": answer } });
      const meaning = meaningOfBytes(profile!, bytesOf(`${line}\n`));
      return meaning && "reading" in meaning ? meaning.reading.text : null;
    };
    expect(readingOf("weighs", "QP      0.00 g")).toBe("0.00");
    expect(readingOf("weighs", "QP     31.10 g")).toBeNull();
    expect(readingOf("other", "QP      0.00 g")).toBeNull();
    expect(readingOf("other", "QA      0.00 g")).toBe("0.00");
  });

  test("marks that say up and down beyond some digits never say rest, in a recording without a touch either", () => {
    const lines = (of: string, ...grams: number[]) => grams.map((g) => `${g.toFixed(3).padStart(9)} g ${of}`);
    const rest = (grams: number) =>
      lines("=", ...[0, 0, 1, 0, -1, 0, 0, 0, 1, 0, 0, 0].map((n) => grams + n / 1000));
    const up = lines(
      "^",
      3.547,
      14.819,
      22.547,
      27.848,
      31.482,
      33.975,
      35.684,
      36.856,
      37.66,
      38.211,
      38.589,
    );
    const down = lines("v", 35.866, 24.595, 16.867, 11.566, 7.931, 5.439, 3.729, 2.558, 1.754, 0.825, 0.266);
    const short = [
      ...["# empty", ...rest(0), "# putting-on", ...up, "# loaded", ...rest(39.414), "# displayed 39.414 g"],
      ...["# taking-off", ...rest(39.414), ...down, "# empty", ...rest(0)],
    ].join("\n");
    const answers = { sends: "by-itself", "below-zero": "minus-before" };
    const { profile } = learn(recordingFromText(short), { answers });
    expect(meaningOfBytes(profile!, bytesOf("   39.414 g =\n"))).toMatchObject({
      reading: { text: "39.414", stability: "unknown" },
    });
  });

  test("lines of another number in the same form, now and then, are the reason why nothing is learned", () => {
    let sent = 0;
    const strays = pasted.replaceAll(/^QA.*$/gm, (line) => (sent++ % 5 === 4 ? "QA     17.25 g" : line));
    expect(code(strays)).toBe("learn.refused.not-steady");
  });

  test("without motion the meaning of the marks is unsure and never stable", () => {
    const quiet = pasted.split("\n").filter((line) => !line.startsWith("QB"));
    const { profile } = learn(recordingFromText(quiet.join("\n")), { answers: { sends: "by-itself" } });
    expect(profile?.findings.find(({ field }) => field === "motion")?.sure).toBe(false);
    expect(profile && meaningOfBytes(profile, bytesOf("QA     31.10 g\n"))).toMatchObject({
      reading: { stability: "unknown" },
    });
  });

  test("without a typed value below zero a minus that was never seen is asked, and refused where nobody knows it", () => {
    const above = pasted.slice(0, pasted.indexOf("# below-zero")).replace("QB     -2.87 g", "QB      2.87 g");
    expect(code(above)).toBe("below-zero");
    expect(code(above, { "below-zero": "unknown" })).toBe("learn.refused.below-zero");
    const { profile } = learn(recordingFromText(above), { answers: { "below-zero": "minus-before" } });
    for (const line of ["QA     31.10-g", "QA    (31.10)g"])
      expect(meaningOfBytes(profile!, bytesOf(`${line}\n`))).toMatchObject({
        event: { kind: "unknown-line" },
      });
  });
});

describe("damaged lines", () => {
  const profile = learned();
  const good = bytesOf("QA     31.10 g\n");

  test("never throw, and are read as a number only when every column is as it should be", () => {
    const damaged = fc.array(
      fc.record({
        at: fc.nat(good.length - 1),
        byte: fc.nat(255),
        how: fc.constantFrom("set", "drop", "double"),
      }),
      { minLength: 1, maxLength: 3 },
    );
    fc.assert(
      fc.property(damaged, (changes) => {
        const bytes = [...good];
        for (const { at, byte, how } of changes) {
          if (how === "set") bytes[at] = byte;
          else bytes.splice(at, how === "drop" ? 1 : 0, ...(how === "double" ? [bytes[at] ?? byte] : []));
        }
        const meaning = readByProfile(profile)("line", Uint8Array.from(bytes));
        if (meaning && "reading" in meaning) {
          // XON, XOFF and NULs at the ends are no part of a line; a no-break space is a blank.
          const line = Buffer.from(bytes)
            .toString("latin1")
            .replace(/[\r\n]+$/, "")
            .replace(/[\x11\x13]/g, "")
            .replace(/^\0+|\0+$/g, "")
            .replaceAll("\u00A0", " ");
          expect(line).toMatch(/^Q[AB] *-?\d+\.\d\d g$/);
          expect(line).toHaveLength(14);
        }
      }),
      { numRuns: longRun(20_000), seed: 5 },
    );
  });

  test("any bytes at all can be learned from without an exception", () => {
    fc.assert(
      fc.property(fc.array(fc.uint8Array({ maxLength: 40 }), { maxLength: 30 }), (pieces) => {
        const chunks = pieces.map((bytes, i) => ({ atMs: 100 * i, bytes }));
        const { profile, refused, questions } = learn({
          chunks,
          displayed: [{ atMs: 1600, text: "31.10", unit: "g" }],
          moments: [
            { atMs: 0, phase: "empty" },
            { atMs: 1500, phase: "loaded" },
          ],
        });
        expect(profile ?? refused ?? questions?.[0]).toBeDefined();
      }),
      { numRuns: longRun(300), seed: 6 },
    );
  });
});
