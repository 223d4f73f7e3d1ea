import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { BesideAsks, BesideNow } from "../../../views/balances/beside.tsx";
import { Finding } from "../../../views/balances/finding.tsx";
import { BalancesIndex } from "../../../views/balances/index.tsx";
import { BalanceAsks, BalanceNow, LastLines } from "../../../views/balances/now.tsx";
import { Ports } from "../../../views/balances/ports.tsx";
import { heartbeatSeconds } from "../../../views/bench/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import { type BalanceChoice, checkedChoice } from "../../station/balance-choice.ts";
import { Finding as Search } from "../../station/line-search.ts";
import { Refusal } from "../../weighing/refusal.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { balanceAskingRoutes } from "./balance-asking.tsx";
import { balanceForms } from "./balance-forms.ts";
import { balanceLearningRoutes } from "./balance-learning.tsx";
import type { BalanceParts } from "./balance-parts.ts";
import { balanceProfileRoutes } from "./balance-profiles.tsx";
import { besideOf, keptFor, nowOf, portRows } from "./balance-words.ts";
import { profileHref } from "./profile-href.ts";

/** The Balances page and everything below it. Pages only watch; the server owns the port. */
export function balanceRoutes(app: FastifyInstance, parts: BalanceParts): void {
  const { bench, balance, profiles, demo } = parts;
  const search = new Search(balance, () => stream.changed("balance-now", "finding"), parts.findingMs);
  const findingView = () => {
    const { port, running, now: listeningAt, tried, outcome } = search;
    return {
      ...(port === undefined ? {} : { port }),
      running,
      tried,
      ...(listeningAt === undefined ? {} : { now: listeningAt }),
      ...(outcome ? { says: outcome.says } : {}),
      ...(outcome?.line == null ? {} : { line: outcome.line }),
    };
  };
  // Looked up once for every exchange, and not with every line.
  let keptForNow: string | undefined;
  const lookUp = () => {
    keptForNow = balance.choice && keptFor(balance.choice.address);
  };
  lookUp();
  balance.onExchange(lookUp);
  const now = (token: string) => ({ ...nowOf(balance, token), keptFor: keptForNow });
  const stream = new LiveStream(
    new Map<string, Draw>([
      ["balance-now", (token, locale) => render(<BalanceNow {...now(token)} />, locale)],
      ["balance-asks", (token, locale) => render(<BalanceAsks {...now(token)} />, locale)],
      ["last-lines", (token, locale) => render(<LastLines {...now(token)} />, locale)],
      ["beside-now", (_, locale) => render(<BesideNow beside={besideOf(balance)} />, locale)],
      [
        "beside-asks",
        (token, locale) => render(<BesideAsks beside={balance.others} csrfToken={token} />, locale),
      ],
      ["ports", (token, locale) => render(<Ports ports={portRows(balance)} csrfToken={token} />, locale)],
      ["finding", (token, locale) => render(<Finding finding={findingView()} csrfToken={token} />, locale)],
    ]),
    heartbeatSeconds * 1000,
  );
  const changed = () => stream.changed("balance-now", "balance-asks", "last-lines");
  balance.onLine(changed);
  balance.onExchange(changed);
  balance.onBeside((what) =>
    what === "line" ? stream.changed("beside-now") : stream.changed("beside-now", "beside-asks", "ports"),
  );
  app.addHook("preClose", async () => {
    search.stop();
    stream.close();
  });

  function show(request: FastifyRequest, reply: FastifyReply, problem?: string): FastifyReply {
    const frame = frameOf(request, reply, { path: "/balances", demo });
    const body = (request.body ?? {}) as Record<string, string>;
    const { choice } = balance;
    const [, , ...flow] = (choice?.line ?? "").split("-");
    const main = (
      <BalancesIndex
        {...now(frame.csrfToken)}
        ports={portRows(balance)}
        beside={besideOf(balance)}
        typed={{
          port: body.port ?? choice?.address ?? "",
          line: body.line ?? choice?.line.split("-").slice(0, 2).join("-") ?? "9600-8n1",
          flow: body.flow ?? (flow.length > 0 ? flow.join("-") : "none"),
        }}
        finding={findingView()}
        simulated={demo}
        profiles={profiles.all.map(({ name, version }) => ({
          name,
          version,
          href: profileHref(name),
          inUse: balance.profile?.name === name,
        }))}
        {...(problem === undefined ? {} : { problem })}
      />
    );
    return html(
      reply,
      page({ ...frame, title: tellerOf(frame.locale)("balances.title"), main }),
      problem === undefined ? 200 : 422,
    );
  }

  /** What is told in the form, and what was told earlier about the balance at this address. */
  function choiceOf(address: string, line: string | undefined, flow: string): BalanceChoice {
    const before = balance.told(address);
    const asTyped = line?.trim() || before?.line || "9600-8n1";
    const whole = flow === "none" || /-(rts-cts|xon-xoff)$/.test(asTyped) ? asTyped : `${asTyped}-${flow}`;
    return checkedChoice({ ...before, address, line: whole.toLowerCase() });
  }

  app.get("/balances", (request, reply) => show(request, reply));
  app.get("/balances/live", (request, reply) => stream.join(request, reply, reply.generateCsrf()));

  const form = balanceForms(app, demo);
  form("/balances/choice", show, async ({ port = "", line, flow = "none" }) => {
    const address = port.trim();
    if (line === undefined && balance.others.some((one) => one.address === address))
      await balance.takeFrom(address);
    else await balance.choose(choiceOf(address, line, flow));
    return "/balances";
  });
  form("/balances/beside", show, async ({ port = "", line, flow = "none" }) => {
    await balance.hearBeside(choiceOf(port.trim(), line, flow));
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
  form("/balances/typed", show, async () => {
    await balance.choose(undefined);
    return "/balances";
  });
  form("/balances/comma", show, async ({ comma }) => {
    if (!balance.choice) throw new Refusal("No balance on a cable is in use, so nothing was asked.");
    if (comma !== "decimal" && comma !== "thousands")
      throw new Refusal(`"${comma}" is none of the two answers. Press one of the two buttons.`);
    await balance.choose({ ...balance.choice, comma });
    return "/balances";
  });
  form("/balances/looked-at", show, async ({ kind = "" }) => {
    await bench.settleDoubt(kind);
    return "/balances";
  });
  form("/balances/finding", show, async ({ port = "" }) => {
    search.begin(port.trim());
    return "/balances#finding-heading";
  });
  form("/balances/finding/stop", show, async () => {
    search.stop();
    return "/balances";
  });
  balanceAskingRoutes(app, parts, form);
  balanceLearningRoutes(app, parts, form);
  balanceProfileRoutes(app, parts, form);
}
