import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { Refusal } from "../../../calibration/refusal.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { OwnMetalsPage } from "../../../views/metals/own.tsx";
import { fixed } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { colours } from "../../metals/metal.ts";
import {
  type OwnMetals,
  ownMetalsFormat,
  readOwnMetals,
  warningsAbout,
  writeOwnMetals,
} from "../../metals/own-metals.ts";
import type { CurrentLibrary } from "../../station/current-library.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html, paramOf, queryOf } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { takenOver } from "../uploads.ts";
import { ownMetalForm, withMetal, withoutMetal } from "./own-metal-form.ts";

const importForm = ({ exact }: Entries) => z.object({ file: exact() });

type Problems = OwnMetalsPage["problems"];

/** Metals of the owner: added by form, taken over and handed on as JSON, every change a new version in the ledger. */
export function ownMetalRoutes(
  app: FastifyInstance,
  { library, demo }: { library: CurrentLibrary; demo: boolean },
): void {
  function show(
    request: FastifyRequest,
    reply: FastifyReply,
    { problems = [], typed = {} }: { problems?: Problems; typed?: Record<string, string> } = {},
  ): FastifyReply {
    const frame = frameOf(request, reply, { path: "/metals/own", demo });
    const { own } = library;
    const main = (
      <OwnMetalsPage
        libraryVersion={library.now.version}
        metals={(own?.metals ?? []).map(({ id, name, density_g_cm3: { low, high }, source }) => ({
          id,
          name,
          band: `${fixed(low, 3, frame.locale)} – ${fixed(high, 3, frame.locale)}`,
          source,
        }))}
        warnings={own ? warningsAbout(own) : []}
        problems={problems}
        colours={colours}
        typed={typed}
        kept={"kept" in queryOf(request)}
        csrfToken={frame.csrfToken}
      />
    );
    return html(
      reply,
      page({ ...frame, title: tellerOf(frame.locale)("own-metals.title"), main }),
      problems.length > 0 ? 422 : 200,
    );
  }

  /** A change of the owner's metals; all of it is taken over or none. */
  function change(path: string, field: string, next: (request: FastifyRequest) => OwnMetals): void {
    app.post(path, { preHandler: app.csrfProtection }, async (request, reply) => {
      try {
        await library.keep(next(request));
        return reply.redirect("/metals/own?kept", 303);
      } catch (error) {
        const refused = refusalOf(error);
        return show(request, reply, {
          problems: [{ fieldId: refused.field ?? field, error: refused.message }],
          typed: asTyped(request),
        });
      }
    });
  }

  app.get("/metals/own", async (request, reply) => show(request, reply));
  app.get("/metals/own.json", async (_request, reply) =>
    reply
      .type("application/json; charset=utf-8")
      .header("content-disposition", 'attachment; filename="metals.json"')
      .send(writeOwnMetals(library.own ?? { underhook_metals: ownMetalsFormat, version: 1, metals: [] })),
  );
  change("/metals/own", "name", (request) => withMetal(library.own, formIn(request, ownMetalForm)));
  change("/metals/own/import", "json-file", (request) =>
    readOwnMetals(takenOver(request, formIn(request, importForm).file), library.own),
  );
  change("/metals/own/:id/removal", "name", (request) => {
    const id = paramOf(request, "id");
    if (!library.own) throw new Refusal("metal.own.none-to-take-out");
    return withoutMetal(library.own, id);
  });
}
