import { buildTestBench, type TestBench } from "../build.ts";
import { host, wordsOf } from "../web/recorded.ts";

/** A counter with its bench, worked through the forms of the pages as a person would. */
export interface Counter {
  at: TestBench;
  /** puts a piece on the bench, hung and without a claim unless told otherwise */
  piece(told?: { method?: string; claim?: string } & Record<string, string>): Promise<void>;
  /** types readings in g, each into its box: `["dry", "31.10"]` */
  types(...readings: readonly (readonly [role: string, text: string])[]): Promise<void>;
  water(celsius: string): Promise<void>;
  /** the words of a page as its reader sees them */
  page(url?: string, language?: string): Promise<string>;
  /** every reading of the piece in the ledger as it was typed, also what was set aside */
  kept(): Promise<string[]>;
}

const id = "story";

export async function openCounter(): Promise<Counter> {
  const at = await buildTestBench();
  const done = (answer: { statusCode: number; body: string }) => {
    if (answer.statusCode !== 303) throw new Error(`Refused: ${wordsOf(answer.body)}`);
  };
  return {
    at,
    async piece(told = {}) {
      done(
        await at.post("/bench/piece", {
          ticket: "S-1",
          description: "",
          method: "hung",
          claim: "",
          key: id,
          ...told,
        }),
      );
    },
    async types(...readings) {
      for (const [role, reading] of readings)
        done(await at.post("/bench/typed-readings", { role, reading, unit: "g" }));
    },
    async water(celsius) {
      done(await at.post("/bench/water", { celsius }));
    },
    async page(url = "/", language = "en") {
      const { body } = await at.app.inject({ url, headers: { host, "accept-language": language } });
      return wordsOf(body).replaceAll("&#39;", "'");
    },
    async kept() {
      return (await at.ledger.entriesOf(id)).flatMap(({ kind, body }) =>
        kind === "capture" && "reading" in body ? [`${body.what} ${body.reading.text}`] : [],
      );
    },
  };
}

/** The address of the first link that leads to this place of the pages, as a browser would follow it. */
export async function linkTo(at: TestBench, url: string, to: string): Promise<string> {
  const { body } = await at.app.inject({ url, headers: { host } });
  const href = new RegExp(`href="(${to}[^"]*)"`).exec(body)?.[1];
  if (href === undefined) throw new Error(`${url} has no link to ${to}.`);
  return href.replaceAll("&amp;", "&");
}
