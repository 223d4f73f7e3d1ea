import { createReadStream, existsSync } from "node:fs";
import { join } from "node:path";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { BenchPhotos } from "../../../views/bench/photos.tsx";
import { render } from "../../../views/page.tsx";
import { typeOfName } from "../../photos/photo-name.ts";
import type { Bench } from "../../station/bench.ts";
import { aboutIn } from "../about.ts";
import { formIn } from "../forms/form.ts";
import { lookOf } from "../look.ts";
import { asTyped, html, paramOf, wantsPart } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { excludeForm, photoIn } from "./photo-forms.ts";
import { benchPhotos, type RefusedPhoto } from "./photo-view.ts";

export interface PhotoParts {
  bench: Bench;
  /** where the photos lie */
  folder: string;
  /** the whole Bench page, with the form of a photo sent back */
  whole(request: FastifyRequest, reply: FastifyReply, refused: RefusedPhoto): string;
  /** a form of the live Bench page was answered with its part */
  answered(request: FastifyRequest, refused: RefusedPhoto | undefined): void;
}

/** Photos of pieces: taken at the bench or added to a record, and shown by their hash. */
export function photoRoutes(app: FastifyInstance, { bench, folder, whole, answered }: PhotoParts): void {
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

  /** A form of the bench's photos: done, or back with everything typed. */
  function form(path: string, does: (request: FastifyRequest) => Promise<unknown>): void {
    app.post(path, { preHandler: app.csrfProtection }, async (request, reply) => {
      try {
        await does(request);
        return answer(request, reply);
      } catch (error) {
        return answer(request, reply, { message: refusalOf(error).message, typed: asTyped(request) });
      }
    });
  }

  form("/bench/photos", async (request) =>
    bench.station.do({ do: "add-photo", ...aboutIn(request), photo: await photoIn(request, folder) }),
  );
  form("/bench/photos/:entry/voiding", (request) => {
    const entry = paramOf(request, "entry");
    const { reason } = formIn(request, excludeForm);
    return bench.station.do({ do: "exclude-photo", ...aboutIn(request), entry, reason });
  });

  function answer(request: FastifyRequest, reply: FastifyReply, refused?: RefusedPhoto): FastifyReply {
    if (wantsPart(request)) {
      answered(request, refused);
      const photos = benchPhotos(bench, reply.generateCsrf(), refused);
      const part = render(<BenchPhotos photos={photos} />, lookOf(request).locale);
      return html(reply, part, refused === undefined ? 200 : 422);
    }
    if (!refused) return reply.redirect("/#photos", 303);
    return html(reply, whole(request, reply, refused), 422);
  }
}
