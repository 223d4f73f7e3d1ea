import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { chromiumPath } from "../setup/chromium-path.ts";

/** A bench started as its owner would: the built program in a process of its own, on a free port. */
export interface RunningBench {
  url: string;
  dataFolder: string;
  process: ChildProcess;
  stop(): Promise<void>;
}

export async function startBench(
  args: string[],
  dataFolder = mkdtempSync(join(tmpdir(), "underhook-")),
  environment: Record<string, string> = {},
): Promise<RunningBench> {
  const child = spawn(process.execPath, ["dist/server/underhook.js", "serve", "--port", "0", ...args], {
    env: { ...process.env, UNDERHOOK_DATA: dataFolder, ...environment },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  const url = await new Promise<string>((resolve, reject) => {
    const hear = (chunk: Buffer) => {
      said += chunk.toString();
      const found = /http:\/\/localhost:\d+\//.exec(said);
      if (found) resolve(found[0]);
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    child.on("exit", (code) => reject(new Error(`The bench ended with ${code} before it listened: ${said}`)));
  });
  return {
    url,
    dataFolder,
    process: child,
    stop: () =>
      new Promise((resolve) => {
        if (child.exitCode !== null || child.signalCode !== null) return resolve();
        child.on("exit", () => resolve());
        child.kill("SIGTERM");
      }),
  };
}

export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: chromiumPath,
    args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update"],
  });
}

/** Pictures of what the tests saw, to be looked at; never compared. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = join("test", "output");
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
}

/** Answers the three questions of a new bench, where it asks them. */
export async function answerFirstQuestions(page: Page): Promise<void> {
  if (!page.url().endsWith("/first-start")) return;
  await page.locator('input[name="method"][value="hung"]').check({ force: true });
  await page.locator('input[name="source"][value="typed"]').check({ force: true });
  await page.locator('input[name="metal"]').first().check({ force: true });
  await page.locator("main form button.large").click();
  await page.getByLabel("Ticket").waitFor();
}
