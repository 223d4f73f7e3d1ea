import type { FastifyReply } from "fastify";
import { type Message, message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { frameOf } from "../look.ts";
import { html } from "../page-request.ts";

/** For a piece that has no record. */
export function noRecord(subject: string): Message {
  return message("record.not-here", { subject });
}

/** The same as a page, 404. */
export function noRecordPage(reply: FastifyReply, around: ReturnType<typeof frameOf>, subject: string) {
  const t = tellerOf(around.locale);
  return html(
    reply,
    page({ ...around, title: t("records.none"), main: <Problem message={noRecord(subject)} /> }),
    404,
  );
}
