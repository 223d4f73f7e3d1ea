import type { FastifyReply } from "fastify";
import { message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { frameOf } from "../look.ts";
import { html } from "../page-request.ts";

/** The page for a lot that is not in the ledger, 404. */
export function noLotPage(reply: FastifyReply, around: ReturnType<typeof frameOf>): FastifyReply {
  const title = tellerOf(around.locale)("lots.none");
  return html(reply, page({ ...around, title, main: <Problem message={message("lot.none")} /> }), 404);
}
