import type { TestBench } from "../build.ts";
import { pageFields } from "../page-fields.ts";

/** The Host header that the bench answers to in tests. */
export const host = "localhost:1";

/** A typed weighing from ticket to record under the given id; readings in g unless a unit is given, hung in water of 21.4 °C. */
export async function recorded(
  at: TestBench,
  piece: {
    id: string;
    ticket?: string;
    claim?: string;
    customer?: string;
    dry: string;
    immersed: string;
    unit?: string;
  },
): Promise<void> {
  const { id, ticket = id, claim = "", customer = "", dry, immersed, unit = "g" } = piece;
  const told = { description: "an invented piece", method: "hung", claim, customer };
  await at.post("/bench/piece", { ticket, ...told, key: id });
  await at.post("/bench/typed-readings", { role: "dry", reading: dry, unit });
  await at.post("/bench/typed-readings", { role: "immersed", reading: immersed, unit });
  await at.post("/bench/water", { celsius: "21.4" });
  const answer = await at.post("/bench/record", {});
  if (answer.statusCode !== 303) throw new Error(`The piece ${id} was not recorded: ${answer.body}`);
}

/**
 * Sends a form with a file as a browser does (RFC 7578): to `url`, with the cookie and the token of the page at `from`,
 * its parts in the order given.
 */
export async function sendForm(
  at: TestBench,
  { url, from }: { url: string; from: string },
  parts: Record<string, string | File>,
) {
  const page = await at.app.inject({ url: from, headers: { host } });
  const form = new FormData();
  form.set("_csrf", /name="_csrf" value="([^"]+)"/.exec(page.body)?.[1] ?? "");
  for (const [name, part] of Object.entries(parts)) form.set(name, part);
  const encoded = new Response(form);
  return at.app.inject({
    method: "POST",
    url,
    headers: {
      host,
      origin: `http://${host}`,
      cookie: String(page.headers["set-cookie"]).split(";")[0],
      "content-type": encoded.headers.get("content-type") ?? "",
    },
    payload: Buffer.from(await encoded.arrayBuffer()),
  });
}

/** Sends the photo form. */
export async function sendPhoto(
  at: TestBench,
  url: string,
  photo: Buffer,
  fields: Record<string, string> = {},
) {
  const taken = new File([new Uint8Array(photo)], "quay.jpg", { type: "image/jpeg" });
  const about = await pageFields(at, url, fields);
  return sendForm(at, { url, from: "/settings" }, { ...about, photo: taken });
}

/** The text of a page without its tags. */
export async function textOf(at: TestBench, url: string): Promise<string> {
  const { body } = await at.app.inject({ url, headers: { host } });
  return wordsOf(body);
}

/** Markup as a reader sees it. */
export function wordsOf(markup: string): string {
  return markup
    .replace(/<svg.*?<\/svg>/gs, " ")
    .replace(/<[^>]+>/g, " ")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&")
    .replace(/\s+/g, " ");
}

/** Codes of the checks that stand on the bench page. */
export async function checksOn(at: TestBench): Promise<string[]> {
  const { body } = await at.app.inject({ url: "/", headers: { host } });
  return [...body.matchAll(/data-check="([^"]+)"/g)].map(([, code]) => code!);
}
