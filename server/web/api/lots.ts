import type { FastifyInstance } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import type { Entry } from "../../ledger/entry.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { lotOf } from "../../lots/evolve.ts";
import type { Lot } from "../../lots/lot.ts";
import { LotRepository } from "../../lots/lot-repository.ts";
import { meltsWith } from "../../melts/melt-repository.ts";
import type { Library } from "../../metals/library.ts";
import { settlementOf } from "../../settlements/evolve.ts";
import { currentPrices } from "../../settlements/settlement.ts";
import { settlementAfter } from "../../settlements/settlement-repository.ts";
import { languageOf } from "./language.ts";
import { refused, sendProblem } from "./problem.ts";
import { needsToken, type RequireScope, refusals } from "./require-scope.ts";
import { lotList, oneLot } from "./shapes.ts";

/** The newest lots, and one lot with its pieces. */
export function lotsOfApi(
  app: FastifyInstance,
  ledger: Ledger,
  library: () => Library,
  requireScope: RequireScope,
): void {
  const lots = new LotRepository(ledger);
  const typed = app.withTypeProvider<ZodTypeProvider>();
  typed.get(
    "/api/lots",
    {
      onRequest: requireScope("lots:read"),
      schema: {
        operationId: "listLots",
        summary: "Lots, newest first",
        ...needsToken("lots:read"),
        querystring: z.strictObject({ size: z.coerce.number().int().min(1).max(500).default(50) }),
        response: { 200: lotList, ...refusals },
      },
    },
    async ({ query: { size } }) => ({
      lots: (await lots.newest(size)).map(({ lot, entries, pieces }) => lotBody(lot, entries, pieces)),
    }),
  );
  typed.get(
    "/api/lots/:id",
    {
      onRequest: requireScope("lots:read"),
      schema: {
        operationId: "getLot",
        summary: "One lot with its pieces",
        ...needsToken("lots:read"),
        params: z.strictObject({ id: z.string() }),
        response: { 200: oneLot, ...refusals, 404: refused },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const entries = await ledger.entriesOf(id);
      const lot = lotOf(entries);
      if (!lot)
        return sendProblem(reply, 404, languageOf(request), {
          message: message("api.refused.no-lot", { id }),
          at: "id",
        });
      const items = await lots.items(id, library());
      return {
        lot: lotBody(lot, entries, items.filter(({ voided }) => !voided).length),
        pieces: items.map(({ id: piece, ticket, claim, state, typed, voided, ...item }) => ({
          id: piece,
          ticket,
          claim,
          state,
          mass_g: item.massG,
          dry_g: item.dryG,
          density_g_cm3: item.density?.value ?? null,
          expanded_g_cm3: item.density?.expanded ?? null,
          typed,
          voided,
        })),
        settlement:
          (lot.closed
            ? lot.closed.settlement
            : settlementAfter(entries, items, { melts: await meltsWith(ledger, id) })?.settled) ?? null,
      };
    },
  );
}

/** A lot with its prices that count, by their metal. */
function lotBody(lot: Lot, entries: readonly Entry[], pieces: number) {
  const prices = currentPrices(settlementOf(entries)).map((price) => [price.metal, price] as const);
  return { ...lot, prices: Object.fromEntries(prices), pieces };
}
