import { get } from "node:http";

/**
 * The markup of a page, over a connection of its own: one that is kept open may be closed by the bench while the test
 * waits for something else.
 */
export function pageAt(url: string): Promise<string> {
  return new Promise((resolve, reject) => {
    get(url, { agent: false }, (response) => {
      let text = "";
      response.setEncoding("utf8").on("data", (part: string) => {
        text += part;
      });
      response.on("end", () => resolve(text));
    }).on("error", reject);
  });
}

/** Sends forms to a running bench as its own page does: with the cookie and the token of the page. */
export async function formPoster(url: string) {
  const first = await fetch(`${url}settings`);
  const token = /name="_csrf" value="([^"]+)"/.exec(await first.text())?.[1] ?? "";
  const cookie = (first.headers.get("set-cookie") ?? "").split(";")[0] ?? "";
  return async (path: string, fields: Record<string, string>) => {
    const about = fields.version === undefined ? aboutOn(await pageAt(pageOf(url, path)), fields) : {};
    return fetch(new URL(path, url), {
      method: "POST",
      headers: { cookie, origin: url.replace(/\/$/, "") },
      body: new URLSearchParams({ _csrf: token, ...about, ...fields }),
      redirect: "manual",
    });
  };
}

/** Answers the three questions of a new bench, where it asks them. */
export async function firstQuestionsAnswered(url: string): Promise<void> {
  const first = await fetch(url, { redirect: "manual" });
  if (!first.headers.get("location")?.endsWith("/first-start")) return;
  const post = await formPoster(url);
  const answer = await post("/first-start", { method: "hung", source: "typed", metal: "silver" });
  if (answer.status !== 303) throw new Error(`The first questions were not taken: ${await answer.text()}`);
}

/** The page that a form stands on. */
function pageOf(url: string, path: string): string {
  const [, page = "", id = ""] = path.split("/");
  return new URL(["records", "lots"].includes(page) ? `/${page}/${id}` : "/", url).href;
}

/**
 * What the forms of a page name; a new bench leads to its first questions and shows none. A test that gives its piece an id of its own
 * starts it under that id.
 */
function aboutOn(markup: string, { key }: Record<string, string>): Record<string, string> {
  const field = (name: string) => new RegExp(`name="${name}" value="([^"]*)"`).exec(markup)?.[1] ?? "";
  const [subject, version] = [field("subject"), field("version") || "0"];
  const own = key !== undefined && version === "0" ? { subject: key, version } : { subject, version };
  return { ...own, lotVersion: field("lotVersion"), method: field("method") || "hung" };
}

/** A typed weighing from ticket to record under the given id; readings in g, hung in water of 21.4 °C. */
export async function weighAt(post: Awaited<ReturnType<typeof formPoster>>, id: string): Promise<void> {
  await post("/bench/piece", { ticket: id, description: "", method: "hung", claim: "ag-999", key: id });
  await post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await post("/bench/water", { celsius: "21.4" });
  const answer = await post("/bench/record", {});
  if (answer.status !== 303) throw new Error(`The piece ${id} was not recorded: ${await answer.text()}`);
}
