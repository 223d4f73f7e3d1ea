import { createReadStream, existsSync } from "node:fs";
import { join } from "node:path";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { BenchPhotos } from "../../../views/bench/photos.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { Told } from "../../../views/told.tsx";
import type { BodyOf } from "../../ledger/kinds.ts";
import { photoFrom } from "../../photos/photo.ts";
import { keepPhoto } from "../../photos/photo-folder.ts";
import { typeOfName } from "../../photos/photo-name.ts";
import type { Bench } from "../../station/bench.ts";
import { aboutOf, seenOf } from "../about.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { frameOf, lookOf } from "../look.ts";
import { fieldsOf, html, wantsPart } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { fileOf } from "../uploads.ts";
import { benchPhotos } from "./photo-view.ts";

interface PhotoParts {
  bench: Bench;
  /** where the photos lie */
  folder: string;
  demo: boolean;
  /** a form of the live Bench page was answered with its part */
  answered(request: FastifyRequest, problem: Told | undefined): void;
}

/** What a photo shows, and why one is set aside. */
const photoForm = ({ maybeText }: Entries) => z.object({ shows: maybeText({ most: 200 }) });
const excludeForm = ({ typed }: Entries) => z.object({ reason: typed(), by: typed() });

type ItemRequest = FastifyRequest<{ Params: { piece: string } }>;

/** Photos of pieces: taken at the bench or added to a record, and shown by their hash. */
export function photoRoutes(app: FastifyInstance, { bench, folder, demo, answered }: PhotoParts): void {
  app.get<{ Params: { name: string } }>("/photos/:name", (request, reply) => {
    const { name } = request.params;
    const type = typeOfName(name);
    const file = join(folder, name);
    if (type === undefined || !existsSync(file)) return reply.callNotFound();
    // The name is the hash of what is in it, so it never changes; the pages are on this machine only.
    return reply
      .type(type)
      .header("cache-control", "private, max-age=31536000, immutable")
      .send(createReadStream(file));
  });

  app.post("/bench/photos", { preHandler: app.csrfProtection }, async (request, reply) => {
    try {
      const about = aboutOf(fieldsOf(request));
      await bench.station.do({ do: "add-photo", ...about, photo: await taken(request) });
      return answer(request, reply);
    } catch (error) {
      return answer(request, reply, refusalOf(error).says);
    }
  });

  app.post<{ Params: { piece: string } }>(
    "/records/:piece/photos",
    { preHandler: app.csrfProtection },
    async (request: ItemRequest, reply) => {
      const { piece } = request.params;
      const href = `/records/${encodeURIComponent(piece)}`;
      try {
        const about = seenOf(piece, fieldsOf(request));
        await bench.station.do({ do: "add-photo", ...about, photo: await taken(request) });
        return reply.redirect(`${href}#photos`, 303);
      } catch (error) {
        return refusal(request, reply, refusalOf(error).says);
      }
    },
  );

  app.post("/bench/photos/:entry/voiding", { preHandler: app.csrfProtection }, async (request, reply) => {
    try {
      const { entry } = request.params as { entry: string };
      const { reason } = formIn(request, excludeForm);
      await bench.station.do({ do: "exclude-photo", ...aboutOf(fieldsOf(request)), entry, reason });
      return answer(request, reply);
    } catch (error) {
      return answer(request, reply, refusalOf(error).says);
    }
  });

  app.post<{ Params: { piece: string; entry: string } }>(
    "/records/:piece/photos/:entry/voiding",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const { piece, entry } = request.params;
      try {
        const about = seenOf(piece, fieldsOf(request));
        await bench.station.do({ do: "exclude-photo", ...about, entry, ...formIn(request, excludeForm) });
        return reply.redirect(`/records/${encodeURIComponent(piece)}#photos`, 303);
      } catch (error) {
        return refusal(request, reply, refusalOf(error).says);
      }
    },
  );

  /** The photo of a form, stripped and on the disk. */
  async function taken(request: FastifyRequest): Promise<BodyOf<"photo">> {
    const { shows } = formIn(request, photoForm);
    const photo = photoFrom(Buffer.from(fileOf(request, "photo") ?? []));
    const kept = await keepPhoto(folder, photo);
    return shows === undefined ? kept : { ...kept, shows };
  }

  function answer(request: FastifyRequest, reply: FastifyReply, problem?: Told): FastifyReply {
    if (!wantsPart(request))
      return problem === undefined ? reply.redirect("/#photos", 303) : refusal(request, reply, problem);
    answered(request, problem);
    const photos = benchPhotos(bench, reply.generateCsrf(), problem);
    const part = render(<BenchPhotos photos={photos} />, lookOf(request).locale);
    return html(reply, part, problem === undefined ? 200 : 422);
  }

  function refusal(request: FastifyRequest, reply: FastifyReply, says: Told): FastifyReply {
    const frame = frameOf(request, reply, { path: "/records", demo });
    const title = tellerOf(frame.locale)("frame.not-done");
    return html(reply, page({ ...frame, title, main: <Problem says={says} /> }), 422);
  }
}
