import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { balanceAt, cableOptions } from "../../drivers/balance-at.ts";
import { recordingFromLines } from "../../drivers/learning/recording.ts";
import { exportProfile } from "../../drivers/learning/samples.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import { createRecordedBalance } from "../../drivers/recorded-balance.ts";
import { run } from "../../server/cli/listen.ts";
import { refusalOf } from "../refusal-of.ts";
import { profile } from "./invented-profile.ts";
import { clean } from "./streams/benches.ts";
import { chunksOf } from "./streams/played.ts";
import { streamOf } from "./streams/stream.ts";

const hex = (text: string) => Buffer.from(text, "latin1").toString("hex");
const at = (at_ms: number, text: string) => JSON.stringify({ at_ms, hex: hex(text) });

const recorded = [
  '{"at_ms":1000,"step":"empty"}',
  at(1010, "33\r\n"),
  at(1200, "  31.10"),
  at(1230, " g  stable\r"),
  at(1240, "\n"),
  '{"at_ms":1300,"displayed":{"text":"31.10","unit":"g"}}',
  at(4400, "  31.11 g  moving\r\n  nothing known\r\n"),
].join("\n");

function played(text: string, settings: Parameters<typeof cableOptions>[0] = {}): LineRecord[] {
  const records: LineRecord[] = [];
  const balance = createRecordedBalance(recordingFromLines(text).chunks, (clock) =>
    cableOptions(settings, clock),
  );
  balance.onLine((record) => records.push(record));
  balance.play();
  return records;
}

test("a recording plays back as the cable would have told it, at times counted from its first byte", () => {
  expect(
    played(recorded).map(({ monotonicMs, reading, event }) => [monotonicMs, reading?.text ?? event?.kind]),
  ).toEqual([
    [230, "31.10"],
    [2230, "silent"],
    [3390, "31.11"],
    [3390, "unknown-line"],
  ]);
});

test("what a recording holds beside bytes is kept with it", () => {
  const { chunks, moments, displayed } = recordingFromLines(recorded);
  expect(chunks).toHaveLength(5);
  expect(moments).toEqual([{ atMs: 1000, phase: "empty" }]);
  expect(displayed).toEqual([{ atMs: 1300, text: "31.10", unit: "g" }]);
});

test("lines ended by silence are cut by their recorded times, the last one too", () => {
  const text = [at(0, "w?     31.09g"), at(200, "w?     31.10g"), at(400, "w.     31.12g")].join("\n");
  const records = played(text, { profile: profile({ kind: "silence", ms: 60 }) });
  expect(records.map(({ reading }) => [reading?.text, reading?.stability])).toEqual([
    ["31.10", "moving"],
    ["31.12", "stable"],
  ]);
});

test.each([
  ['{"at_ms":0,"hex":"3"}', "recording.line"],
  ['{"at_ms":0,"step":"dance"}', "recording.line"],
  ['{"at_ms":0}', "recording.line"],
  ["# loaded", "recording.line"],
  ['{"at_ms":0,"step":"empty"}', "recording.no-bytes"],
  ["", "recording.no-bytes"],
])("what is no recording is refused: %s", (text, code) => {
  expect(refusalOf(() => recordingFromLines(text)).code).toBe(code);
});

test("an unknown line format is refused before anything is opened", () => {
  expect(refusalOf(() => balanceAt("/dev/ttyUSB0", { shape: "none such" })).code).toBe("line-format.unknown");
});

let folder = "";
afterEach(() => {
  if (folder !== "") rmSync(folder, { recursive: true });
  folder = "";
});

async function listen(...args: string[]): Promise<{ status: number; lines: unknown[]; errors: string[] }> {
  const [log, error] = [console.log, console.error];
  const lines: unknown[] = [];
  const errors: string[] = [];
  console.log = (line: string) => lines.push(JSON.parse(line));
  console.error = (line: string) => errors.push(line);
  try {
    return { status: await run(args), lines, errors };
  } finally {
    console.log = log;
    console.error = error;
  }
}

test("underhook listen prints a recording as JSON Lines, by a learned profile where one is given", async () => {
  folder = mkdtempSync(join(tmpdir(), "recording-"));
  const [file, learned] = [join(folder, "recording.jsonl"), join(folder, "profile.json")];
  writeFileSync(file, recorded);
  const { status, lines } = await listen("--recording", file);
  expect(status).toBe(0);
  expect(lines[0]).toEqual({
    at_ms: 230,
    raw: "  31.10 g  stable\\r\\n",
    reading: { text: "31.10", unit: "g", grams: "31.10", stability: "stable" },
  });
  expect(lines[1]).toMatchObject({ at_ms: 2230, event: { code: "silent", params: { seconds: 2 } } });
  writeFileSync(learned, exportProfile(profile({ kind: "characters", hex: "0d0a" })));
  writeFileSync(file, at(0, "x\r\nw?     31.12g\r\n"));
  expect((await listen("--recording", file, "--profile", learned)).lines).toEqual([
    { at_ms: 0, raw: "w?     31.12g\\r\\n", reading: expect.objectContaining({ stability: "moving" }) },
  ]);
});

test("with --take each load of a recording is taken once, at times from its first byte, and a creep is told", async () => {
  folder = mkdtempSync(join(tmpdir(), "recording-"));
  const file = join(folder, "recording.jsonl");
  const creeps = [{ kind: "fading", mg: 4, tauSeconds: 12 }] as const;
  const stream = streamOf(
    clean,
    [
      { mg: 0, seconds: 10 },
      { mg: 7536.03, seconds: 15 },
      { mg: 0, seconds: 10 },
      { mg: 7536.03, seconds: 30, creeps },
    ],
    11,
  );
  const chunks = chunksOf(stream, clean);
  writeFileSync(
    file,
    chunks
      .map(({ atMs, bytes }) => JSON.stringify({ at_ms: atMs, hex: Buffer.from(bytes).toString("hex") }))
      .join("\n"),
  );
  const { status, lines } = await listen("--recording", file, "--take");
  expect(status).toBe(0);
  const [first, lifted, ...others] = lines as { at_ms: number; taken?: object; event?: object }[];
  expect(first).toEqual({
    at_ms: expect.any(Number),
    taken: {
      text: expect.stringMatching(/^7\.53(59|60|61)$/),
      unit: "g",
      grams: expect.closeTo(7.53603, 4),
      u_g: expect.any(Number),
      drift_u_g: expect.any(Number),
      possible_g: expect.any(Number),
      flags: ["creep-possible"],
    },
  });
  // It rests some 4.2 s after it was put on at 10 s.
  expect(first!.at_ms).toBeGreaterThan(14_000);
  expect(first!.at_ms).toBeLessThan(20_000);
  expect(lifted).toMatchObject({ event: { code: "creep-excluded" } });
  // The second one creeps: told, and not taken while it stays.
  expect(others.length).toBeGreaterThan(0);
  for (const line of others)
    expect(line).toMatchObject({ event: { code: "drifting", params: { g_per_s: expect.any(Number) } } });
});

test("a recording that is not there, and one beside a port, end with status 2", async () => {
  folder = mkdtempSync(join(tmpdir(), "recording-"));
  expect((await listen("--recording", join(folder, "none"))).status).toBe(2);
  expect((await listen("/dev/ttyUSB0", "--recording", join(folder, "none"))).status).toBe(2);
});
