import type { FastifyInstance } from "fastify";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { StatisticsIndex } from "../../../views/statistics/index.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import { frameOf } from "../look.ts";
import { html, queryOf } from "../page-request.ts";
import { statisticsOf } from "./statistics-view.ts";

interface StatisticsParts {
  ledger: Ledger;
  demo: boolean;
  library: () => Library;
  now: () => Date;
}

/** What was measured, counted by time, operator, claim, customer and lot, and the scatter of the bench. */
export function statisticsRoute(app: FastifyInstance, { ledger, demo, library, now }: StatisticsParts): void {
  app.get("/records/statistics", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/records", demo });
    const view = await statisticsOf(ledger, queryOf(request), {
      library: library(),
      manner: frame,
      now: now(),
    });
    const title = tellerOf(frame.locale)("statistics.title");
    return html(reply, page({ ...frame, title, main: <StatisticsIndex {...view} /> }));
  });
}
