import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test, vi } from "vitest";
import { message } from "../../../calibration/message.ts";
import { run } from "../../../server/cli/index.ts";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { locales } from "../../../views/messages/language.ts";
import { tell } from "../../../views/messages/tell.ts";

/** The command line as `underhook` runs it, with what it says. */
async function underhook(args: readonly string[], language: NodeJS.ProcessEnv = { LANG: "C" }) {
  for (const name of ["LC_ALL", "LC_MESSAGES", "LANG"]) vi.stubEnv(name, language[name]);
  const [out, error] = [vi.spyOn(console, "log"), vi.spyOn(console, "error")];
  for (const spy of [out, error]) spy.mockReset().mockReturnValue();
  const text = ({ mock }: typeof out) => mock.calls.map(([line]) => `${line}\n`).join("");
  try {
    return { status: await run([...args]), stdout: text(out), stderr: text(error) };
  } finally {
    vi.restoreAllMocks();
    vi.unstubAllEnvs();
  }
}

describe("the language of help and messages", () => {
  test("is that of --lang, else the system's, else English", async () => {
    const sentence = (locale: "en" | "de" | "es") => tell({ code: "cli.doctor.says" }, locale);
    expect((await underhook(["--help"])).stdout).toContain(sentence("en"));
    expect((await underhook(["help"], { LANG: "de_AT.UTF-8" })).stdout).toContain(sentence("de"));
    expect((await underhook([], { LANG: "de_AT.UTF-8", LC_ALL: "es_ES.UTF-8" })).stdout).toContain(
      sentence("es"),
    );
    expect((await underhook(["help", "--lang", "en"], { LANG: "de_AT.UTF-8" })).stdout).toContain(
      sentence("en"),
    );
    expect((await underhook([], { LANG: "tlh" })).stdout).toContain(sentence("en"));
  });

  test("one that is not there is wrong use", async () => {
    const { status, stderr } = await underhook(["verify", "--lang", "xx"]);
    const sentence = message("cli.language-unknown", { language: "xx", right: { anyOf: locales } });
    expect(status).toBe(2);
    expect(stderr).toContain(tell(sentence, "en"));
  });
});

test.each([
  [["backup", "--ledgr", "x"], message("cli.option-unknown", { option: "--ledgr" })],
  [["verify", "--key"], message("cli.option-needs-value", { option: "--key" })],
  [["doctor", "--write=yes"], message("cli.option-takes-none", { option: "--write", value: "yes" })],
  [["doctor", "now"], message("cli.argument-unknown", { argument: "now" })],
  [["restore"], message("cli.restore.no-backup")],
] as const)(
  "wrong use is told in the language asked for, with the way to the help, and is 2: %j",
  async (args, sentence) => {
    const { status, stdout, stderr } = await underhook([...args, "--lang=de"]);
    const [command] = args;
    expect(status).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toBe(
      `${tell(message("cli.failed", { command, message: sentence }), "de")}\n${tell(message("cli.hint", { command }), "de")}\n`,
    );
  },
);

test("verify takes a data folder for the ledger in it", async () => {
  const folder = mkdtempSync(join(tmpdir(), "underhook-verify-"));
  const file = join(folder, "ledger.sqlite");
  const ledger = await openLedger({ file, now: () => new Date("2026-03-02T09:00:00.000Z"), bench: "b" });
  await ledger.close();
  const [byFolder, byFile] = [await underhook(["verify", folder]), await underhook(["verify", file])];
  expect(byFolder).toEqual(byFile);
  expect(byFolder.stdout).toContain(file);
});
