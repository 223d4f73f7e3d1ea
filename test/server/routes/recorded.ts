import type { TestBench } from "../build.ts";

/** The Host header that the bench answers to in tests. */
export const host = "localhost:1";

/** A typed weighing from ticket to record under the given id; readings in g, hung in water of 21.4 °C. */
export async function recorded(
  at: TestBench,
  piece: { id: string; ticket?: string; claim?: string; dry: string; immersed: string },
): Promise<void> {
  const { id, ticket = id, claim = "", dry, immersed } = piece;
  await at.post("/bench/piece", { ticket, description: "an invented piece", method: "hung", claim, key: id });
  await at.post("/bench/typed-readings", { role: "dry", reading: dry, unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: immersed, unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
  const answer = await at.post("/bench/record", {});
  if (answer.statusCode !== 303) throw new Error(`The piece ${id} was not recorded: ${answer.body}`);
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
