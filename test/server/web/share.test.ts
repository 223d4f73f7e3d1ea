import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { tellerOf } from "../../../views/messages/tell.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, wordsOf } from "./recorded.ts";

const t = tellerOf("en");

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
  await at.post("/bench/piece", {
    ticket: "Doe-17",
    description: "certified bar of Mrs Doe",
    method: "hung",
    claim: "ag-999",
    key: "bar-1",
  });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
  await at.post("/bench/record", {});
});
afterEach(() => at.close());

const get = async (url: string, language = "en") =>
  at.app.inject({ url, headers: { host, "accept-language": language } });
/** The words of a picture: its title and description are left out, since nobody sees them. */
const seenIn = (svg: string) =>
  wordsOf(svg.replace(/<(title|desc)>.*?<\/\1>/gs, "").replaceAll("svg", "div"));

describe("one page to share of a record", () => {
  test.each(["svg", "txt"])(
    "%s: readings, method, density with U and k, claim, what is not excluded",
    async (ending) => {
      const answer = await get(`/records/bar-1/share.${ending}`);
      expect(answer.statusCode).toBe(200);
      const seen = ending === "svg" ? seenIn(answer.body) : answer.body.replace(/\s+/g, " ");
      for (const part of [
        "31.1035 g (typed)",
        "28.1435 g (typed)",
        "hung from the balance",
        "21.4 °C",
        // 31.1035 / 2.96 of (0.997904 - 0.0012) g/cm³ and 0.0012 more for the air: water of 21.4 °C between 0.997992 at
        // 21 and 0.997770 at 22 °C (Tanaka et al., Metrologia 38 (2001) 301, from memory), air of 1.2 kg/m³
        "Density: 10.4745",
        `${t("report.supplied.claim")} Silver 999`,
        "What this density does not exclude",
        "Evidence, not an assay.",
      ])
        expect(seen).toContain(part);
      expect(seen).toMatch(/U = 0\.0\d+ g\/cm³ with k = \d\.\d\d, for 95(\.45)? % coverage/);
      expect(seen).not.toMatch(/certif/i);
    },
  );

  test("nothing of the customer stands in it until it is ticked, and then as it was written", async () => {
    for (const ending of ["svg", "txt"]) {
      expect((await get(`/records/bar-1/share.${ending}`)).body).not.toMatch(/Doe|bar-1/);
      const told = (await get(`/records/bar-1/share.${ending}?ticket=1&piece=1`)).body;
      expect(told).toContain("Ticket: Doe-17");
      expect(told).toMatch(/certified bar of Mrs Doe/i);
    }
    const page = (await get("/records/bar-1/share?piece=1")).body;
    expect(page).toContain('src="/records/bar-1/share.svg?piece=1"');
    expect(page).toContain("bar of Mrs Doe");
    expect(page).not.toContain("Doe-17");
  });

  test("the picture needs nothing from outside and no style sheet", async () => {
    const answer = await get("/records/bar-1/share.svg");
    expect(answer.headers["content-type"]).toContain("image/svg+xml");
    expect(answer.body).not.toMatch(/class=|style=|<style|<script|href=|src=|url\((?!#share)/);
    expect(answer.body.replace("http://www.w3.org/2000/svg", "")).not.toContain("http");
  });

  test("it speaks the language of the reader, and says when the record was voided", async () => {
    await at.post("/records/bar-1/voiding", { by: "K", reason: "wrong piece of Mrs Doe" });
    const { body } = await get("/records/bar-1/share.txt", "de");
    expect(body).toContain("für ungültig erklärt");
    expect(body).toContain(`31,1035 g (${tellerOf("de")("share.typed")})`);
    expect(body).toContain("Ein Hinweis, keine Analyse.");
    expect(body).not.toContain("Doe");
    expect((await get("/records/none/share.txt")).statusCode).toBe(404);
  });

  test("the page loads its script under the same version as all others", async () => {
    const { body } = await get("/records/bar-1/share");
    const scripts = [...body.matchAll(/<script[^>]* src="([^"?]+)\?v=([^"]+)"/g)];
    expect(scripts.map(([, path]) => path)).toContain("/assets/share.js");
    expect(new Set(scripts.map(([, , version]) => version)).size).toBe(1);
    expect((await get("/assets/share.js")).statusCode).toBe(200);
  });
});
