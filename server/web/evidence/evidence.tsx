import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { EvidencePage } from "../../../views/evidence/page.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import type { Evaluate } from "../../compute/evaluation.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { assayedMelts } from "../../melts/assayed-melts.ts";
import type { Library } from "../../metals/library.ts";
import { type Stated, statedBy } from "../../reports/stated.ts";
import { currentSpecifications } from "../../station/current-specifications.ts";
import type { Station } from "../../station/station.ts";
import { programVersion } from "../../version.ts";
import { seenOf } from "../about.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html } from "../page-request.ts";
import { noRecordPage } from "../records/no-record.tsx";
import { problemsOf } from "../refused.ts";
import { typedTest } from "./evidence-entry.ts";
import { type EvidenceParts, evidenceView } from "./evidence-view.ts";
import { restate } from "./restate.ts";
import { weighedDry } from "./size-form.ts";

interface EvidenceRouteParts {
  station: Station;
  ledger: Ledger;
  demo: boolean;
  library: () => Library;
  evaluate: Evaluate;
}

/** Why a test is not used. */
const excludeForm = ({ typed }: Entries) => z.object({ reason: typed() });

type ItemRequest = FastifyRequest<{ Params: { piece: string } }>;

/** Other evidence of a recorded piece: every test is an entry of the ledger, and the page weighs them together. */
export function evidenceRoutes(
  app: FastifyInstance,
  { station, ledger, demo, library, evaluate }: EvidenceRouteParts,
): void {
  async function answer(request: ItemRequest, reply: FastifyReply, refused?: EvidenceParts["refused"]) {
    const subject = request.params.piece;
    const entries = await ledger.entriesOf(subject);
    const around = frameOf(request, reply, { path: "/records", demo });
    const stated = statedOf(entries);
    if (!stated) return noRecordPage(reply, around, subject);
    const { all } = await currentSpecifications(ledger, library());
    const view = evidenceView(subject, {
      entries,
      stated,
      library: library(),
      specifications: all,
      melts: await assayedMelts(ledger, subject),
      asked: request.query as EvidenceParts["asked"],
      ...around,
      ...(refused ? { refused } : {}),
    });
    const title = tellerOf(around.locale)("evidence.title", { ticket: view.record.ticket });
    return html(reply, page({ ...around, title, main: <EvidencePage {...view} /> }), refused ? 422 : 200);
  }

  app.get<{ Params: { piece: string } }>("/records/:piece/evidence", answer);

  app.post<{ Params: { piece: string } }>(
    "/records/:piece/evidence",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const subject = request.params.piece;
      const stated = statedOf(await ledger.entriesOf(subject));
      if (!stated) return answer(request, reply);
      const { all } = await currentSpecifications(ledger, library());
      const typed = typedTest(request, {
        specifications: all,
        mass: weighedDry(stated),
        library: library(),
      });
      const { kind } = typed;
      if ("problems" in typed)
        return answer(request, reply, { kind, values: asTyped(request), problems: typed.problems });
      return done(request, reply, kind, () =>
        station.do({ do: "add-test", ...seenOf(subject, request), test: typed.body }),
      );
    },
  );

  app.post<{ Params: { piece: string; entry: string } }>(
    "/records/:piece/evidence/:entry/voiding",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const { piece, entry } = request.params;
      return done(request, reply, "size", () =>
        station.do({ do: "exclude-test", ...seenOf(piece, request), entry, ...formIn(request, excludeForm) }),
      );
    },
  );

  async function done(request: ItemRequest, reply: FastifyReply, kind: string, does: () => Promise<unknown>) {
    try {
      await does();
      await restate(request.params.piece, { ledger, evaluate, program: programVersion });
      return reply.redirect(`/records/${request.params.piece}/evidence`, 303);
    } catch (error) {
      return answer(request, reply, {
        kind,
        values: asTyped(request),
        problems: problemsOf(error, "evidence-heading"),
      });
    }
  }
}

/** The record of a measurement; undefined while there is none. Throws Refusal where the readings are those of no density. */
export function statedOf(entries: Parameters<typeof statedBy>[0]): Stated | undefined {
  return entries.some(({ kind }) => kind === "result") ? statedBy(entries) : undefined;
}
