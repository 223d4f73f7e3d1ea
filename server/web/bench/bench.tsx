import { randomUUID } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { nameMessage } from "../../../drivers/balance-name.ts";
import {
  BenchMain,
  BenchPhotos,
  heartbeatSeconds,
  ItemPart,
  LiveHeading,
  LivePart,
  OtherTests,
  ResultPart,
} from "../../../views/bench/index.tsx";
import type { BenchView, LiveView, Problem } from "../../../views/bench/view.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import type { Told } from "../../../views/told.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import type { Bench } from "../../station/bench.ts";
import { aboutOf } from "../about.ts";
import type { RefusedForm } from "../evidence/size-view.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { frameOf, lookOf } from "../look.ts";
import { fieldsOf, html, wantsPart } from "../page-request.ts";
import { benchPhotos } from "../photos/photo-view.ts";
import { refusalOf } from "../refused.ts";
import { pageIdOf, StandingRefusals } from "../standing-refusals.ts";
import { benchForms } from "./bench-forms.ts";
import { benchTestRoutes } from "./bench-test-routes.tsx";
import { BenchTests } from "./bench-tests.ts";
import { benchView } from "./bench-view.ts";
import { otherItemView } from "./other-item-view.ts";
import { weighTicketAgain } from "./ticket-again.ts";

/** How often the live part is looked at although no line came, so that silence shows its age. */
const ageEveryMs = 1000;

/** Something a form of the bench asks for. Throws Refusal or LedgerError when it is not done. */
export type BenchForm = (fields: Record<string, string>, request: FastifyRequest) => unknown;

/** The Bench page, its forms and its live stream. A new bench is first asked how it weighs. */
export function benchRoutes(
  app: FastifyInstance,
  {
    bench,
    ledger,
    balance,
    demo,
    isNew,
  }: { bench: Bench; ledger: Ledger; balance: BalanceInUse; demo: boolean; isNew: () => boolean },
) {
  const live = (): LiveView => ({
    live: bench.scale?.live(),
    waitingFor: bench.waitingFor,
    waitsBecause: bench.scale?.waitsBecause?.(),
    eachLoad: bench.eachLoad,
  });
  const view = (token: string, problem?: Problem): BenchView => {
    const otherItem = otherItemView(bench);
    return { ...benchView(bench, token, demo, problem), ...(otherItem ? { otherItem } : {}) };
  };
  const tests = new BenchTests(bench, ledger);
  const aboutNow = () => bench.item?.id;
  const refusals = new StandingRefusals<Problem>();
  const refusedTests = new StandingRefusals<RefusedForm>();
  const refusedPhotos = new StandingRefusals<Told>();
  const stream = new LiveStream(
    new Map<string, Draw>([
      [
        "live-heading",
        (_, locale) =>
          render(<LiveHeading scaleName={bench.scale && nameMessage(bench.scale.name)} />, locale),
      ],
      ["live-reading", (_, locale) => render(<LivePart {...live()} />, locale)],
      [
        "piece",
        (token, locale, from) =>
          render(<ItemPart view={view(token, refusals.of(from, aboutNow()))} />, locale),
      ],
      [
        "photos",
        (token, locale, from) => {
          const photos = benchPhotos(bench, token, refusedPhotos.of(from, aboutNow()));
          return render(<BenchPhotos photos={photos} />, locale);
        },
      ],
      [
        "other-tests",
        (token, locale, from) =>
          render(<OtherTests tests={tests.view(token, refusedTests.of(from, aboutNow()))} />, locale),
      ],
      ["result", (token, locale) => render(<ResultPart view={view(token)} />, locale)],
    ]),
    heartbeatSeconds * 1000,
  );
  let checksShown = 0;
  let immersionShown = "";
  bench.onLine(() => {
    stream.changed("live-reading");
    const immersion = bench.waitingFor ? bench.checks : [];
    const kinds = immersion.map(({ code }) => code).join();
    if (bench.waitingFor && kinds !== immersionShown) {
      immersionShown = kinds;
      stream.changed("piece");
    }
    const checks = bench.scale?.checks().length ?? 0;
    if (checks !== checksShown) stream.changed("piece");
    checksShown = checks;
  });
  bench.onChange(() =>
    stream.changed("live-heading", "live-reading", "piece", "result", "photos", "other-tests"),
  );
  balance.onBeside((what) => what === "list" && stream.changed("piece"));
  const ageing = setInterval(() => stream.changed("live-reading"), ageEveryMs);
  ageing.unref();
  app.addHook("onClose", async () => clearInterval(ageing));
  app.addHook("preClose", async () => stream.close());

  function whole(
    request: FastifyRequest,
    reply: FastifyReply,
    problem?: Problem,
    refused?: RefusedForm,
  ): string {
    const frame = frameOf(request, reply, { path: "/", demo });
    return page({
      ...frame,
      title: tellerOf(frame.locale)("bench.title"),
      main: (
        <BenchMain
          view={view(frame.csrfToken, problem)}
          live={live()}
          tests={tests.view(frame.csrfToken, refused)}
          photos={benchPhotos(bench, frame.csrfToken)}
          pageId={randomUUID()}
        />
      ),
    });
  }

  function answer(request: FastifyRequest, reply: FastifyReply, problem?: Problem): FastifyReply {
    const status = problem ? 422 : 200;
    if (wantsPart(request)) {
      answered(refusals, request, problem);
      return html(
        reply,
        render(<ItemPart view={view(reply.generateCsrf(), problem)} />, lookOf(request).locale),
        status,
      );
    }
    return problem ? html(reply, whole(request, reply, problem), status) : reply.redirect("/", 303);
  }

  /** A form of a live page is answered with its part; what is sent back stands in every redraw of that part. */
  function answered<Refused>(
    standing: StandingRefusals<Refused>,
    request: FastifyRequest,
    refused: Refused | undefined,
  ): void {
    const from = pageIdOf(request);
    standing.answered(from, aboutNow(), refused);
    stream.answered(from);
  }

  /** A form of the bench: what it asks is done, or refused in words with everything typed still in its field. */
  function form(path: string, does: BenchForm): void {
    app.post(path, { preHandler: app.csrfProtection }, async (request, reply) => {
      const fields = fieldsOf(request);
      try {
        await does(fields, request);
        return answer(request, reply);
      } catch (error) {
        const refused = refusalOf(error);
        return answer(request, reply, { ...refused, from: request.url, typed: typedStill(fields, bench) });
      }
    });
  }

  app.get("/", async (request, reply) => {
    if (isNew()) return reply.redirect("/first-start", 303);
    await tests.look();
    return html(reply, whole(request, reply));
  });
  benchTestRoutes(app, {
    bench,
    tests,
    whole,
    answered: (request, refused) => answered(refusedTests, request, refused),
  });
  app.get("/bench/live", (request, reply) => stream.join(request, reply, reply.generateCsrf()));

  for (const [path, command] of Object.entries(benchForms(bench)))
    form(path, async (fields, request) => bench.station.do(await command(fields, request)));
  form("/bench/balance", ({ address = "" }) => balance.takeFrom(address));
  form("/bench/other-piece", (fields) => weighTicketAgain(bench, ledger, aboutOf(fields)));
  return {
    form,
    photoAnswered: (request: FastifyRequest, problem: Told | undefined) =>
      answered(refusedPhotos, request, problem),
  };
}

/** What was typed, for the fields of a page that is still about the same; of another item it is told in the refusal. */
function typedStill(fields: Record<string, string>, { about }: Bench): Record<string, string> {
  return fields.subject === undefined || fields.subject === about.subject ? fields : {};
}
