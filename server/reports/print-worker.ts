import { parentPort } from "node:worker_threads";
import { labelPdf } from "./label.ts";
import { reportPdf } from "./pdf.ts";
import type { Answer, Paper } from "./print-thread.ts";
import { settlementPdf } from "./settlement-paper.ts";

function drawn(asked: Paper): Promise<Buffer> {
  if (asked.paper === "report") return reportPdf(asked.of);
  return asked.paper === "settlement" ? settlementPdf(asked.of) : labelPdf(asked.of);
}

parentPort?.on("message", async ({ number, ...asked }: Paper & { number: number }) => {
  let answer: Answer;
  try {
    answer = { number, pdf: await drawn(asked as Paper) };
  } catch (error) {
    answer = {
      number,
      failed: error instanceof Error ? (error.stack ?? error.message) : String(error),
    };
  }
  parentPort?.postMessage(answer);
});
