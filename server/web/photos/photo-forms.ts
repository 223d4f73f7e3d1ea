import type { FastifyRequest } from "fastify";
import { z } from "zod";
import type { BodyOf } from "../../ledger/kinds.ts";
import { photoFrom } from "../../photos/photo.ts";
import { keepPhoto } from "../../photos/photo-folder.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { fileOf } from "../uploads.ts";

/** What a photo shows. */
const photoForm = ({ maybeText }: Entries) => z.object({ shows: maybeText({ most: 200 }) });

/** Why a photo is set aside, and by whom. */
export const excludeForm = ({ typed }: Entries) => z.object({ reason: typed(), by: typed() });

/** The photo of a form, stripped and in the folder. Throws Refusal for a file that is no picture. */
export async function photoIn(request: FastifyRequest, folder: string): Promise<BodyOf<"photo">> {
  const { shows } = formIn(request, photoForm);
  const photo = photoFrom(Buffer.from(fileOf(request, "photo") ?? []));
  const kept = await keepPhoto(folder, photo);
  return shows === undefined ? kept : { ...kept, shows };
}
