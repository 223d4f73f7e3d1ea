import multipart from "@fastify/multipart";
import type { FastifyInstance, FastifyRequest } from "fastify";
import { z } from "zod";
import { Refusal } from "../../calibration/refusal.ts";
import { formIn } from "./forms/form.ts";

/** The largest file or pasted text that is taken, bytes: a list of a hundred thousand rows, or a large photograph. */
export const largestFile = 25 * 2 ** 20;

/** Forms that carry files: each field is in the body by its name, a file as its bytes. */
export async function takeUploads(app: FastifyInstance): Promise<void> {
  await app.register(multipart, {
    attachFieldsToBody: "keyValues",
    limits: { fileSize: largestFile, fieldSize: largestFile, files: 4, fields: 100 },
  });
}

/** The bytes of a sent file; undefined when none was chosen. */
export function fileOf(request: FastifyRequest, name: string): Uint8Array | undefined {
  const { [name]: value } = formIn(request, () => z.object({ [name]: z.unknown().optional() }));
  return value instanceof Uint8Array && value.length > 0 ? value : undefined;
}

/**
 * The text of a taken-over file: chosen under "json-file", or pasted as "file". Throws Refusal when neither is there
 * or the bytes are no text.
 */
export function takenOver(request: FastifyRequest, pasted: string): string {
  const bytes = fileOf(request, "json-file");
  if (!bytes && pasted.trim() === "") throw new Refusal("upload.none");
  try {
    return bytes ? new TextDecoder("utf-8", { fatal: true }).decode(bytes) : pasted;
  } catch {
    throw new Refusal("upload.not-text", { bytes: bytes?.length ?? 0 });
  }
}
