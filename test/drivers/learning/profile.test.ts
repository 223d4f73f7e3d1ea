import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { learn } from "../../../drivers/learning/learn.ts";
import { recordingFromText } from "../../../drivers/learning/pasted.ts";
import { type Profile, profileJsonSchema } from "../../../drivers/learning/profile.ts";
import { readByProfile } from "../../../drivers/learning/reader.ts";
import { checkProfile, meaningOfBytes } from "../../../drivers/learning/samples.ts";
import { exportProfile, importProfile } from "../../../drivers/learning/stored.ts";
import { longRun } from "../../setup/long-run.ts";

/** Invented lines: a mark before the number, "QA" at rest and "QB" in motion; "OVR" beyond the range. */
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
  "# touched",
  "QB     44.19 g",
  "QB     61.72 g",
  "QB     38.06 g",
  "QB     52.90 g",
  "# settled",
  ...Array(8).fill("QA     31.10 g"),
  "# taking-off",
  "QB     17.31 g",
  "QB     -2.87 g",
  "QB      9.44 g",
  "# empty",
  ...Array(8).fill("QA      0.00 g"),
  "# overloaded",
  ...Array(4).fill("QB       OVR  "),
].join("\n");

const bytesOf = (text: string) => new TextEncoder().encode(text);

function learned(): Profile {
  const { profile, questions } = learn(recordingFromText(pasted), { name: "pasted balance" });
  expect(questions).toEqual([]);
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

  test("knows what the balance said beyond its range", () => {
    expect(meaning("QB       OVR  ")).toMatchObject({ event: { kind: "overload" } });
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

describe("what no bytes can tell is asked once", () => {
  const grouped = pasted.replaceAll(/(\d+)\.(\d\d) g/g, (_, whole) => `${`${whole},234`.padStart(7)} g`);
  const ambiguous = grouped.replaceAll(/QA +0,234/g, "QA       0");

  test("a comma that could mark decimals or thousands", () => {
    const recording = recordingFromText(ambiguous);
    const open = learn(recording);
    expect(open.profile).toBeNull();
    expect(open.questions.map(({ id }) => id)).toEqual(["comma"]);
    const thousands = learn(recording, { answers: { comma: "thousands" } }).profile!;
    const meant = meaningOfBytes(
      thousands,
      bytesOf(`${ambiguous.split("\n").find((l) => l.startsWith("QA") && l.includes("31"))}\n`),
    );
    expect(meant).toMatchObject({ reading: { text: "31234" } });
  });

  test("the unit, where the line has none", () => {
    const recording = recordingFromText(pasted.replaceAll(" g\n", "\n"));
    expect(learn(recording).questions.map(({ id }) => id)).toEqual(["unit"]);
    const { profile } = learn(recording, { answers: { unit: "ct" } });
    expect(profile?.unit).toEqual({ unit: "ct", from: "owner" });
    const refused = learn(recording, { answers: { unit: "stone" } }).questions[0]?.refused;
    expect(refused).toMatchObject({ code: "learn.answer.not-offered", params: { answer: "stone" } });
  });

  test("the place of the point, where the line sends none", () => {
    const recording = recordingFromText(pasted.replaceAll(/ (\d+)\.(\d\d) g/g, "  $1$2 g"));
    const [question] = learn(recording).questions;
    expect(question?.id).toBe("displayed");
    const { profile } = learn(recording, { answers: { displayed: "31.10" } });
    expect(profile && meaningOfBytes(profile, bytesOf("QA      3110 g\n"))).toMatchObject({
      reading: { text: "31.10" },
    });
    expect(learn(recording, { answers: { displayed: "9.9" } }).questions[0]?.refused?.params).toEqual({
      answer: "9.9",
      digits: "3110",
    });
  });
});

describe("what cannot be learned is said", () => {
  test.each([
    ["nothing came", "# empty", "learn.failed.nothing-came"],
    [
      "the number never followed the weight",
      pasted.replaceAll(/\d+\.\d\d/g, "7.77"),
      "learn.failed.no-weight",
    ],
    ["it counts pieces", pasted.replaceAll(" g\n", " pcs\n"), "learn.failed.not-a-weight"],
  ])("%s", (_, text, code) => {
    const { profile, failed } = learn(recordingFromText(text));
    expect(profile).toBeNull();
    expect(failed?.code).toBe(code);
  });

  test("without motion the meaning of the marks is unsure and never steady", () => {
    const quiet = pasted.split("\n").filter((line) => !line.startsWith("QB"));
    const { profile, findings } = learn(recordingFromText(quiet.join("\n")));
    expect(findings.find(({ field }) => field === "motion")?.sure).toBe(false);
    expect(profile && meaningOfBytes(profile, bytesOf("QA     31.10 g\n"))).toMatchObject({
      reading: { stability: "unknown" },
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
          // NUL, XON and XOFF are no part of a line; a no-break space is a blank.
          const line = Buffer.from(bytes)
            .toString("latin1")
            .replace(/[\r\n]+$/, "")
            .replace(/[\0\x11\x13]/g, "")
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
        const { profile, failed, questions } = learn({
          chunks,
          moments: [
            { atMs: 0, phase: "empty" },
            { atMs: 1500, phase: "loaded" },
          ],
        });
        expect(profile ?? failed ?? questions[0]).toBeDefined();
      }),
      { numRuns: longRun(300), seed: 6 },
    );
  });
});
