import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import type { Entry } from "../../ledger/entry.ts";
import type { LotItem } from "../../lots/lot-item.ts";
import type { SettlementManner } from "../../reports/settlement-sheet.ts";

/** Who said something, with whom and why. */
interface Signed {
  by?: string | undefined;
  second?: string | undefined;
  reason?: string | undefined;
}

/** Every word on a piece and on whom to believe, newest first, with who, when and why. */
export function termsSoFar(
  entries: readonly Entry[],
  items: readonly LotItem[],
  { locale, when }: SettlementManner,
): string[] {
  const t = tellerOf(locale);
  const ticketOf = (id: string) => items.find((item) => item.id === id)?.ticket ?? id;
  return entries
    .flatMap((entry): string[] => {
      const signed = ({ by, second, reason }: Signed) => ({
        when: when(entry.at),
        by: second === undefined ? (by ?? "–") : t("signed.with-second", { by: by ?? "–", second }),
        reason: reason ?? "–",
      });
      switch (entry.kind) {
        case "lot-terms": {
          const { piece, deducted_g, fineness, withdrawn = [] } = entry.body;
          const said = [
            ...(deducted_g === undefined
              ? []
              : [t("settlement.said.deducted", { grams: inLocale(deducted_g, locale) })]),
            ...(fineness
              ? [
                  t("settlement.said.fineness", {
                    permille: inLocale(fineness.permille, locale),
                    metal: fineness.metal ? t(`lots.metals.${fineness.metal}`) : "",
                    source: t(`payout.sayers.${fineness.saidBy}`),
                  }),
                ]
              : []),
            ...withdrawn.map(({ saidBy, metal }) =>
              t("settlement.said.withdrawn", {
                metal: t(`lots.metals.${metal}`),
                source: t(`payout.sayers.${saidBy}`),
              }),
            ),
          ].join("; ");
          return [t("settlement.said.of-piece", { ticket: ticketOf(piece), said, ...signed(entry.body) })];
        }
        case "settlement-decision": {
          const { piece, pays, mass } = entry.body;
          const said = pays ? t(`settlement.pays-mass.${mass}`) : t("settlement.decision.leave-out");
          return [t("settlement.said.of-piece", { ticket: ticketOf(piece), said, ...signed(entry.body) })];
        }
        case "settlement-trust": {
          const { trust, pays, narrowed } = entry.body;
          const order = trust.map((source) => t(`payout.sayers.${source}`)).join(" > ");
          return [
            t("settlement.said.trust", {
              order,
              pays: `${t(`settlement.pays.${pays}`)}; ${t(narrowed ? "settlement.trust.narrowed" : "settlement.trust.unnarrowed")}`,
              ...signed(entry.body),
            }),
          ];
        }
        default:
          return [];
      }
    })
    .reverse();
}
