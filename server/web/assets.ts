import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance } from "fastify";
import { programFolder } from "../program-folder.ts";

const ownAssets = join(programFolder, "views", "assets");
/** Wherever the package was installed: beside the program or above it. */
const htmxFolder = dirname(createRequire(import.meta.url).resolve("htmx.org"));
const htmxFiles: Record<string, string> = {
  "htmx.min.js": join(htmxFolder, "htmx.min.js"),
  "hx-sse.min.js": join(htmxFolder, "ext", "hx-sse.min.js"),
};

/** Changes whenever a style sheet or script does, so that a browser never mixes two versions of the page. */
export const assetVersion = [
  ...readdirSync(ownAssets)
    .filter((name) => /\.(css|js|svg)$/.test(name))
    .sort()
    .map((name) => join(ownAssets, name)),
  ...Object.values(htmxFiles),
]
  .reduce((hash, file) => hash.update(readFileSync(file)), createHash("sha256"))
  .digest("hex")
  .slice(0, 12);

/** Style sheet, scripts and fonts, all from this machine. */
export function assetRoutes(app: FastifyInstance): void {
  void app.register(fastifyStatic, { root: ownAssets, prefix: "/assets/", maxAge: "1h" });
  for (const [name, file] of Object.entries(htmxFiles)) {
    const text = readFileSync(file);
    app.get(`/assets/${name}`, async (_request, reply) =>
      reply.type("text/javascript; charset=utf-8").header("cache-control", "max-age=3600").send(text),
    );
  }
}
