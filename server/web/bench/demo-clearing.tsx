import type { FastifyInstance } from "fastify";
import { message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import type { ChangeBench } from "../settings/first-start.tsx";

/** POST /settings/demo-clearing ends the demonstration in one action; its ledger is set aside, never deleted. */
export function demoClearingRoute(app: FastifyInstance, demo: boolean, changeBench?: ChangeBench): void {
  app.post("/settings/demo-clearing", { preHandler: app.csrfProtection }, async (request, reply) => {
    if (demo && changeBench) {
      reply.raw.once("finish", () => changeBench("typed"));
      return reply.redirect("/", 303);
    }
    const sentence = demo ? message("demo.cannot-end") : message("demo.none");
    const frame = frameOf(request, reply, { path: "/settings", demo });
    return html(
      reply,
      page({
        ...frame,
        title: tellerOf(frame.locale)("frame.not-done"),
        main: <Problem message={sentence} />,
      }),
      demo ? 503 : 409,
    );
  });
}
