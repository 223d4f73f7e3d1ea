import { afterEach, beforeEach, expect, test } from "vitest";
import { messageText } from "../../message-text.ts";
import { until } from "../../until.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { wordsOf } from "./recorded.ts";

/** What one open page hears of the bench, as it arrives. */
let heard = "";
let at: TestBench;
let leave: AbortController;
const asked = { "hx-request": "true" };
const page = "page-1";

beforeEach(async () => {
  at = await buildTestBench();
  await at.post("/bench/piece", { ticket: "P-1", method: "hung", claim: "", key: "P-1" });
  const url = await at.app.listen({ port: 0, host: "127.0.0.1" });
  leave = new AbortController();
  heard = "";
  const stream = await fetch(`${url}/bench/live?page=${page}`, { signal: leave.signal });
  const reader = stream.body!.pipeThrough(new TextDecoderStream()).getReader();
  void (async () => {
    for (let part = await reader.read(); !part.done; part = await reader.read()) heard += part.value;
  })().catch(() => {});
  await until(() => heard.includes("P-1"), "the first state");
});
afterEach(async () => {
  leave.abort();
  await at.close();
});

/** The newest redraw of a part that this page got. */
const redrawn = (part: string) => {
  const from = heard.lastIndexOf(`<hx-partial hx-target="#${part}"`);
  return from < 0 ? "" : (heard.slice(from).split("</hx-partial>")[0] ?? "");
};
async function somethingElse(text: string): Promise<void> {
  await at.post("/bench/typed-readings", { role: "dry", reading: text, unit: "g" });
  await until(() => redrawn("piece").includes(`${text} g`), `the redraw with ${text}`);
}

test("a redraw carries the refusal of the page it goes to, with what was typed, until that page's next form", async () => {
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.l4", unit: "g", page }, asked);
  await somethingElse("31.10");
  expect(wordsOf(redrawn("piece"))).toContain(messageText("form.number.not-a-number", { typed: "28.l4" }));
  expect(redrawn("piece")).toContain('value="28.l4"');
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.14", unit: "g", page }, asked);
  await somethingElse("31.11");
  expect(redrawn("piece")).not.toContain("28.l4");
});

test("other pages do not hear of it", async () => {
  await at.post(
    "/bench/typed-readings",
    { role: "immersed", reading: "28.l4", unit: "g", page: "page-2" },
    asked,
  );
  await somethingElse("31.10");
  expect(heard).not.toContain("28.l4");
});

test("it is gone with the piece it was about", async () => {
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.l", unit: "g", page }, asked);
  await at.post("/bench/call-off", { reason: "another customer" });
  await at.post("/bench/piece", { ticket: "P-2", method: "hung", claim: "", key: "P-2" });
  await until(() => redrawn("piece").includes("P-2"), "the next piece");
  expect(redrawn("piece")).not.toContain("31.l");
});

test("a test of another kind that was sent back stands in its own part", async () => {
  const size = {
    kind: "outline",
    "outline-mass": "heavy",
    "outline-volume": "3",
    "outline-within": "0.1",
    page,
  };
  await at.post("/bench/tests", size, asked);
  await at.post("/bench/tests", { kind: "magnet", "magnet-shows": "none", page: "page-2" }, asked);
  await until(() => redrawn("result").includes("heavy"), "the redraw of the tests");
});
