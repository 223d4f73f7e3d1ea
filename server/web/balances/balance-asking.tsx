import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { nameMessage } from "../../../drivers/balance-name.ts";
import { Asking, type AskingView } from "../../../views/balances/asking.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import type { Sentence } from "../../../views/sentence.tsx";
import { cableOf, checkedChoice } from "../../station/balance-choice.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import type { Entries } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html } from "../page-request.ts";
import { type AddForm, noEntries } from "./balance-forms.ts";
import type { BalanceParts } from "./balance-parts.ts";
import { meaningOf } from "./now-view.ts";

/** The request a balance must be sent before it answers, typed by its owner and agreed to. */
export function balanceAskingRoutes(
  app: FastifyInstance,
  { balance, demo }: BalanceParts,
  add: AddForm,
): void {
  const show = (request: FastifyRequest, reply: FastifyReply, problem?: Sentence) => {
    const frame = frameOf(request, reply, { path: "/balances/asking", demo });
    const view = { ...askingView(balance, asTyped(request)), csrfToken: frame.csrfToken };
    const main = <Asking {...view} {...(problem === undefined ? {} : { problem })} />;
    const title = tellerOf(frame.locale)("balances.asking-title");
    return html(reply, page({ ...frame, title, main }), problem === undefined ? 200 : 422);
  };
  app.get("/balances/asking", (request, reply) => show(request, reply));
  add("/balances/asking", show, askForm, async (ask) => {
    if (!balance.choice) throw new Refusal("balance.none-in-use");
    const { address: port } = balance.choice;
    if (cableOf(port) === "usb-scale") throw new Refusal("balance.request.usb", { port });
    await balance.choose(checkedChoice({ ...balance.choice, ask }));
  });
  add("/balances/asking/end", show, noEntries, async () => {
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

/** The request that its owner agreed to; nothing is sent while an entry of it is wrong. */
const askForm = ({ exact, choice, number, box }: Entries) =>
  z
    .object({
      consent: box().refine((agreed) => agreed, {
        params: { message: message("balance.request.consent") },
      }),
      request: exact(),
      when: choice(["timer", "capture"], {
        first: "timer",
        wrong: (when) => message("balance.request.when", { when }),
      }),
      every: number({ unit: "s", from: 0.1, to: 60 }).prefault("0.5"),
    })
    .transform(({ request, when, every }) => ({
      request,
      when,
      everyMs: Math.round(every * 1000),
      ownerAgreed: true as const,
    }));
