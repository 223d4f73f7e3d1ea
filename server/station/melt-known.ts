import { Refusal } from "../../calibration/refusal.ts";
import { LotRepository } from "../lots/lot-repository.ts";
import { decimalsOf } from "../lots/totals.ts";
import type { MeltCommand } from "../melts/commands.ts";
import type { MeltedLot, MeltKnown } from "../melts/decide.ts";
import { meltsWith } from "../melts/melt-repository.ts";
import { builtIn } from "../metals/library.ts";
import { standingDecision } from "../settlements/held-back.ts";
import { lotSettlement } from "../settlements/settlement-repository.ts";
import type { BenchParts } from "./bench-parts.ts";

/** What a decision on a melt rests on; lots and the record of a bar are only read where they count. Throws Refusal. */
export async function meltKnown(command: MeltCommand, parts: BenchParts): Promise<MeltKnown> {
  const { ledger, people } = parts;
  const lots: MeltedLot[] = [];
  if (command.do === "make-melt") for (const id of command.melt.lots) lots.push(await meltedLot(id, parts));
  const bar = command.do === "pour-melt" ? command.poured.bar : undefined;
  const records = bar === undefined ? [] : await ledger.entriesOf(bar);
  return { lots, isMeasured: records.some(({ kind }) => kind === "result"), people: people?.() };
}

/** The pieces that count and that nobody left out, without what is taken off them. */
async function meltedLot(id: string, { ledger, library }: BenchParts): Promise<MeltedLot> {
  const lots = new LotRepository(ledger);
  const found = await lotSettlement(id, { ledger, lots, library: library?.() ?? builtIn });
  if (!found) throw new Refusal("lot.none", {}, "lots");
  const { lot, evidence, settlement } = found;
  const melted = evidence.flatMap((one) => {
    const terms = settlement.terms[one.item.id] ?? { fineness: [] };
    const isLeftOut = standingDecision(one, terms)?.body.pays === false;
    return one.item.counts && !isLeftOut ? [{ ...one.item, offG: Number(terms.deducted?.value ?? 0) }] : [];
  });
  if (melted.length === 0) throw new Refusal("melt.lot-empty", { lot: lot.name }, "lots");
  const [melt] = await meltsWith(ledger, id);
  const stepsG = melted.map(({ stepG }) => stepG);
  return {
    id,
    name: lot.name,
    sumG: melted.reduce((sum, { dryG, offG }) => sum + dryG - offG, 0),
    stepsG,
    decimals: decimalsOf(Math.max(...stepsG)),
    ...(melt ? { meltedIn: melt.name } : {}),
  };
}
