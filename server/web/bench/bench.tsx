import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import type { Problem } from "../../../views/bench/view.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import type { Bench } from "../../station/bench.ts";
import type { HandDevices } from "../../station/hand-devices.ts";
import { aboutIn } from "../about.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { lookOf } from "../look.ts";
import { asTyped, html, wantsPart } from "../page-request.ts";
import type { PhotoParts } from "../photos/photos.tsx";
import { refusalOf } from "../refused.ts";
import { pageIdOf, type StandingRefusals } from "../standing-refusals.ts";
import { benchForms } from "./bench-forms.ts";
import { BenchPage } from "./bench-page.tsx";
import { benchStream } from "./bench-stream.ts";
import { benchTestRoutes } from "./bench-test-routes.tsx";
import { BenchTests } from "./bench-tests.ts";
import { doRemedy, remedyForm } from "./remedy.ts";
import { weighTicketAgain } from "./ticket-again.ts";

/** The next thing where it is one press and nothing is typed with it: a step that came meanwhile is not its own. */
const presses: ReadonlySet<string> = new Set(["/bench/captures", "/bench/record"]);

const balanceForm = ({ typed }: Entries) => z.object({ address: typed() });

/** Something a form of the bench asks for. Throws Refusal or LedgerError when it is not done. */
export type BenchForm = (request: FastifyRequest) => unknown;

interface BenchRouteParts {
  bench: Bench;
  ledger: Ledger;
  balance: BalanceInUse;
  hands: HandDevices;
  demo: boolean;
  isNew: () => boolean;
}

/** The Bench page, its forms and its live stream. A new bench is first asked how it weighs. */
export function benchRoutes(
  app: FastifyInstance,
  { bench, ledger, balance, hands, demo, isNew }: BenchRouteParts,
) {
  const tests = new BenchTests(bench, ledger);
  const shown = new BenchPage(bench, tests, demo, () => hands.now);
  const { refusals, seen } = shown;
  const stream = benchStream(app, { bench, balance }, shown.parts);
  hands.onChange(() => stream.changed("hands"));

  /** A form of a live page is answered with its part; what is sent back stands in every redraw of that part. */
  const answered =
    <Refused,>(standing: StandingRefusals<Refused>) =>
    (request: FastifyRequest, refused: Refused | undefined): void => {
      const from = pageIdOf(request);
      standing.answered(from, shown.about, refused);
      seen.drawn(from, bench.about);
      if (refused === undefined) seen.did(from);
      stream.answered(from);
    };

  function answer(request: FastifyRequest, reply: FastifyReply, problem?: Problem): FastifyReply {
    const status = problem ? 422 : 200;
    if (wantsPart(request)) {
      answered(refusals.item)(request, problem);
      return html(reply, shown.item(reply.generateCsrf(), lookOf(request).locale, problem), status);
    }
    return problem
      ? html(reply, shown.whole(request, reply, { problem }), status)
      : reply.redirect("/#now", 303);
  }

  /** A form of the bench: what it asks is done, or refused in words with everything typed still in its field. */
  function form(path: string, does: BenchForm): void {
    app.post(path, { preHandler: app.csrfProtection }, async (request, reply) => {
      const fields = asTyped(request);
      try {
        await does(request);
        return answer(request, reply);
      } catch (error) {
        const refused = refusalOf(error);
        return answer(request, reply, { ...refused, from: request.url, typed: typedStill(fields, bench) });
      }
    });
  }

  /** The version a press was meant for: a page that was drawn anew by another one's step may say another. */
  const meantBy = (request: FastifyRequest): number => seen.meant(pageIdOf(request), aboutIn(request));

  app.get("/", async (request, reply) => {
    if (isNew()) return reply.redirect("/first-start", 303);
    await tests.load();
    return html(reply, shown.whole(request, reply));
  });
  app.get("/bench/live", (request, reply) => stream.join(request, reply, reply.generateCsrf()));
  benchTestRoutes(app, {
    bench,
    tests,
    whole: (request, reply, refused) => shown.whole(request, reply, { tests: refused }),
    answered: answered(refusals.tests),
  });
  for (const [path, command] of Object.entries(benchForms(bench)))
    form(path, async (request) => {
      const asked = await command(request);
      const meant = presses.has(path) ? { seen: meantBy(request) } : {};
      return bench.station.do({ ...asked, ...meant });
    });
  form("/bench/balance", (request) => balance.takeFrom(formIn(request, balanceForm).address));
  form("/bench/remedy", (request) =>
    doRemedy(bench, { ...aboutIn(request), seen: meantBy(request) }, formIn(request, remedyForm)),
  );
  form("/bench/other-piece", (request) => weighTicketAgain(bench, ledger, aboutIn(request)));
  return {
    form,
    photos: {
      answered: answered(refusals.photos),
      whole: (...[request, reply, photo]: Parameters<PhotoParts["whole"]>) =>
        shown.whole(request, reply, { photo }),
    },
  };
}

/** What was typed, for the fields of a page that is still about the same; of another item it is told in the refusal. */
function typedStill(fields: Record<string, string>, { about }: Bench): Record<string, string> {
  return fields.subject === undefined || fields.subject === about.subject ? fields : {};
}
