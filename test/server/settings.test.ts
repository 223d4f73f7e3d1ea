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
});
