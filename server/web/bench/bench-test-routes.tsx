import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { OtherTests } from "../../../views/bench/other-tests.tsx";
import { render } from "../../../views/page.tsx";
import type { Bench } from "../../station/bench.ts";
import { aboutIn } from "../about.ts";
import { kindForm } from "../evidence/evidence-entry.ts";
import type { RefusedForm } from "../evidence/size-view.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { lookOf } from "../look.ts";
import { asTyped, html, wantsPart } from "../page-request.ts";
import { problemsOf } from "../refused.ts";
import type { BenchTests } from "./bench-tests.ts";

const excludeForm = ({ typed }: Entries) => z.object({ reason: typed() });

interface BenchTestParts {
  bench: Bench;
  tests: BenchTests;
  /** the whole Bench page, with a form of other tests sent back */
  whole(request: FastifyRequest, reply: FastifyReply, refused: RefusedForm): string;
  /** a form of a live page was answered with its part */
  answered(request: FastifyRequest, refused: RefusedForm | undefined): void;
}

/** Entering and setting aside other tests of the piece on the bench. */
export function benchTestRoutes(
  app: FastifyInstance,
  { bench, tests, whole, answered }: BenchTestParts,
): void {
  app.post("/bench/tests", { preHandler: app.csrfProtection }, (request, reply) =>
    done(request, reply, () => tests.keep(request)),
  );
  app.post<{ Params: { entry: string } }>(
    "/bench/tests/:entry/voiding",
    { preHandler: app.csrfProtection },
    (request, reply) =>
      done(request, reply, async () => {
        const about = aboutIn(request);
        const { entry } = request.params;
        await bench.station.do({ do: "exclude-test", ...about, entry, ...formIn(request, excludeForm) });
        return undefined;
      }),
  );

  async function done(
    request: FastifyRequest,
    reply: FastifyReply,
    does: () => Promise<RefusedForm | undefined>,
  ): Promise<FastifyReply> {
    await tests.load();
    try {
      return answer(request, reply, await does());
    } catch (error) {
      const { kind } = formIn(request, kindForm);
      const problems = problemsOf(error, "other-tests-heading");
      return answer(request, reply, { kind: kind || "size", values: asTyped(request), problems });
    }
  }

  /** The part that the forms stand in, or without scripts the page: done, or sent back with everything typed. */
  function answer(
    request: FastifyRequest,
    reply: FastifyReply,
    refused: RefusedForm | undefined,
  ): FastifyReply {
    const status = refused ? 422 : 200;
    if (wantsPart(request)) {
      answered(request, refused);
      const part = <OtherTests tests={tests.view(reply.generateCsrf(), refused)} />;
      return html(reply, render(part, lookOf(request).locale), status);
    }
    if (!refused) return reply.redirect("/#other-tests", 303);
    return html(reply, whole(request, reply, refused), status);
  }
}
