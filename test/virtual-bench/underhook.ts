import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const built = fileURLToPath(new URL("../../dist/server/underhook.js", import.meta.url));

export interface StatedCheck {
  code: string;
  severity: "stop" | "warn";
  params: Record<string, unknown>;
}

/** What of an answer the virtual bench looks at. */
export interface Answer {
  id: string;
  density_g_cm3: number | null;
  expanded_g_cm3: number | null;
  interval_g_cm3: [number, number] | null;
  interval_from: "gum" | "monte-carlo" | null;
  checks: StatedCheck[];
  conformity: { state: string };
  error?: { at: string; message: string };
}

/** Feeds requests to the built command line as JSON Lines and collects the answers, in order. */
export async function compute(requests: Iterable<unknown>): Promise<Answer[]> {
  const child = spawn(process.execPath, [built, "compute"], { stdio: ["pipe", "pipe", "inherit"] });
  const chunks: Buffer[] = [];
  child.stdout.on("data", (chunk: Buffer) => chunks.push(chunk));
  const ended = new Promise((resolve, reject) => {
    child.on("close", resolve);
    child.on("error", reject);
  });
  for (const request of requests)
    if (!child.stdin.write(`${JSON.stringify(request)}\n`))
      await new Promise((resolve) => child.stdin.once("drain", resolve));
  child.stdin.end();
  await ended;
  return Buffer.concat(chunks)
    .toString("utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as Answer);
}
