import { setTimeout as wait } from "node:timers/promises";
import { expect, test } from "vitest";
import { startBench } from "./running.ts";

test("what is asked of the pages is written down as lines of JSON where that is asked for, without what is searched", async () => {
  const bench = await startBench(["--typed"], undefined, { UNDERHOOK_LOG: "info" });
  let written = "";
  bench.process.stderr?.on("data", (chunk: Buffer) => {
    written += chunk.toString();
  });
  try {
    await (await fetch(`${bench.url}records?q=Mueller`)).text();
    while (!written.includes("request completed")) await wait(20);
  } finally {
    await bench.stop();
  }
  const lines = written
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as { req?: object; res?: { statusCode: number } });
  expect(lines.flatMap(({ req }) => req ?? [])).toContainEqual({ method: "GET", path: "/records" });
  expect(lines.flatMap(({ res }) => res?.statusCode ?? [])).toContain(200);
  expect(written).not.toContain("Mueller");
});
