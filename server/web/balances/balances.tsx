import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { BalancesIndex, type BalancesPage } from "../../../views/balances/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import type { Sentence } from "../../../views/sentence.tsx";
import { type BalanceChoice, checkedChoice } from "../../station/balance-choice.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import type { Entries } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html } from "../page-request.ts";
import { balanceAskingRoutes } from "./balance-asking.tsx";
import { type AddForm, balanceForms, noEntries, portForm, type ShowAgain } from "./balance-forms.ts";
import { balanceLearningRoutes } from "./balance-learning.tsx";
import type { BalanceParts } from "./balance-parts.ts";
import { balanceProfileRoutes } from "./balance-profiles.tsx";
import { type BalancesLive, balancesLive, findingView } from "./balances-live.tsx";
import { besideOf } from "./now-view.ts";
import { portRows } from "./ports-view.ts";
import { profileHref } from "./profile-href.ts";

/** The Balances page and everything below it. Pages only watch; the server owns the port. */
export function balanceRoutes(app: FastifyInstance, parts: BalanceParts): void {
  const live = balancesLive(app, parts);
  const show = (request: FastifyRequest, reply: FastifyReply, problem?: Sentence) => {
    const frame = frameOf(request, reply, { path: "/balances", demo: parts.demo });
    const view = balancesPage(parts, live, frame, asTyped(request));
    const main = <BalancesIndex {...view} {...(problem === undefined ? {} : { problem })} />;
    const title = tellerOf(frame.locale)("balances.title");
    return html(reply, page({ ...frame, title, main }), problem === undefined ? 200 : 422);
  };
  app.get("/balances", (request, reply) => show(request, reply));
  app.get("/balances/live", (request, reply) => live.stream.join(request, reply, reply.generateCsrf()));
  const add = balanceForms(app, parts.demo);
  choiceForms(add, show, parts);
  besideForms(add, show, parts);
  answerForms(add, show, parts);
  searchForms(add, show, live);
  balanceAskingRoutes(app, parts, add);
  balanceLearningRoutes(app, parts, add);
  balanceProfileRoutes(app, parts, add);
}

/** Everything the page draws; what was typed stays in the form of the port. */
function balancesPage(
  { balance, profiles, demo }: BalanceParts,
  { now, search }: BalancesLive,
  { csrfToken, zone }: { csrfToken: string; zone: string },
  typed: Record<string, string>,
): BalancesPage {
  const { choice } = balance;
  const [speed, bits, ...flow] = (choice?.line ?? "9600-8n1").split("-");
  return {
    ...now(csrfToken),
    ports: portRows(balance),
    beside: besideOf(balance, zone),
    typed: {
      port: typed.port ?? choice?.address ?? "",
      line: typed.line ?? `${speed}-${bits}`,
      flow: typed.flow ?? (flow.length > 0 ? flow.join("-") : "none"),
    },
    finding: findingView(search),
    simulated: demo,
    profiles: profiles.all.map(({ name, version }) => ({
      name,
      version,
      href: profileHref(name),
      inUse: balance.profile?.name === name,
    })),
  };
}

/** A port with its line as typed; an entry that is left empty is taken from what was told of the port before. */
const choiceForm = ({ typed }: Entries) => z.object({ port: typed(), line: typed(), flow: typed() });
type Choice = z.output<ReturnType<typeof choiceForm>>;

/** What is told in the form, and what was told earlier about the balance at this address. */
function choiceOf(balance: BalanceInUse, { port: address, line, flow }: Choice): BalanceChoice {
  const before = balance.choiceAt(address);
  const asTyped = line || before?.line || "9600-8n1";
  const isWhole = flow === "" || flow === "none" || /-(rts-cts|xon-xoff)$/.test(asTyped);
  const whole = isWhole ? asTyped : `${asTyped}-${flow}`;
  return checkedChoice({ ...before, address, line: whole.toLowerCase() });
}

function choiceForms(add: AddForm, show: ShowAgain, { balance }: BalanceParts): void {
  const isBeside = ({ port, line }: Choice) =>
    line === "" && balance.others.some(({ address }) => address === port);
  add("/balances/choice", show, choiceForm, async (typed) => {
    await (isBeside(typed) ? balance.takeFrom(typed.port) : balance.choose(choiceOf(balance, typed)));
  });
  add("/balances/typed", show, noEntries, () => balance.choose(undefined));
}

function besideForms(add: AddForm, show: ShowAgain, { balance }: BalanceParts): void {
  add("/balances/beside", show, choiceForm, (typed) => balance.hearBeside(choiceOf(balance, typed)));
  add("/balances/beside/take", show, portForm, ({ port }) => balance.takeFrom(port));
  add("/balances/beside/end", show, portForm, ({ port }) => balance.endBeside(port));
}

const commaForm = ({ choice }: Entries) =>
  z.object({
    comma: choice(["decimal", "thousands"], {
      wrong: (comma) => message("balance.comma.unknown", { comma }),
    }),
  });
const lookedAtForm = ({ typed }: Entries) => z.object({ kind: typed() });

function answerForms(add: AddForm, show: ShowAgain, { balance, bench }: BalanceParts): void {
  add("/balances/comma", show, commaForm, async ({ comma }) => {
    if (!balance.choice) throw new Refusal("balance.none-in-use");
    await balance.choose({ ...balance.choice, comma });
  });
  add("/balances/looked-at", show, lookedAtForm, async ({ kind }) => {
    const check = bench.scale?.checks().find((one) => one.kind === kind)?.message;
    const { subject } = bench.about;
    if (check !== undefined)
      await bench.station.do({ do: "balance-looked-at", subject, seen: "now", kind, check });
  });
}

function searchForms(add: AddForm, show: ShowAgain, { search }: BalancesLive): void {
  add("/balances/finding", show, portForm, ({ port }) => {
    search.begin(port);
    return "/balances#finding-heading";
  });
  add("/balances/finding/stop", show, noEntries, () => {
    search.stop();
  });
}
