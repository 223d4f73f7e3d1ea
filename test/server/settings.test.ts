import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { settingsFrom } from "../../server/settings.ts";

describe("settings of a start", () => {
  test("with nothing said the bench is a demo that keeps its invented pieces in a folder of their own", () => {
    const settings = settingsFrom({}, { UNDERHOOK_DATA: "/tmp/bench" });
    expect(settings.source).toEqual({ kind: "demo" });
    expect(settings.dataFolder).toBe(join("/tmp/bench", "demo"));
  });

  test("a balance on a cable takes 9600-8n1 unless told otherwise", () => {
    const settings = settingsFrom({ balance: "/dev/ttyUSB0", data: "/tmp/bench" }, {});
    expect(settings.source).toEqual({ kind: "cable", choice: { address: "/dev/ttyUSB0", line: "9600-8n1" } });
    expect(settings.dataFolder).toBe("/tmp/bench");
  });

  test("a port that is no port is refused with the value and the range", () => {
    expect(() => settingsFrom({ port: "seventy" }, {})).toThrow(
      expect.objectContaining({ code: "cli.serve.port-wrong", params: { port: "seventy", such: "4319" } }),
    );
    expect(() => settingsFrom({ port: "70000" }, {})).toThrow(
      expect.objectContaining({ code: "cli.serve.port-wrong", params: { port: "70000", such: "4319" } }),
    );
  });

  test("typed readings and a cable exclude each other", () => {
    expect(() => settingsFrom({ typed: true, balance: "/dev/ttyUSB0" }, {})).toThrow(
      expect.objectContaining({ code: "cli.serve.two-sources" }),
    );
  });

  test("the command line goes before the environment, and that before the settings file", () => {
    const file = settingsIn({
      port: 5001,
      data: "/tmp/a",
      bench: "window",
      typed: true,
      database_url: "postgres://x/y",
    });
    const told = settingsFrom({ settings: file, data: "/tmp/c" }, { UNDERHOOK_BENCH: "door" });
    expect(told).toMatchObject({
      ...{ port: 5001, dataFolder: "/tmp/c", bench: "door", source: { kind: "typed" } },
      databaseUrl: "postgres://x/y",
    });
    const cabled = settingsFrom(
      { balance: "/dev/ttyUSB0" },
      { UNDERHOOK_SETTINGS: file, UNDERHOOK_PORT: "5002" },
    );
    expect(cabled).toMatchObject({ port: 5002, source: { kind: "cable" }, dataFolder: "/tmp/a" });
  });

  test("a settings file that cannot be used is refused with the key that is wrong", () => {
    const refusal = (file: string) => {
      try {
        settingsFrom({ settings: file }, {});
      } catch (error) {
        return error;
      }
      return undefined;
    };
    expect(refusal("/nowhere/settings.json")).toMatchObject({ code: "cli.serve.settings-not-read" });
    expect(refusal(settingsIn([]))).toMatchObject({ code: "cli.serve.settings-no-object" });
    expect(refusal(settingsIn({ prot: 1 }))).toMatchObject({
      code: "cli.serve.settings-unknown",
      params: { key: "prot" },
    });
    expect(refusal(settingsIn({ port: "4319" }))).toMatchObject({
      code: "cli.serve.settings-wrong",
      params: { key: "port", right: "0–65535" },
    });
  });
});

function settingsIn(what: object): string {
  const file = join(mkdtempSync(join(tmpdir(), "settings-")), "settings.json");
  writeFileSync(file, JSON.stringify(what));
  return file;
}
