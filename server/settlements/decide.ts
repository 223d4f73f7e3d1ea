import { compared, exactly } from "../../calibration/fraction.ts";
import type { Message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Happened } from "../ledger/ledger.ts";
import type { Lot } from "../lots/lot.ts";
import type { TotalsAtClosing } from "../lots/totals-at-closing.ts";
import type { Library } from "../metals/library.ts";
import type { SettlementCommand } from "./commands.ts";
import { dryMass } from "./counted-item.ts";
import { settlementWith } from "./evolve.ts";
import type { ItemEvidence } from "./item-evidence.ts";
import { limitOfChange, type Policy } from "./limit-of-change.ts";
import { type NamedPerson, namedBy, reasonOf, secondTo } from "./person.ts";
import { settle } from "./settle.ts";
import { currentPrices, type ItemTerms, type Settlement, totalsText } from "./settlement.ts";

/** What a decision on a settlement rests on beside the lot itself. */
export interface SettlementKnown {
  settlement: Settlement;
  items: readonly ItemEvidence[];
  /** what the lot came to, as it is written when it is closed */
  totals: TotalsAtClosing;
  /** what must be answered before it is closed, by its code */
  questions: readonly Message[];
  /** above which a second person agrees to a change; left out where nobody is asked */
  policy?: Policy;
  /** the metals that claims name */
  library: Library;
  /** who may sign in at this house; nobody where nobody signs in */
  people?: readonly NamedPerson[] | undefined;
  /** ticket of an item of the lot that is still being weighed */
  onBench?: string;
}

/** What happens when this is asked of the settlement: the entries to write. Pure. Throws Refusal when it is not done. */
export function decideSettlement(
  lot: Lot | undefined,
  command: SettlementCommand,
  known: SettlementKnown,
): Happened[] {
  if (!lot) throw new Refusal("lot.none");
  if (command.do === "reopen-lot") return reopened(lot, command, known);
  if (command.do === "keep-print") {
    const { print } = command;
    if (!lot.closings.some(({ entry }) => entry === print.closing))
      throw new Refusal("lot.not-closed", { lot: lot.name });
    return [{ kind: "settlement-printed", body: print }];
  }
  if (lot.closed) throw new Refusal("lot.closed", { lot: lot.name });
  if (command.do === "close-lot") return closed(lot, command, known);
  return agreed(changeOf(command, known), known);
}

type Changing = Exclude<SettlementCommand, { do: "close-lot" | "reopen-lot" | "keep-print" }>;

/** What a change of the settlement writes, each with its name and reason where it needs them. */
function changeOf(command: Changing, known: SettlementKnown): Happened[] {
  switch (command.do) {
    case "lock-price":
      return [{ kind: "lot-price", body: promised(command.price, known.settlement) }];
    case "state-terms":
      return command.terms.map((terms) => ({ kind: "lot-terms", body: stated(terms, known) }));
    case "decide-item":
      return [{ kind: "settlement-decision", body: decided(command.decision, known) }];
    case "state-trust": {
      const { by, reason } = command.trust;
      const body = { ...command.trust, by: namedBy(by), reason: reasonOf(reason) };
      return [{ kind: "settlement-trust", body }];
    }
  }
}

/** The same with the second person who agrees to it, above a limit of the house. Throws Refusal without one. */
function agreed(happened: Happened[], known: SettlementKnown): Happened[] {
  const { settlement, items, policy, library, people } = known;
  const bodies = happened.map(({ body }) => body as { piece?: string; by?: string; second?: string });
  const pieces = bodies.flatMap(({ piece }) => piece ?? []);
  const next = settlementWith(settlement, happened);
  const isPaid = (of: Settlement) => currentPrices(of).length > 0;
  const limit =
    policy &&
    limitOfChange(
      {
        items: items.flatMap(({ item }) => (pieces.length === 0 || pieces.includes(item.id) ? [item] : [])),
        isOfLot: pieces.length === 0,
        before: isPaid(settlement) ? settle(items, settlement) : undefined,
        after: isPaid(next) ? settle(items, next) : undefined,
        prices: currentPrices(next),
      },
      policy,
      library,
    );
  return happened.map((one, place) => {
    const { second: _, ...body } = one.body as { second?: string };
    const { by, second = "" } = bodies[place] ?? {};
    if (limit === undefined && second.trim() === "") return { ...one, body } as Happened;
    const named = secondTo(namedBy(by), second, { ...(limit === undefined ? {} : { limit }), people });
    return { ...one, body: { ...body, second: named } } as Happened;
  });
}

/** A price is a promise: a second one for the same metal says who changed it and why. */
function promised(price: BodyOf<"lot-price">, { prices }: Settlement): BodyOf<"lot-price"> {
  if (!prices[price.metal]?.length) return price;
  return { ...price, by: namedBy(price.by), reason: reasonOf(price.reason) };
}

