import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "underhook-"));
  for (const part of ["dist", "server/metals/data", "views/messages", "package.json"])
    cpSync(part, join(folder, part), { recursive: true });
  symlinkSync(resolve("node_modules"), join(folder, "node_modules"));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** The built program with one line of its German catalogue written otherwise. */
function started(line: number, otherwise: (text: string) => string) {
  const file = join(folder, "views/messages/de.json");
  const lines = readFileSync(file, "utf8").split("\n");
  const written = lines[line - 1]!;
  writeFileSync(file, lines.with(line - 1, otherwise(written)).join("\n"));
  const { status, stderr } = spawnSync(
    process.execPath,
    [join(folder, "dist/server/underhook.js"), "serve", "--port", "0"],
    { encoding: "utf8", env: { ...process.env, UNDERHOOK_DATA: join(folder, "data") }, timeout: 20_000 },
  );
  return { status, stderr, key: /"([^"]+)":/.exec(written)![1]! };
}

test.each([
  ["is not JSON", (line: string) => line.replace(/,$/, "")],
  ["has a text that does not parse", (line: string) => line.replace(/": ".*"/, '": "{one, plural,"')],
])("a bench whose catalogue %s is not started, and says file, line and key", (_, otherwise) => {
  const { status, stderr, key } = started(40, otherwise);
  expect(status).toBe(1);
  expect(stderr).toContain("views/messages/de.json, line 4");
  expect(stderr).toContain(`"${key}"`);
});
