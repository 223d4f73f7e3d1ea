import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { WebhooksPage, type WebhooksView } from "../../../views/settings/webhooks.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { type WebhookState, webhooksOf } from "../../webhooks/keep-delivering.ts";
import { type Entries, postedForm, refuse } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html } from "../page-request.ts";

interface Parts {
  ledger: Ledger;
  demo: boolean;
  /** how it stands with each address; none on a bench that tells nobody */
  states: () => readonly WebhookState[];
}

/** Addresses of other systems that are told of what happens, one a line. */
export function webhookRoutes(app: FastifyInstance, { ledger, demo, states }: Parts): void {
  async function show(
    request: FastifyRequest,
    reply: FastifyReply,
    shown: Partial<Pick<WebhooksView, "problems" | "urls">> = {},
  ) {
    const frame = frameOf(request, reply, { path: "/settings", demo });
    const view: WebhooksView = {
      urls: (await webhooksOf(ledger)).map(({ url }) => url).join("\n"),
      states: states(),
      publicKey: ledger.key?.publicKey ?? null,
      keyId: ledger.key?.keyId ?? null,
      problems: [],
      csrfToken: frame.csrfToken,
      ...shown,
    };
    const title = tellerOf(frame.locale)("webhooks.title");
    return html(
      reply,
      page({ ...frame, title, main: <WebhooksPage {...view} /> }),
      view.problems.length > 0 ? 422 : 200,
    );
  }

  app.get("/settings/webhooks", (request, reply) => show(request, reply));

  app.post("/settings/webhooks", { preHandler: app.csrfProtection }, async (request, reply) => {
    const read = postedForm(request, webhooksForm);
    if ("problems" in read)
      return show(request, reply, { problems: read.problems, urls: asTyped(request).urls ?? "" });
    await ledger.append("webhooks", "webhooks", read.values);
    return reply.redirect("/settings/webhooks", 303);
  });
}

const most = 8;

const webhooksForm = ({ lines }: Entries) =>
  z.object({
    urls: lines().transform((urls, context) => {
      const wrong = urls.find((typed) => !isAddress(typed));
      if (wrong !== undefined) refuse(context, message("webhooks.no-address", { typed: wrong.slice(0, 80) }));
      if (urls.length > most) refuse(context, message("webhooks.too-many", { most, count: urls.length }));
      return [...new Set(urls)];
    }),
  });

/** An address over http or https, without a password, which would stand in the ledger for good. */
function isAddress(typed: string): boolean {
  if (!URL.canParse(typed) || typed.length > 300) return false;
  const { protocol, username, password } = new URL(typed);
  return /^https?:$/.test(protocol) && username === "" && password === "";
}
