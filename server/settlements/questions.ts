import { compared, exactly, zero } from "../../calibration/fraction.ts";
import { type Message, message } from "../../calibration/message.ts";
import { flagsOf } from "../lots/flags.ts";
import type { Lot } from "../lots/lot.ts";
import type { LotItem } from "../lots/lot-item.ts";
import type { LotSums } from "../lots/totals.ts";
import type { Settled, Settlement } from "./settlement.ts";
import type { LeftOutReason } from "./source.ts";

/** Flags that say how a piece was weighed, and doubt nothing. */
const plain: ReadonlySet<string> = new Set(["typed", "voided"]);
/** Pieces are left out for these without anybody having to say so. */
const plainlyLeftOut: ReadonlySet<LeftOutReason> = new Set(["left-out", "no-metal"]);

/** Pieces with a flag that doubts them and that nobody has cleared. */
function flagged(items: readonly LotItem[], sums: LotSums, lot: Lot): LotItem[] {
  return items.filter(
    (item) =>
      !item.voided &&
      flagsOf(item, sums.checks, lot.flags).some(
        ({ flag, cleared }) => cleared === undefined && !plain.has(flag),
      ),
  );
}

/** What must be answered before a lot is closed, each once. */
export function closingQuestions(
  lot: Lot,
  items: readonly LotItem[],
  { sums, settled, settlement }: { sums: LotSums; settled: Settled | undefined; settlement: Settlement },
): Message[] {
  const questions: Message[] = [];
  const { missingG, withinG } = sums;
  if (missingG !== undefined && Math.abs(missingG) > withinG)
    questions.push(
      message(missingG > 0 ? "lot.asks.missing" : "lot.asks.excess", {
        difference_g: { decimal: Math.abs(missingG).toFixed(sums.decimals) },
        within_g: { decimal: withinG.toFixed(sums.decimals) },
      }),
    );
  const doubted = flagged(items, sums, lot);
  if (doubted.length > 0)
    questions.push(
      message("lot.asks.flagged", {
        flagged: doubted.length,
        pieces: items.filter(({ voided }) => !voided).length,
        tickets: doubted.map(({ ticket }) => ticket),
      }),
    );
  if (!settled) return questions;
  const unpaid = settled.left_out.filter(({ why }) => !plainlyLeftOut.has(why));
  if (unpaid.length > 0)
    questions.push(
      message("lot.asks.left-out", {
        pieces: new Set(unpaid.map(({ id }) => id)).size,
        tickets: [...new Set(unpaid.map(({ ticket }) => ticket))],
      }),
    );
  for (const { metal, currency, fee, pay, net, fine_g } of settled.metals) {
    if (compared(exactly(net[settled.pays]), zero) < 0)
      questions.push(
        message("lot.asks.fee", {
          metal: message(`lots.metals.${metal}`),
          fee: { decimal: fee },
          pay: { decimal: pay[settled.pays] },
          currency,
        }),
      );
    const covers = settlement.prices[metal]?.at(-1)?.covers_g;
    if (covers !== undefined && compared(exactly(fine_g[settled.pays]), exactly(covers)) > 0)
      questions.push(
        message("lot.asks.above-covered", {
          metal: message(`lots.metals.${metal}`),
          fine_g: { decimal: fine_g[settled.pays] },
          covers_g: { decimal: covers },
        }),
      );
  }
  return questions;
}
