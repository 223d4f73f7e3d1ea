import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { pictures } from "../setup/long-run.ts";

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
  programFolder = ".",
): Promise<RunningBench> {
  const program = join(programFolder, "dist/server/underhook.js");
  const child = spawn(process.execPath, [program, "serve", "--port", "0", ...args], {
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

/** A picture of what a test saw, to be looked at; never compared. */
export async function picture(page: Page, name: string): Promise<void> {
  if (pictures) await pictureOfFailure(page, name);
}

/** The same of a test that failed, by day too. A hidden caret would leave style attributes behind. */
export async function pictureOfFailure(page: Page, name: string): Promise<void> {
  const folder = join("test", "output");
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true, caret: "initial" });
}

/** Answers the three questions of a new bench, where it asks them. */
export async function answerFirstQuestions(page: Page): Promise<void> {
  if (!page.url().endsWith("/first-start")) return;
  await page.locator('input[name="method"][value="hung"]').check({ force: true });
  await page.locator('input[name="source"][value="typed"]').check({ force: true });
  await page.locator("main form button.next").click();
  await page.getByLabel("Ticket").waitFor();
}

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
/** Rules of WCAG 2.2 A and AA as axe-core knows them, and what it calls best practice. */
const rules = { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] };

/** What an automatic check finds wrong with this state of the page, everything folded on it opened or not as it stands. */
export async function faults(page: Page): Promise<string[]> {
  if (!(await page.evaluate("'axe' in globalThis"))) await page.evaluate(axe);
  const { violations } = (await page.evaluate(`axe.run(document, ${JSON.stringify(rules)})`)) as AxeResults;
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}

/** How far the page must be scrolled sideways to be read, CSS px; 0 or less when it fits. */
export function overflow(page: Page): Promise<number> {
  return page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");
}

/** What a screen reader finds in Chromium's accessibility tree: roles and names in reading order, and where it stands. */
export async function heard(page: Page): Promise<{ order: string[]; focus: string; regions: string[] }> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  await session.detach();
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const inOrder = (id: string): typeof nodes => {
    const node = byId.get(id);
    return node ? [node, ...(node.childIds ?? []).flatMap(inOrder)] : [];
  };
  const said = inOrder(nodes[0]!.nodeId).filter(({ ignored }) => !ignored);
  const line = ({ role, name }: (typeof nodes)[number]) => `${role?.value} ${name?.value}`;
  const property = ({ properties = [] }: (typeof nodes)[number], wanted: string) =>
    properties.find(({ name }) => name === wanted)?.value.value;
  const focused = said.findLast((node) => property(node, "focused") === true);
  return {
    order: said
      .filter(({ role }) => ["heading", "button", "textbox", "status", "alert"].includes(role?.value))
      .map(line),
    focus: focused ? `${line(focused)} | ${focused.description?.value ?? ""}` : "",
    regions: said.filter((node) => ["polite", "assertive"].includes(property(node, "live"))).map(line),
  };
}
