import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance } from "fastify";
import { scriptsFirst, scriptsOfAll, styles } from "../../views/page.tsx";
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

/** What the page for weighings without a connection is drawn with. */
const shell = [...styles, "mark.svg", ...scriptsFirst, ...scriptsOfAll].map(
  (name) => `/assets/${name}?v=${assetVersion}`,
);

/** The program as an app of the device: its name, its picture, where it begins. */
const manifest = {
  name: "Underhook",
  short_name: "Underhook",
  start_url: "/",
  scope: "/",
  display: "standalone",
  background_color: "#faf8f2",
  theme_color: "#faf8f2",
  icons: ["any", "maskable"].map((purpose) => ({
    src: `/assets/mark.svg?v=${assetVersion}`,
    sizes: "any",
    type: "image/svg+xml",
    purpose,
  })),
};

/** Style sheet, scripts and fonts, and what makes an app of them, all from this machine. */
export function assetRoutes(app: FastifyInstance): void {
  void app.register(fastifyStatic, { root: ownAssets, prefix: "/assets/", maxAge: "1h" });
  app.get("/manifest.webmanifest", (_request, reply) =>
    reply.type("application/manifest+json; charset=utf-8").send(JSON.stringify(manifest)),
  );
  const worker = readFileSync(join(ownAssets, "service-worker.js"), "utf8");
  app.get("/service-worker.js", (_request, reply) =>
    reply
      .type("text/javascript; charset=utf-8")
      .header("cache-control", "no-cache")
      .send(`const version = "${assetVersion}";\nconst shell = ${JSON.stringify(shell)};\n${worker}`),
  );
  for (const [name, file] of Object.entries(htmxFiles)) {
    const text = readFileSync(file);
    app.get(`/assets/${name}`, async (_request, reply) =>
      reply.type("text/javascript; charset=utf-8").header("cache-control", "max-age=3600").send(text),
    );
  }
}
