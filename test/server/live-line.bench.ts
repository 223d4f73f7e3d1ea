import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { askedThread, startThread } from "../../server/asked-thread.ts";
import type { Benchmark, Figure } from "../bench/benchmark.ts";
import { longRun } from "../setup/long-run.ts";
import { firstQuestionsAnswered, formPoster, weighAt } from "./form-poster.ts";
import type { Answer, Asked } from "./live-line-ear.ts";
import { type RunningBench, startBench } from "./running.ts";

const rows = longRun(50_000);
const weighings = longRun(990_000);
const reports = longRun(200);
const program = join("dist", "test", "scale-process.js");
/** What a person at the bench may wait for a line at most, ms. */
const atMost = 100;

const list = () =>
  [
    "ticket;description;measured_at;mass_g;density_g_cm3;u_g_cm3;claim",
    ...Array.from(
      { length: rows },
      (_, n) => `I-${n};ring ${n};2019-05-02;${(n % 90) + 10}.10;10.34;0.02;ag-925`,
    ),
  ].join("\n");

/** Takes a list over as a person does: previewed, then taken, then looked at until it is whole. */
async function taken({ url }: RunningBench, list: string): Promise<void> {
  const page = await fetch(`${url}imports`);
  const cookie = (page.headers.get("set-cookie") ?? "").split(";")[0] ?? "";
  const token = /name="_csrf" value="([^"]+)"/.exec(await page.text())?.[1] ?? "";
  const post = (path: string, fields: Record<string, string | Blob>) => {
    const body = new FormData();
    for (const [name, value] of Object.entries({ _csrf: token, ...fields })) body.set(name, value);
    const headers = { cookie, origin: url.replace(/\/$/, "") };
    return fetch(new URL(path, url), { method: "POST", headers, body, redirect: "manual" });
  };
  const file = new Blob([list], { type: "text/csv" });
  const preview = await (await post("/imports", { list: "weighings", from: "old book", file })).text();
  const held = /name="held" value="([^"]+)"/.exec(preview)?.[1] ?? "";
  let place = (await post("/imports/taken", { held })).headers.get("location");
  for (;;) {
    if (!place) throw new Error("The list was not taken over.");
    if (place.includes("taken=")) return;
    await pause(500);
    const answer = await fetch(new URL(place, url), { redirect: "manual", headers: { cookie } });
    await answer.text();
    place = answer.status === 200 ? place : answer.headers.get("location");
  }
}

async function read(response: Promise<Response>): Promise<void> {
  const answer = await response;
  if (answer.status !== 200) throw new Error(`${answer.url} answered ${answer.status}`);
  for await (const _ of answer.body!) void _;
}

/** The whole ledger checked from its page, which is looked at until it tells. */
async function checked({ url }: RunningBench): Promise<void> {
  const post = await formPoster(url);
  let answer = await post("/settings/ledger/check", { kept: "" });
  let says = await answer.text();
  while (answer.status === 303 || answer.headers.has("refresh")) {
    await pause(500);
    answer = await fetch(`${url}settings/ledger/checking`);
    says = await answer.text();
  }
  if (!says.includes("Good: ")) throw new Error(`The ledger was not found good: ${says}`);
}

async function printed({ url }: RunningBench): Promise<void> {
  const post = await formPoster(url);
  await weighAt(post, "printed");
  for (let n = 0; n < reports; n += 1) {
    const answer = await post("/records/printed/reports", { step: `step-${n}`, by: "A. Porter" });
    if (answer.status !== 303) throw new Error(`No report: ${await answer.text()}`);
  }
}

export default {
  name: "the longest wait of the live line beside long work",
  aboutSeconds: 600,
  async measure(): Promise<Figure[]> {
    const folder = mkdtempSync(join(tmpdir(), "underhook-line-"));
    const ear = askedThread<Asked, Answer>("The listening thread", () =>
      startThread("live-line-ear", import.meta.url),
    );
    const figures: Figure[] = [];
    let running: RunningBench | undefined;
    try {
      execFileSync(process.execPath, [program, "make", join(folder, "ledger.sqlite"), String(weighings)]);
      const { path = "" } = await ear.ask({ do: "plug" });
      const bench = await startBench(["--balance", path], folder);
      running = bench;
      await firstQuestionsAnswered(bench.url);
      await ear.ask({ do: "listen", url: bench.url });
      const during = async (what: string, work: () => Promise<unknown>) => {
        await pause(1000);
        await ear.ask({ do: "longest" });
        const began = performance.now();
        await work();
        const { ms = Number.NaN } = await ear.ask({ do: "longest" });
        figures.push({ what: `longest wait, ${what}`, value: ms, unit: "ms", atMost });
        figures.push({ what: `${what}, took`, value: (performance.now() - began) / 1000, unit: "s" });
      };
      await during("nothing else", () => pause(10_000));
      await during(`${reports} reports as PDF`, () => printed(bench));
      await during(`import of ${rows} weighings`, () => taken(bench, list()));
      await during("all records as CSV", () => read(fetch(`${bench.url}records.csv`)));
      await during("all entries as JSON Lines", () => read(fetch(`${bench.url}records.jsonl`)));
      await during(`verify of ${weighings + rows} weighings`, () => checked(bench));
      return figures;
    } finally {
      await running?.stop();
      await ear.close();
      rmSync(folder, { recursive: true, force: true });
    }
  },
} satisfies Benchmark;
