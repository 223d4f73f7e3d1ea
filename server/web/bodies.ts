import formbody from "@fastify/formbody";
import type { FastifyInstance } from "fastify";
import { requestIn } from "../compute/request-json.ts";
import { takeUploads } from "./uploads.ts";

/** The largest form or request that is read, bytes. A weighing with a thousand repeats stays far below it. */
export const bodyLimit = 256 * 1024;

/** Forms, JSON and files are read. */
export async function readBodies(app: FastifyInstance): Promise<void> {
  await app.register(formbody);
  app.addContentTypeParser("application/json", { parseAs: "string" }, (_request, body, done) => {
    try {
      done(null, requestIn(String(body)));
    } catch (error) {
      done(error as Error);
    }
  });
  await takeUploads(app);
}
