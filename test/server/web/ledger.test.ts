import { afterEach, beforeEach, expect, test } from "vitest";
import { job } from "../../../server/web/job.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, recorded, textOf, wordsOf } from "./recorded.ts";

const t = tellerOf("en");

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const checkpointIn = (body: string) =>
  /checkpoint \d+ [0-9a-f]{64} [0-9a-f]{64} [A-Za-z0-9+/=]+/.exec(body)?.[0] ?? "";

/** What the check says in the end; on a busy machine it is looked at again until it does. */
async function checked(kept: string): Promise<string> {
  let answer = await at.post("/settings/ledger/check", { kept });
  while (answer.statusCode === 303 || answer.headers.refresh !== undefined)
    answer = await at.app.inject({ url: "/settings/ledger/checking", headers: { host } });
  return wordsOf(answer.body);
}

test("a checkpoint is signed on its page, can be sent as it stands, and is what the check takes back", async () => {
  await recorded(at, { id: "bar-1", dry: "31.1035", immersed: "28.1435" });
  const made = (await at.post("/settings/ledger/checkpoint", {})).body;
  const line = checkpointIn(made);
  expect(made).toContain(`body=${encodeURIComponent(line)}`);
  await recorded(at, { id: "bar-2", dry: "31.1035", immersed: "28.1435" });
  const good = await checked(`${line}\n`);
  expect(good).toMatch(
    /Good: \d+ entries, \d+ checkpoints, signed up to row \d+\. The checkpoint kept elsewhere fits\./,
  );
});

test("a checkpoint of another history is found not to fit, with the first row that is wrong", async () => {
  const other = await buildTestBench();
  await recorded(other, { id: "bar-1", dry: "31.1035", immersed: "28.2" });
  const line = checkpointIn((await other.post("/settings/ledger/checkpoint", {})).body);
  await other.close();
  await recorded(at, { id: "bar-1", dry: "31.1035", immersed: "28.1435" });
  await recorded(at, { id: "bar-2", dry: "31.1035", immersed: "28.1435" });
  const row = Number(line.split(" ")[1]);
  const told = await checked(line);
  expect(told).toContain(`The first row that is wrong is row ${row}`);
  expect(told).toContain("the chain up to here was rewritten");
});

test("a line that is no checkpoint is refused by what it says", async () => {
  const answer = await at.post("/settings/ledger/check", { kept: "checkpoint 12 abc" });
  expect(answer.statusCode).toBe(422);
  expect(wordsOf(answer.body)).toContain("“checkpoint 12 abc” is no checkpoint");
});

test("a check tells how far it is, can be stopped between two steps, and a stop with none under way does nothing", async () => {
  for (let n = 0; n < 5; n += 1) await recorded(at, { id: `bar-${n}`, dry: "31.1035", immersed: "28.1435" });
  const { seq: entries } = (await at.ledger.head())!;
  const seen: number[] = [];
  expect(await at.ledger.verify({}, { onProgress: (upTo) => seen.push(upTo) })).toMatchObject({ good: true });
  expect(seen.at(-1)).toBe(entries);
  const running = job(entries, (steps) => at.ledger.verify({}, steps));
  running.stop();
  await running.ended;
  expect(running.outcome).toEqual({ stopped: true });
  const stop = await at.post("/settings/ledger/checking/stopped", {});
  expect([stop.statusCode, stop.headers.location]).toEqual([303, "/settings/ledger"]);
  expect(await checked("")).toContain("Good:");
});

test("work that an error of the program ends is not shown as going on", async () => {
  const running = job(1, () => Promise.reject(new Error("wrong inside")));
  await expect(running.ended).rejects.toThrow("wrong inside");
  expect(running.outcome).toEqual({ message: { code: "refusal.program-error" } });
});

test("a bench by itself says that it hands nothing over, and how it would", async () => {
  expect(await textOf(at, "/settings/ledger")).toMatch(/its own ledger only.*DATABASE_URL/);
  expect(await textOf(at, "/settings")).toContain(t("settings-pages.ledger"));
});
