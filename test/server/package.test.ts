import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { formPoster } from "./form-poster.ts";
import { startBench } from "./running.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "underhook-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

test("the packed program runs without its sources: pages, style, scripts, and a label", async () => {
  execFileSync("npm", ["pack", "--ignore-scripts", "--silent", "--pack-destination", folder]);
  execFileSync("sh", ["-c", "tar xzf underhook-*.tgz"], { cwd: folder });
  symlinkSync(resolve("node_modules"), join(folder, "node_modules"));
  const bench = await startBench([], join(folder, "data"), {}, join(folder, "package"));
  try {
    const status = async (path: string) => (await fetch(new URL(path, bench.url))).status;
    const places = [
      "",
      "records",
      "lots",
      "balances",
      "checks",
      "metals",
      "plan",
      "settings",
      "api/openapi.json",
    ];
    const assets = [...(await (await fetch(bench.url)).text()).matchAll(/(?:src|href)="(\/assets\/[^"]+)"/g)];
    expect(assets.length).toBeGreaterThan(3);
    for (const place of [...places, ...assets.map(([, path]) => path!)])
      expect([place, await status(place)]).toEqual([place, 200]);
    const post = await formPoster(bench.url);
    await post("/demo/piece", { piece: "ship-signet", key: "one" });
    await post("/bench/typed-readings", { role: "dry", reading: "11.7731", unit: "g" });
    await post("/bench/typed-readings", { role: "immersed", reading: "10.6392", unit: "g" });
    await post("/bench/water", { celsius: "21.4" });
    expect((await post("/bench/record", {})).status).toBe(303);
    const records = await (await fetch(new URL("records", bench.url))).text();
    const record = /href="(\/records\/[^"?.]+)"/.exec(records)![1]!;
    const label = await fetch(new URL(`${record}/label.pdf`, bench.url));
    expect(new TextDecoder("latin1").decode((await label.arrayBuffer()).slice(0, 5))).toBe("%PDF-");
  } finally {
    await bench.stop();
  }
});
