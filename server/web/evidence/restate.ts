import { type Evaluate, isRefused } from "../../compute/evaluation.ts";
import { evidenceAsked } from "../../compute/evidence-of.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { standingBy } from "../../reports/stated.ts";
import { countingEvidence } from "../../weighing/counting-evidence.ts";
import { weighingOf } from "../../weighing/evolve.ts";
import { statement as frozen } from "../../weighing/kinds/result.ts";

/**
 * Freezes the statement of a record after one of its tests was added or set aside: its own request with every test that
 * counts. Writes nothing when the request of an earlier version cannot be evaluated any more. Throws LedgerTrouble.
 */
export async function restate(
  subject: string,
  { ledger, evaluate, program }: { ledger: Ledger; evaluate: Evaluate; program: string },
): Promise<void> {
  const entries = await ledger.entriesOf(subject);
  const { result, entry } = standingBy(entries);
  const tests = weighingOf(entries)?.tests ?? [];
  const evidence = countingEvidence(tests).map(evidenceAsked);
  const evaluation = await evaluate({ ...result.request, evidence }, { asksPerson: true });
  if (result.stops !== undefined) return;
  if (isRefused(evaluation)) return;
  const { request, statement } = evaluation;
  await ledger.append(
    "statement",
    subject,
    {
      of: entry.id,
      request: { ...request },
      statement: frozen.parse(statement),
      versions: { program, library: statement.versions.library },
    },
    { key: `statement-${entries.at(-1)?.id}` },
  );
}
