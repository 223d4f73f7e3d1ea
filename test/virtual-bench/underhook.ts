import { spawn } from "node:child_process";
import { createInterface } from "node:readline";
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

/** The built command line, kept running. */
export interface Underhook {
  /** Feeds requests as JSON Lines and gives the answers, in order. */
  compute(requests: readonly unknown[]): Promise<Answer[]>;
  close(): void;
}

export function startUnderhook(): Underhook {
  const child = spawn(process.execPath, [built, "compute"], { stdio: ["pipe", "pipe", "inherit"] });
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  return {
    async compute(requests) {
      const written = (async () => {
        for (const request of requests)
          if (!child.stdin.write(`${JSON.stringify(request)}\n`))
            await new Promise((resolve) => child.stdin.once("drain", resolve));
      })();
      const answers: Answer[] = [];
      while (answers.length < requests.length) {
        const { done, value } = await lines.next();
        if (done)
          throw new Error(`The command line ended after ${answers.length} of ${requests.length} answers.`);
        answers.push(JSON.parse(value) as Answer);
      }
      await written;
      return answers;
    },
    close: () => child.stdin.end(),
  };
}

/** Answers a few requests by a command line of their own. */
export async function compute(requests: readonly unknown[]): Promise<Answer[]> {
  const underhook = startUnderhook();
  try {
    return await underhook.compute(requests);
  } finally {
    underhook.close();
  }
}
