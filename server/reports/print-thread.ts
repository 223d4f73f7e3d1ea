import type { Report } from "../../views/reports/report.ts";
import { askedThread, startThread } from "../asked-thread.ts";
import type { Label } from "./label.ts";
import type { SettlementPaper } from "./settlement-paper.ts";

/** A paper, with everything that stands on it. */
export type Paper =
  | { paper: "report"; of: Report }
  | { paper: "settlement"; of: SettlementPaper }
  | { paper: "label"; of: Label };

export type Answer = { number: number } & ({ pdf: Uint8Array } | { failed: string });

/** Half a second of work for a page: it is done in a thread of its own, so that the live line goes on. */
const thread = askedThread<Paper, Answer>("The printing thread", () =>
  startThread("print-worker", import.meta.url),
);

/** The paper as PDF; the same paper gives the same bytes. Rejects where it cannot be drawn. */
export async function printedPdf(paper: Paper): Promise<Buffer> {
  const answer = await thread.ask(paper);
  if ("failed" in answer) throw new Error(answer.failed);
  return Buffer.from(answer.pdf);
}
