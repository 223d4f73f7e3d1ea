import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { Refusal } from "../../../calibration/refusal.ts";
import { BalancesIndex, type BalancesPage } from "../../../views/balances/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import type { Told } from "../../../views/told.tsx";
import { type BalanceChoice, checkedChoice } from "../../station/balance-choice.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import { frameOf } from "../look.ts";
import { fieldsOf, html } from "../page-request.ts";
import { balanceAskingRoutes } from "./balance-asking.tsx";
import { type BalanceForm, balanceForms, type ShowAgain } from "./balance-forms.ts";
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
  const show = (request: FastifyRequest, reply: FastifyReply, problem?: Told) => {
    const frame = frameOf(request, reply, { path: "/balances", demo: parts.demo });
    const view = balancesPage(parts, live, frame.csrfToken, fieldsOf(request));
    const main = <BalancesIndex {...view} {...(problem === undefined ? {} : { problem })} />;
    const title = tellerOf(frame.locale)("balances.title");
    return html(reply, page({ ...frame, title, main }), problem === undefined ? 200 : 422);
  };
  app.get("/balances", (request, reply) => show(request, reply));
  app.get("/balances/live", (request, reply) => live.stream.join(request, reply, reply.generateCsrf()));
  const form = balanceForms(app, parts.demo);
  choiceForms(form, show, parts);
  besideForms(form, show, parts);
  answerForms(form, show, parts);
  searchForms(form, show, live);
  balanceAskingRoutes(app, parts, form);
  balanceLearningRoutes(app, parts, form);
  balanceProfileRoutes(app, parts, form);
}

/** Everything the page draws; what was typed stays in the form of the port. */
function balancesPage(
  { balance, profiles, demo }: BalanceParts,
  { now, search }: BalancesLive,
  csrfToken: string,
  typed: Record<string, string>,
): BalancesPage {
  const { choice } = balance;
  const [speed, bits, ...flow] = (choice?.line ?? "9600-8n1").split("-");
  return {
    ...now(csrfToken),
    ports: portRows(balance),
    beside: besideOf(balance),
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

/** What is told in the form, and what was told earlier about the balance at this address. */
function choiceIn(
  balance: BalanceInUse,
  { port = "", line, flow = "none" }: Record<string, string>,
): BalanceChoice {
  const address = port.trim();
  const before = balance.told(address);
  const asTyped = line?.trim() || before?.line || "9600-8n1";
  const whole = flow === "none" || /-(rts-cts|xon-xoff)$/.test(asTyped) ? asTyped : `${asTyped}-${flow}`;
  return checkedChoice({ ...before, address, line: whole.toLowerCase() });
}

function choiceForms(form: BalanceForm, show: ShowAgain, { balance }: BalanceParts): void {
  form("/balances/choice", show, async (fields) => {
    const address = fields.port?.trim() ?? "";
    const isBeside = fields.line === undefined && balance.others.some((one) => one.address === address);
    await (isBeside ? balance.takeFrom(address) : balance.choose(choiceIn(balance, fields)));
    return "/balances";
  });
  form("/balances/typed", show, async () => {
    await balance.choose(undefined);
    return "/balances";
  });
}

function besideForms(form: BalanceForm, show: ShowAgain, { balance }: BalanceParts): void {
  form("/balances/beside", show, async (fields) => {
    await balance.hearBeside(choiceIn(balance, fields));
    return "/balances";
  });
  form("/balances/beside/take", show, async ({ port = "" }) => {
    await balance.takeFrom(port);
    return "/balances";
  });
  form("/balances/beside/end", show, async ({ port = "" }) => {
    await balance.endBeside(port);
    return "/balances";
  });
}

function answerForms(form: BalanceForm, show: ShowAgain, { balance, bench }: BalanceParts): void {
  form("/balances/comma", show, async ({ comma = "" }) => {
    if (!balance.choice) throw new Refusal("balance.none-in-use");
    if (comma !== "decimal" && comma !== "thousands") throw new Refusal("balance.comma.unknown", { comma });
    await balance.choose({ ...balance.choice, comma });
    return "/balances";
  });
  form("/balances/looked-at", show, async ({ kind = "" }) => {
    const check = bench.scale?.checks().find((one) => one.kind === kind)?.message;
    const { subject } = bench.about;
    if (check !== undefined)
      await bench.station.do({ do: "balance-looked-at", subject, seen: "now", kind, check });
    return "/balances";
  });
}

function searchForms(form: BalanceForm, show: ShowAgain, { search }: BalancesLive): void {
  form("/balances/finding", show, async ({ port = "" }) => {
    search.begin(port.trim());
    return "/balances#finding-heading";
  });
  form("/balances/finding/stop", show, async () => {
    search.stop();
    return "/balances";
  });
}
