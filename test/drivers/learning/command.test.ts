import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test, vi } from "vitest";
import { run } from "../../../server/cli/learn.ts";
import { run as listen } from "../../../server/cli/listen.ts";
import { type Day, day } from "./day.ts";
import { lot } from "./lot.ts";
import { manners } from "./manners.ts";

const folder = mkdtempSync(join(tmpdir(), "learn-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** A recording as a file holds it. */
function written(name: string, { recording }: Day, displayed = recording.displayed ?? []): string {
  const rows = [
    ...recording.moments.map(({ atMs, phase }) => ({ at_ms: atMs, step: phase })),
    ...recording.chunks.map(({ atMs, bytes }) => ({ at_ms: atMs, hex: Buffer.from(bytes).toString("hex") })),
    ...displayed.map(({ atMs, ...shown }) => ({ at_ms: atMs, displayed: shown })),
  ];
  const path = join(folder, name);
  writeFileSync(path, rows.map((row) => JSON.stringify(row)).join("\n"));
  return path;
}

async function printed(command: typeof run, ...args: string[]) {
  const log = vi.spyOn(console, "log").mockImplementation(() => {});
  const error = vi.spyOn(console, "error").mockImplementation(() => {});
  const status = await command(args);
  const out = log.mock.calls.map(([line]) => JSON.parse(String(line)));
  log.mockRestore();
  error.mockRestore();
  return { status, out };
}

const manner = (name: string) => manners(lot(3)).find((one) => one.name.startsWith(name))!;

test("a profile is printed that listen then reads other lines by, below zero too", async () => {
  const one = manner("in brackets, width, 2");
  const { status, out } = await printed(
    run,
    "--recording",
    written("a.jsonl", day(one, 31_103, lot(1), { below: true })),
  );
  expect(status).toBe(0);
  expect(out).toHaveLength(1);
  expect(out[0].reads).toContainEqual(
    expect.objectContaining({ reading: { text: "0.00", unit: "g", grams: "0.00", stability: "unknown" } }),
  );
  const profile = join(folder, "profile.json");
  writeFileSync(profile, JSON.stringify(out[0]));
  const other = day(one, 21_000, lot(2), { below: true });
  const heard = await printed(listen, "--recording", written("b.jsonl", other), "--profile", profile);
  const texts = heard.out.flatMap(({ reading }) => reading?.text ?? []);
  // the first line is dropped, it may be a partial one
  expect(texts).toEqual(
    other.sent.slice(1).map(({ moment }) => (moment.net / 100).toFixed(2).replace(/^-0.00$/, "0.00")),
  );
  expect(Math.min(...texts.map(Number))).toBeLessThan(-150);
});

test("what the recording does not decide is a question with answers, and an answers file settles it", async () => {
  const both = manner("net, gross, tare by letters");
  const path = written("c.jsonl", day(both, 31_103, lot(1), { below: false }));
  const { status, out } = await printed(run, "--recording", path);
  expect(status).toBe(3);
  const [question] = out[0].questions;
  expect(question).toMatchObject({ id: "number", asks: expect.any(String) });
  const net = question.options.find(({ message }: { message: string }) => message.includes("N "));
  const answers = join(folder, "answers.json");
  writeFileSync(answers, JSON.stringify({ number: net.value, "below-zero": "minus-before" }));
  expect((await printed(run, "--recording", path, "--answers", answers)).status).toBe(0);
});

test("a value that no line shows is refused with its code and in words", async () => {
  const one = day(manner("g 2, free"), 31_103, lot(1), { below: true });
  const typed = [{ atMs: 15_000, text: "7.77", unit: "g" }];
  const { status, out } = await printed(run, "--recording", written("d.jsonl", one, typed));
  expect(status).toBe(1);
  expect(out).toEqual([
    { refused: { code: "learn.refused.not-found", message: expect.stringContaining("7.77 g") } },
  ]);
});

test("wrong use ends with 2, and so do files that are none", async () => {
  expect((await printed(run)).status).toBe(2);
  expect((await printed(run, "/dev/ttyUSB0", "--recording", "x")).status).toBe(2);
  expect((await printed(run, "--recording", join(folder, "none"))).status).toBe(2);
  expect((await printed(listen, "/dev/ttyUSB0", "--give-up", "abc")).status).toBe(2);
  const broken = join(folder, "broken.jsonl");
  writeFileSync(broken, "no recording");
  expect(await printed(run, "--recording", broken)).toMatchObject({
    status: 1,
    out: [{ refused: { code: "recording.line" } }],
  });
});
