import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { nameMessage } from "../../../drivers/balance-name.ts";
import { Asking, type AskingView } from "../../../views/balances/asking.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import type { Told } from "../../../views/told.tsx";
import { type BalanceChoice, cableOf, checkedChoice } from "../../station/balance-choice.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import { frameOf } from "../look.ts";
import { fieldsOf, html } from "../page-request.ts";
import type { BalanceForm } from "./balance-forms.ts";
import type { BalanceParts } from "./balance-parts.ts";
import { meaningOf } from "./now-view.ts";

/** The request a balance must be sent before it answers, typed by its owner and agreed to. */
export function balanceAskingRoutes(
  app: FastifyInstance,
  { balance, demo }: BalanceParts,
  form: BalanceForm,
): void {
  const show = (request: FastifyRequest, reply: FastifyReply, problem?: Told) => {
    const frame = frameOf(request, reply, { path: "/balances/asking", demo });
    const view = { ...askingView(balance, fieldsOf(request)), csrfToken: frame.csrfToken };
    const main = <Asking {...view} {...(problem === undefined ? {} : { problem })} />;
    const title = tellerOf(frame.locale)("balances.asking-title");
    return html(reply, page({ ...frame, title, main }), problem === undefined ? 200 : 422);
  };
  app.get("/balances/asking", (request, reply) => show(request, reply));
  form("/balances/asking", show, async (fields) => {
    if (!balance.choice) throw new Refusal("balance.none-in-use");
    await balance.choose(withRequest(balance.choice, fields));
    return "/balances";
  });
  form("/balances/asking/end", show, async () => {
    if (!balance.choice?.ask) throw new Refusal("balance.request.none");
    const { ask: _before, ...rest } = balance.choice;
    await balance.choose(rest);
    return "/balances/asking";
  });
}

function askingView(balance: BalanceInUse, typed: Record<string, string>): Omit<AskingView, "csrfToken"> {
  const ask = balance.choice?.ask;
  return {
    balance: balance.scale ? nameMessage(balance.scale.name) : message("balance.now.none"),
    request: typed.request ?? ask?.request ?? "",
    when: typed.when ?? ask?.when ?? "timer",
    everySeconds: typed.every ?? String((ask?.everyMs ?? 500) / 1000),
    consented: typed.consent === "yes",
    ...(ask && { asking: { request: ask.request, lastAnswer: lastAnswer(balance) } }),
  };
}

function lastAnswer({ stream }: BalanceInUse): Message {
  const newest = stream?.recent().at(-1);
  return newest
    ? message("balance.answer.last", { line: newest.raw, meaning: meaningOf(newest) })
    : message("balance.answer.none");
}

/** The choice with the request of the form. Throws Refusal naming what is wrong; nothing is sent then. */
function withRequest(choice: BalanceChoice, fields: Record<string, string>): BalanceChoice {
  const { request = "", when = "timer", every = "0.5", consent } = fields;
  if (cableOf(choice.address) === "usb-scale")
    throw new Refusal("balance.request.usb", { port: choice.address });
  if (consent !== "yes") throw new Refusal("balance.request.consent", {}, "consent");
  if (when !== "timer" && when !== "capture") throw new Refusal("balance.request.when", { when }, "when");
  const seconds = Number(every.trim().replace(",", "."));
  if (!(seconds >= 0.1 && seconds <= 60))
    throw new Refusal("balance.request.every", { seconds: every }, "every");
  const ask = { request, when, everyMs: Math.round(seconds * 1000), ownerAgreed: true };
  return checkedChoice({ ...choice, ask });
}
