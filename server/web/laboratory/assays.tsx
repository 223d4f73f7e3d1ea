import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { keyed } from "../../../calibration/keyed.ts";
import { AssayPage } from "../../../views/assays/page.tsx";
import { type AssayPageView, assayFields } from "../../../views/assays/view.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { densityText, plusMinus } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { standingAssays } from "../../laboratory/assay.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import type { Station } from "../../station/station.ts";
import { seenOf } from "../about.ts";
import { statedOf } from "../evidence/evidence.tsx";
import { type Entries, formIn, postedForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html } from "../page-request.ts";
import { noRecordPage } from "../records/no-record.tsx";
import { problemsOf } from "../refused.ts";
import { dayOf } from "../when.ts";
import { assayForm } from "./assay-form.ts";
import { assayRows, assayView } from "./assay-view.ts";

const excludeForm = ({ typed }: Entries) => z.object({ reason: typed() });

interface AssayParts {
  station: Station;
  ledger: Ledger;
  demo: boolean;
  library: () => Library;
  now: () => Date;
}

type ItemRequest = FastifyRequest<{ Params: { piece: string } }>;
interface Refused {
  values: Record<string, string>;
  problems: AssayPageView["problems"];
}

/** What a laboratory found in a recorded piece: every assay is an entry, and the newest that stands counts. */
export function assayRoutes(app: FastifyInstance, { station, ledger, demo, library, now }: AssayParts): void {
  async function answer(request: ItemRequest, reply: FastifyReply, refused?: Refused) {
    const { piece: subject } = request.params;
    const entries = await ledger.entriesOf(subject);
    const around = frameOf(request, reply, { path: "/records", demo });
    const t = tellerOf(around.locale);
    const stated = statedOf(entries);
    if (!stated) return noRecordPage(reply, around, subject);
    const { statement } = stated;
    const claim = stated.piece.claim ?? "";
    const family = library().has(claim) ? library().metal(claim).family : "gold";
    const typed = refused?.values ?? { metal: standingAssays(entries).at(-1)?.body.metal ?? family };
    const view: AssayPageView = {
      ...assayView(subject, entries, around),
      record: {
        href: `/records/${encodeURIComponent(subject)}`,
        ticket: stated.piece.ticket ?? subject,
        density: `${densityText(statement.density_g_cm3, statement.expanded_g_cm3, around.locale)} g/cm³`,
        mass: `${plusMinus(statement.mass_g, 2 * (statement.u_mass_g ?? 0), around.locale)} g`,
      },
      values: keyed(assayFields, (name) => typed[name] ?? ""),
      problems: refused?.problems ?? [],
      rows: assayRows(entries, around),
      csrfToken: around.csrfToken,
      about: { subject, seen: entries.length },
    };
    const title = t("assay.title", { ticket: view.record.ticket });
    return html(reply, page({ ...around, title, main: <AssayPage {...view} /> }), refused ? 422 : 200);
  }

  async function written(
    request: ItemRequest,
    reply: FastifyReply,
    fieldId: string,
    write: () => Promise<unknown>,
  ) {
    try {
      await write();
      return reply.redirect(`/records/${encodeURIComponent(request.params.piece)}/laboratory`, 303);
    } catch (error) {
      return answer(request, reply, {
        values: asTyped(request),
        problems: problemsOf(error, fieldId),
      });
    }
  }

  app.get<{ Params: { piece: string } }>("/records/:piece/laboratory", (request, reply) =>
    answer(request, reply),
  );

  app.post<{ Params: { piece: string } }>(
    "/records/:piece/laboratory",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const { piece } = request.params;
      const entries = await ledger.entriesOf(piece);
      if (!statedOf(entries)) return answer(request, reply);
      const today = dayOf(now().toISOString(), app.zone());
      const read = postedForm(request, assayForm({ today, entries }));
      if ("problems" in read)
        return answer(request, reply, { values: asTyped(request), problems: read.problems });
      return written(request, reply, "permille", () =>
        station.do({ do: "add-assay", ...seenOf(piece, request), assay: read.values }),
      );
    },
  );

  app.post<{ Params: { piece: string; entry: string } }>(
    "/records/:piece/laboratory/:entry/voiding",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const { piece, entry } = request.params;
      return written(request, reply, `reason-${entry}`, () =>
        station.do({
          do: "exclude-assay",
          ...seenOf(piece, request),
          entry,
          ...formIn(request, excludeForm),
        }),
      );
    },
  );
}
