import { once } from "node:events";
import { type IncomingMessage, request } from "node:http";
import { text } from "node:stream/consumers";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { tellerOf } from "../../views/messages/tell.ts";
import { messageText } from "../message-text.ts";
import { buildTestBench, type TestBench } from "./build.ts";
import { codesIn } from "./page-fields.ts";

const t = tellerOf("en");

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const host = "localhost:1";
const opened = { ticket: "T-1", description: "a bar", method: "hung", claim: "ag-999", key: "piece-1" };

async function weighed() {
  await at.post("/bench/piece", opened);
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await at.post("/bench/water", { celsius: "21,4" });
}

describe("who may ask", () => {
  test("a foreign Host header is refused with the address that would be right", async () => {
    const { port } = new URL(await at.app.listen({ host: "127.0.0.1", port: 0 }));
    const asked = request({
      host: "127.0.0.1",
      port: port,
      headers: { host: "bench.example" },
    }).end();
    const [answer] = (await once(asked, "response")) as [IncomingMessage];
    expect(answer.statusCode).toBe(403);
    const message = await text(answer);
    expect(message).toContain("bench.example");
    expect(message).toContain(`http://localhost:${port}/`);
  });

  test("a foreign Origin header is refused even for reading", async () => {
    const answer = await at.app.inject({
      url: "/records",
      headers: { host, origin: "http://elsewhere.example" },
    });
    expect(answer.statusCode).toBe(403);
    expect(answer.body).toContain("elsewhere.example");
  });

  test("loopback names and addresses are let in", async () => {
    for (const name of ["localhost:4319", "127.0.0.1:4319", "[::1]:4319"])
      expect((await at.app.inject({ url: "/", headers: { host: name } })).statusCode).toBe(200);
  });

  test("a form without its token changes nothing and says what to do", async () => {
    const answer = await at.app.inject({
      method: "POST",
      url: "/bench/piece",
      headers: { host, "content-type": "application/x-www-form-urlencoded" },
      payload: new URLSearchParams(opened).toString(),
    });
    expect(answer.statusCode).toBe(403);
    expect(answer.body).toContain("Reload the page");
    expect(at.bench.item).toBeUndefined();
  });

  test("every form on the page carries the token", async () => {
    await weighed();
    for (const url of ["/", "/records"]) {
      const { body } = await at.app.inject({ url, headers: { host } });
      const posts = body.match(/<form[^>]*method="post"[^>]*>.*?<\/form>/gs) ?? [];
      for (const form of posts) expect(form).toContain('name="_csrf"');
    }
  });

  test("the page allows scripts and styles of its own only, and none inline", async () => {
    const { headers, body } = await at.app.inject({ url: "/", headers: { host } });
    const policy = String(headers["content-security-policy"]);
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("style-src 'self'");
    expect(policy).not.toContain("unsafe");
    expect(body).not.toMatch(/<script(?![^>]*src=)/);
    expect(body).not.toMatch(/\sstyle="/);
    expect(body).not.toMatch(/https?:\/\/(?!www\.w3\.org)/);
  });

  test("a form larger than the limit is refused with the limit", async () => {
    const answer = await at.post("/bench/piece", { ...opened, description: "x".repeat(300_000) });
    expect(answer.statusCode).toBe(413);
    expect(answer.body).toContain("256 kB");
  });
});

describe("a typed weighing, scripts off", () => {
  test("goes from ticket to record, and the record shows what was typed", async () => {
    await weighed();
    const answer = await at.post("/bench/record", {});
    expect(answer.statusCode).toBe(303);
    const { body } = await at.app.inject({ url: "/records/piece-1", headers: { host } });
    expect(body).toContain("Record of T-1");
    expect(body).toContain("31.1035 g");
    expect(body).toContain("28.1435 g");
    const list = await at.app.inject({ url: "/records?q=T-1", headers: { host } });
    expect(list.body).toContain("/records/piece-1");
  });

  test("a form sent twice stores once", async () => {
    await at.post("/bench/piece", opened);
    const reading = { role: "dry", reading: "31.10", unit: "g", subject: "piece-1", version: "1" };
    await at.post("/bench/typed-readings", reading);
    await at.post("/bench/typed-readings", reading);
    expect(at.bench.item?.captures).toHaveLength(1);
  });

  test("a refused reading says why and leaves the typed text in its field", async () => {
    await at.post("/bench/piece", opened);
    const answer = await at.post("/bench/typed-readings", { role: "dry", reading: "thirty-one", unit: "g" });
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain(messageText("form.number.not-a-number", { typed: "thirty-one" }));
    expect(answer.body).toContain('value="thirty-one"');
    expect(at.bench.item?.captures).toHaveLength(0);
  });

  test("a thousands comma is asked about, never guessed", async () => {
    await at.post("/bench/piece", opened);
    const answer = await at.post("/bench/typed-readings", { role: "dry", reading: "1,234", unit: "g" });
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain("1.234");
    expect(answer.body).toContain("1234");
  });

  test("water at 70 °C is refused with the range, and °F is offered as a guess", async () => {
    await at.post("/bench/piece", opened);
    const answer = await at.post("/bench/water", { celsius: "70" });
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain("0 to 40 °C");
    expect(answer.body).toContain(
      messageText("form.number.fahrenheit", {
        typed: { decimal: "70" },
        celsius: { decimal: "21.1" },
        from: 0,
        to: 40,
      }),
    );
  });

  test("a second piece is refused while one is on the bench, by its name", async () => {
    await at.post("/bench/piece", opened);
    const answer = await at.post("/bench/piece", { ...opened, ticket: "T-2", key: "piece-2" });
    expect(answer.statusCode).toBe(422);
    expect(codesIn(answer.body)).toEqual(["weighing.bench-taken"]);
  });

  test("a record that lacks a reading names the reading", async () => {
    await at.post("/bench/piece", opened);
    const answer = await at.post("/bench/record", {});
    expect(answer.statusCode).toBe(422);
    expect(codesIn(answer.body)).toEqual(["weighing.record.incomplete"]);
  });

  test("a reading set aside stays visible with its reason and counts no more", async () => {
    await weighed();
    const immersed = at.bench.item?.captures[1]?.id ?? "";
    const refused = await at.post(`/bench/captures/${immersed}/voiding`, { reason: " " });
    expect(refused.statusCode).toBe(422);
    await at.post(`/bench/captures/${immersed}/voiding`, { reason: "bubble on the edge" });
    const { body } = await at.app.inject({ url: "/", headers: { host } });
    expect(body).toContain("28.1435");
    expect(body).toContain("bubble on the edge");
    expect(at.bench.evaluation).toBeUndefined();
  });

  test("readings in swapped boxes are asked about, not corrected", async () => {
    await at.post("/bench/piece", opened);
    await at.post("/bench/typed-readings", { role: "dry", reading: "28.14", unit: "g" });
    await at.post("/bench/typed-readings", { role: "immersed", reading: "31.10", unit: "g" });
    const { body } = await at.app.inject({ url: "/", headers: { host } });
    expect(body).toContain(t("bench.steps.doubts"));
    expect(at.bench.item?.captures.map(({ text }) => text)).toEqual(["28.14", "31.10"]);
  });

  test("markup in a ticket is shown as text", async () => {
    await at.post("/bench/piece", { ...opened, ticket: "<b>bold</b>" });
    const { body } = await at.app.inject({ url: "/", headers: { host } });
    expect(body).toContain("&lt;b>bold&lt;/b>");
    expect(body).not.toContain("<b>bold</b>");
  });

  test("an amendment and a voiding are added and the first words stay", async () => {
    await weighed();
    await at.post("/bench/record", {});
    await at.post("/records/piece-1/amendments", {
      ticket: "T-1a",
      by: "K",
      reason: "ticket misread",
      step: "s1-amend",
    });
    await at.post("/records/piece-1/voiding", { by: "K", reason: "wrong piece", step: "s1-void" });
    const { body } = await at.app.inject({ url: "/records/piece-1", headers: { host } });
    for (const words of ["ticket misread", "T-1a", "T-1", "wrong piece", "31.1035 g"])
      expect(body).toContain(words);
    const nameless = await at.post("/records/piece-1/voiding", { by: "", reason: "again" });
    expect(nameless.statusCode).toBe(422);
  });
});

describe("a restart", () => {
  test("finds the piece at the step it was in", async () => {
    await at.post("/bench/piece", opened);
    await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
    const { file } = at;
    await at.close();
    at = await buildTestBench(file);
    expect(at.bench.item?.captures.map(({ text }) => text)).toEqual(["31.1035"]);
    const { body } = await at.app.inject({ url: "/", headers: { host } });
    expect(body).toMatch(/aria-current="step"[^>]*>.*Weigh immersed/s);
  });
});

describe("the programmed door", () => {
  const request = {
    id: "a1",
    method: "hung",
    dry: { readings: ["8.630"] },
    immersed: { readings: ["7.800"] },
    liquid: { kind: "stated", name: "water of the example", density_g_cm3: 1, u_g_cm3: 0 },
    // the example leaves the air out; that of a room changes its third digit by nothing
    air: { density_kg_m3: 1.2, u_kg_m3: 0 },
    balance: { readability_g: 0.001, repeatability_g: 0.001 },
  };

  test("answers the coin of a textbook with the number it prints", async () => {
    // OpenStax College Physics 2e, Example 11.10 (CC BY): 8.630 g in air, 7.800 g in water of 1.000 g/cm³, printed
    // 10.4 g/cm³ to three digits; 8.630/0.830 = 10.3976 unrounded.
    const answer = await at.app.inject({
      method: "POST",
      url: "/api/compute",
      headers: { host },
      payload: request,
    });
    expect(answer.statusCode).toBe(200);
    expect(answer.json().density_g_cm3.toPrecision(3)).toBe("10.4");
  });

  test("refuses an unknown key by its path and name", async () => {
    const answer = await at.app.inject({
      method: "POST",
      url: "/api/compute",
      headers: { host },
      payload: { ...request, balance: { ...request.balance, redability_g: 1 } },
    });
    expect(answer.statusCode).toBe(422);
    expect(answer.json()).toMatchObject({ id: "a1", error: { at: "balance.redability_g" } });
  });

  test("publishes its schema", async () => {
    const answer = await at.app.inject({ url: "/api/openapi.json", headers: { host } });
    expect(answer.json().paths["/api/compute"].post.requestBody).toBeDefined();
  });
});
