import { STATUS_CODES } from "node:http";
import type { FastifyReply } from "fastify";
import { z } from "zod";
import type { Message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tell } from "../../../views/messages/tell.ts";
import { computeError } from "../../compute/contract.ts";

/** Media type of a refusal: RFC 9457, section 3. */
const mediaType = "application/problem+json";

/** A refusal of the API by RFC 9457; `id` and `error` say it as a refused line of `compute` does. */
export const problem = z.strictObject({
  type: z.literal("about:blank"),
  title: z.string().describe("what the status means"),
  status: z.number().int(),
  detail: z.string().describe("what was refused, and what would be right"),
  code: z.string().describe("code of the refusal: stays the same in every language and version"),
  ...computeError.shape,
});

/** A refusal as the published document describes it. */
export const refused = { content: { [mediaType]: { schema: problem } } } as const;

interface Refused {
  message: Message;
  /** place of the fault in the request, or empty */
  at?: string;
  /** id of the request that was refused, where it had one */
  id?: string | null;
}

export function sendProblem(
  reply: FastifyReply,
  status: number,
  locale: Locale,
  { message, at = "", id = null }: Refused,
): FastifyReply {
  const detail = tell(message, locale);
  const body: z.infer<typeof problem> = {
    type: "about:blank",
    title: STATUS_CODES[status] ?? "",
    status,
    detail,
    code: message.code,
    id,
    error: { at, message: detail },
  };
  // as a text: the type would be lost where an answer is written as JSON by default
  return reply.code(status).type(mediaType).send(JSON.stringify(body));
}
