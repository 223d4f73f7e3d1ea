import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { Asking } from "../../../views/balances/asking.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { cableOf, checkedChoice } from "../../station/balance-choice.ts";
import { Refusal } from "../../weighing/refusal.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import type { BalanceForm } from "./balance-forms.ts";
import type { BalanceParts } from "./balance-parts.ts";
import { meaningOf } from "./balance-words.ts";

/** The request a balance must be sent before it answers, typed by its owner and agreed to. */
export function balanceAskingRoutes(
  app: FastifyInstance,
  { balance, demo }: BalanceParts,
  form: BalanceForm,
): void {
  function show(request: FastifyRequest, reply: FastifyReply, problem?: string): FastifyReply {
    const frame = frameOf(request, reply, { path: "/balances/asking", demo });
    const body = (request.body ?? {}) as Record<string, string>;
    const ask = balance.choice?.ask;
    const newest = balance.feed?.recent().at(-1);
    const main = (
      <Asking
        balance={balance.scale?.name ?? "balance, once one is chosen"}
        request={body.request ?? ask?.request ?? ""}
        when={body.when ?? ask?.when ?? "timer"}
        everySeconds={body.every ?? String((ask?.everyMs ?? 500) / 1000)}
        consented={body.consent === "yes"}
        {...(ask && {
          asking: {
            request: ask.request,
            lastAnswer: newest ? `Last answer: ${newest.raw} ${meaningOf(newest)}` : "Nothing came back yet.",
          },
        })}
        {...(problem === undefined ? {} : { problem })}
        csrfToken={frame.csrfToken}
      />
    );
    return html(
      reply,
      page({ ...frame, title: tellerOf(frame.locale)("balances.asking-title"), main }),
      problem === undefined ? 200 : 422,
    );
  }

  app.get("/balances/asking", (request, reply) => show(request, reply));

  form("/balances/asking", show, async (fields) => {
    const { choice } = balance;
    if (!choice) throw new Refusal("No balance on a cable is in use. Choose its port on Balances first.");
    if (cableOf(choice.address) === "usb-scale")
      throw new Refusal(`The USB scale on ${choice.address} sends by itself; nothing is asked of it.`);
    if (fields.consent !== "yes")
      throw new Refusal(
        "Nothing was sent and nothing was kept: tick that the request comes from the manual of this balance and only asks for a weight.",
      );
    const { request: asked = "", when = "timer", every = "0.5" } = fields;
    if (when !== "timer" && when !== "capture")
      throw new Refusal(`"${when}" is no time to ask. Choose one of the two.`);
    const seconds = Number(every.trim().replace(",", "."));
    if (!(seconds >= 0.1 && seconds <= 60))
      throw new Refusal(`Again after "${every}" s is out of range. Right: 0.1 to 60 s.`);
    const ask = { request: asked, when, everyMs: Math.round(seconds * 1000), ownerAgreed: true };
    await balance.choose(checkedChoice({ ...choice, ask }));
    return "/balances";
  });
  form("/balances/asking/end", show, async () => {
    if (!balance.choice?.ask) throw new Refusal("Nothing is asked at present.");
    const { ask: _before, ...rest } = balance.choice;
    await balance.choose(rest);
    return "/balances/asking";
  });
}
