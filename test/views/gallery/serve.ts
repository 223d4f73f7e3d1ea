import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Theme } from "../../../views/page.tsx";
import { page, styles } from "../../../views/page.tsx";
import { gallery } from "./index.tsx";

const root = new URL("../../../", import.meta.url);
const assets: Record<string, [file: string, type: string]> = {
  ...Object.fromEntries(styles.map((name) => [name, [`views/assets/${name}`, "text/css"]])),
  "plots.js": ["views/assets/plots.js", "text/javascript"],
  "bench.js": ["views/assets/bench.js", "text/javascript"],
  "mark.svg": ["views/assets/mark.svg", "image/svg+xml"],
  "htmx.min.js": ["node_modules/htmx.org/dist/htmx.min.js", "text/javascript"],
  "hx-sse.min.js": ["node_modules/htmx.org/dist/ext/hx-sse.min.js", "text/javascript"],
};

/** The policy the bench itself sends: everything from here, nothing inline. */
const policy =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
  "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/** Serves the gallery under the strict policy: /NAME?theme=dark. Resolves with its address and how to close it. */
export async function serveGallery(): Promise<{ address: string; close(): Promise<void> }> {
  const server: Server = createServer((request, response) => {
    const url = new URL(request.url ?? "/", "http://gallery");
    const asset = assets[url.pathname.replace("/assets/", "")];
    if (asset) {
      response.writeHead(200, { "content-type": asset[1], "content-security-policy": policy });
      response.end(readFileSync(new URL(asset[0], root)));
      return;
    }
    const shown = gallery.find(({ name }) => `/${name}` === url.pathname);
    response.writeHead(shown ? 200 : 404, {
      "content-type": "text/html; charset=utf-8",
      "content-security-policy": policy,
    });
    const theme = (url.searchParams.get("theme") ?? "auto") as Theme;
    response.end(shown ? page({ ...shown.frame, theme }) : "no such page in the gallery");
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