function stated(terms: BodyOf<"lot-terms">, { settlement, items }: SettlementKnown): BodyOf<"lot-terms"> {
  const { deducted_g, fineness, withdrawn = [] } = terms;
  const { evidence, before } = itemOf(terms.piece, items, settlement);
  if (deducted_g === undefined && !fineness && withdrawn.length === 0)
    throw new Refusal("settlement.nothing-stated", {}, "deducted");
  if (deducted_g !== undefined) mustBeLess(deducted_g, evidence, "deducted");
  const metal = fineness?.metal ?? evidence.item.metal;
  if (fineness && metal === null)
    throw new Refusal("settlement.which-metal", { ticket: evidence.item.ticket }, "metal");
  const isChange =
    withdrawn.length > 0 ||
    (deducted_g !== undefined && before.deducted !== undefined) ||
    (fineness !== undefined &&
      before.fineness.some(
        (one) => one.saidBy === fineness.saidBy && (one.metal ?? evidence.item.metal) === metal,
      ));
  const reason = terms.reason?.trim() ?? "";
  return {
    ...terms,
    ...(fineness && metal !== null ? { fineness: { ...fineness, metal } } : {}),
    by: namedBy(terms.by),
    ...(isChange ? { reason: reasonOf(reason) } : reason === "" ? {} : { reason }),
  };
}

function decided(
  decision: BodyOf<"settlement-decision">,
  { settlement, items }: SettlementKnown,
): BodyOf<"settlement-decision"> {
  const { evidence, before } = itemOf(decision.piece, items, settlement);
  const { again, ticket } = evidence.item;
  if (decision.mass === "again") {
    if (!again) throw new Refusal("settlement.not-weighed-again", { ticket }, "mass");
    if (compared(exactly(before.deducted?.value ?? "0"), exactly(again.reading)) >= 0)
      throw new Refusal(
        "settlement.deduction-too-large",
        { ticket, dry_g: { decimal: again.reading } },
        "mass",
      );
  }
  return { ...decision, by: namedBy(decision.by), reason: reasonOf(decision.reason) };
}

function itemOf(
  id: string,
  items: readonly ItemEvidence[],
  { terms }: Settlement,
): { evidence: ItemEvidence; before: ItemTerms } {
  const evidence = items.find(({ item }) => item.id === id);
  if (!evidence) throw new Refusal("lot.ticket-unknown", { ticket: id }, "ticket");
  return { evidence, before: terms[id] ?? { fineness: [] } };
}

function mustBeLess(deducted: string, evidence: ItemEvidence, at: string): void {
  if (compared(exactly(deducted), dryMass(evidence.item)) < 0) return;
  const { ticket, dryG: dry_g } = evidence.item;
  throw new Refusal("settlement.deduction-too-large", { ticket, dry_g }, at);
}

function closed(
  lot: Lot,
  { answers, note, by, shown }: Extract<SettlementCommand, { do: "close-lot" }>,
  { onBench, questions, totals, items, settlement }: SettlementKnown,
): Happened[] {
  if (onBench !== undefined) throw new Refusal("lot.item-on-bench", { ticket: onBench });
  const isPaid = currentPrices(settlement).length > 0;
  const open = questions.filter(({ code }) => (answers[code]?.trim() ?? "") === "");
  if (open[0]) throw new Refusal("lot.closing-asks", { questions: open }, `answer-${open[0].code}`);
  const settlementNow = isPaid ? settle(items, settlement) : undefined;
  const now = settlementNow === undefined ? "" : totalsText(settlementNow);
  if (shown !== undefined && shown !== now) throw new Refusal("settlement.changed", { shown, now });
  const version = lot.closings.length + 1;
  const name = isPaid || questions.length > 0 ? namedBy(by) : by.trim();
  return [
    {
      kind: "lot-closed",
      body: {
        ...totals,
        ...(name === "" ? {} : { by: name }),
        ...(note.trim() === "" ? {} : { note: note.trim() }),
        ...(questions.length === 0
          ? {}
          : { answers: questions.map((asked) => ({ asked, found: (answers[asked.code] ?? "").trim() })) }),
        ...(settlementNow ? { settlement: settlementNow } : {}),
        version,
      },
      key: version === 1 ? `closed-${lot.id}` : `closed-${lot.id}-${version}`,
    },
  ];
}

function reopened(
  lot: Lot,
  command: Extract<SettlementCommand, { do: "reopen-lot" }>,
  { people }: SettlementKnown,
): Happened[] {
  if (!lot.closed) throw new Refusal("lot.not-closed", { lot: lot.name });
  const by = namedBy(command.by);
  const second = secondTo(by, command.second, { people });
  return [
    {
      kind: "lot-reopened",
      body: { closing: lot.closed.entry, reason: reasonOf(command.reason), by, second },
    },
  ];
}
