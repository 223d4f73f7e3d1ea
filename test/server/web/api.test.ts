import { randomBytes } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterEach, beforeEach, expect, test } from "vitest";
import { message } from "../../../calibration/message.ts";
import { newToken, type Scope, scopes } from "../../../server/ledger/tokens.ts";
import { tell } from "../../../views/messages/tell.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, recorded } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

async function tokenFor(...covered: Scope[]): Promise<string> {
  const { token, tokenHash } = newToken(randomBytes(32));
  await at.ledger.append("token-issued", "tokens", { name: "laboratory", tokenHash, scopes: covered });
  return token;
}

const get = (url: string, token?: string) =>
  at.app.inject({
    url,
    headers: { host, ...(token === undefined ? {} : { authorization: `Bearer ${token}` }) },
  });

interface Document {
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, object> };
}
interface Operation {
  security?: { token: unknown[] }[];
  responses: Record<string, { content?: Record<string, { schema: object }> }>;
}

const document = async (): Promise<Document> => (await get("/api/openapi.json")).json();

/** A validator of one answer as the served document describes it. */
async function published(path: string, status = "200") {
  const { paths, components } = await document();
  const content = paths[path]?.get?.responses[status]?.content;
  const schema = content?.[status === "200" ? "application/json" : "application/problem+json"]?.schema;
  if (!schema) throw new Error(`The document has no answer ${status} of GET ${path}.`);
  const ajv = new Ajv2020({ strict: false, validateFormats: false });
  const check = ajv.compile({ ...schema, components });
  return (answer: unknown) => {
    check(answer);
    return check.errors ?? [];
  };
}

const piece = { ticket: "B-1", claim: "ag-999", dry: "31.1035", immersed: "28.1435" };

test("the served document is OpenAPI 3.1 by the schema of the OpenAPI Initiative, and every $ref in it leads somewhere", async () => {
  // https://spec.openapis.org/oas/3.1/schema/2026-08-03, as published
  const meta = JSON.parse(readFileSync(join(import.meta.dirname, "published/openapi-3.1.json"), "utf8"));
  const served = await document();
  const check = new Ajv2020({ strict: false, validateFormats: false }).compile(meta);
  check(served);
  expect(check.errors).toBeNull();
  expect(check({ ...served, paths: { "/x": { get: { responses: "none" } } } })).toBe(false);
  const names = [...JSON.stringify(served).matchAll(/"#\/components\/schemas\/([^"]+)"/g)].map(
    ([, name]) => name,
  );
  expect(names.length).toBeGreaterThan(5);
  for (const name of names) expect(Object.keys(served.components.schemas)).toContain(name);
  for (const path of [
    "/api/records",
    "/api/records/{id}",
    "/api/lots",
    "/api/lots/{id}",
    "/api/checks",
    "/api/live",
    "/api/live/events",
  ])
    expect(served.paths[path]?.get?.security, path).toEqual([{ token: [] }]);
});

test("each request needs a token, and a token opens its own scope and nothing else", async () => {
  await recorded(at, { id: "bar-1", ...piece });
  const needs: [url: string, scope: Scope][] = [
    ["/api/records", "records:read"],
    ["/api/records/bar-1", "records:read"],
    ["/api/lots", "lots:read"],
    ["/api/checks", "checks:read"],
    ["/api/live", "live:read"],
  ];
  const refused = await published("/api/records", "401");
  for (const [url, scope] of needs) {
    const without = await get(url);
    expect([without.statusCode, without.headers["www-authenticate"]], url).toEqual([
      401,
      'Bearer realm="underhook"',
    ]);
    expect(refused(without.json())).toEqual([]);
    const others = (Object.keys(scopes) as Scope[]).filter((one) => one !== scope);
    const wrong = await get(url, await tokenFor(...others));
    expect([wrong.statusCode, wrong.json().error.message], url).toEqual([
      403,
      expect.stringContaining(`not ${scope}`),
    ]);
    expect(wrong.headers["www-authenticate"]).toContain("insufficient_scope");
    expect((await get(url, await tokenFor(scope))).statusCode, url).toBe(200);
  }
});

test("records are listed, filtered, searched and paged, and one comes with its entries, all as published", async () => {
  for (const n of [1, 2, 3]) await recorded(at, { id: `bar-${n}`, ...piece, ticket: `B-${n}` });
  await at.post("/records/bar-2/voiding", { by: "K", reason: "bubble" });
  const token = await tokenFor("records:read");
  const asPublished = await published("/api/records");
  const list = async (query: string) => {
    const answer = await get(`/api/records${query}`, token);
    expect(asPublished(answer.json())).toEqual([]);
    return answer.json();
  };
  const tickets = ({ records }: { records: { ticket: string }[] }) => records.map(({ ticket }) => ticket);
  expect(tickets(await list(""))).toEqual(["B-3", "B-2", "B-1"]);
  const first = await list("?size=2");
  expect(tickets(first)).toEqual(["B-3", "B-2"]);
  expect(tickets(await list(`?size=2&before=${first.next}`))).toEqual(["B-1"]);
  expect(tickets(await list("?voided=true"))).toEqual(["B-2"]);
  expect(tickets(await list("?q=invented%20B-1"))).toEqual(["B-1"]);
  expect(tickets(await list("?claim=au-750"))).toEqual([]);

  const assay = { metal: "silver", laboratory: "an invented laboratory", report: "L-1", method: "ISO 11427" };
  const found = { permille: "998,70", expanded: "0,4", date: "2024-03-28" };
  await at.post("/records/bar-1/laboratory", { ...assay, ...found });
  const assayed = (await get("/api/records/bar-1", token)).json();
  expect((await published("/api/records/{id}"))(assayed)).toEqual([]);
  expect(assayed.laboratory_results).toEqual([
    expect.objectContaining({ ...assay, permille: "998.70", expanded_permille: "0.4", date: "2024-03-28" }),
  ]);
  const one = await get("/api/records/bar-2", token);
  expect((await published("/api/records/{id}"))(one.json())).toEqual([]);
  expect(one.json().record).toMatchObject({ ticket: "B-2", voided: true, mass_g: expect.closeTo(31.1, 1) });
  expect(one.json().entries).toEqual(JSON.parse(JSON.stringify(await at.ledger.entriesOf("bar-2"))));

  const nobody = await get("/api/records/nobody", token);
  expect([nobody.statusCode, nobody.json().error.message]).toEqual([404, expect.stringContaining("nobody")]);
  const wrong = await get("/api/records?size=9000", token);
  expect([wrong.statusCode, wrong.json().error.message]).toEqual([400, expect.stringContaining("size")]);
  expect((await get("/api/records?colour=red", token)).statusCode).toBe(400);
});

test("lots with their pieces and checks of the bench come as published", async () => {
  const lot =
    (await at.post("/lots", { name: "Lot 7", gross: "20,05", grossUnit: "g", count: "1" })).headers
      .location ?? "";
  await at.post(`${lot}/pieces`, { celsius: "21,4" });
  await at.post(`${lot}/pieces`, { ticket: "31", claim: "au-585", step: at.bench.nextPiece });
  await at.post(`${lot}/pieces`, { typed: "12,90", role: "dry", unit: "g", step: "31-0" });
  await at.post(`${lot}/pieces`, { typed: "11.932", role: "immersed", unit: "g", step: "31-1" });
  await at.ledger.append("check", "typed", { kind: "check weight", passed: false, says: "50 mg too much" });
  const token = await tokenFor("lots:read", "checks:read");
  const lots = (await get("/api/lots", token)).json();
  expect((await published("/api/lots"))(lots)).toEqual([]);
  expect(lots.lots).toEqual([expect.objectContaining({ name: "Lot 7", pieces: 1 })]);
  const one = (await get(`/api/lots/${lots.lots[0].id}`, token)).json();
  expect((await published("/api/lots/{id}"))(one)).toEqual([]);
  expect(one.pieces).toEqual([expect.objectContaining({ ticket: "31", dry_g: 12.9, typed: true })]);
  expect((await get("/api/lots/none", token)).statusCode).toBe(404);
  const checks = (await get("/api/checks", token)).json();
  expect((await published("/api/checks"))(checks)).toEqual([]);
  expect(checks.checks).toEqual([
    expect.objectContaining({ of: "typed", check: expect.objectContaining({ passed: false }) }),
  ]);
});

test("the live reading is told as JSON, and on every change as server-sent events", async () => {
  await at.close();
  at = await buildTestBench(undefined, { demo: true });
  const token = await tokenFor("live:read");
  await at.app.listen({ port: 0, host: "127.0.0.1" });
  const address = at.app.server.address();
  const port = typeof address === "object" ? address?.port : 0;
  const asPublished = await published("/api/live");
  const ended = new AbortController();
  const stream = await fetch(`http://127.0.0.1:${port}/api/live/events`, {
    headers: { authorization: `Bearer ${token}` },
    signal: ended.signal,
  });
  expect(stream.headers.get("content-type")).toContain("text/event-stream");
  await at.post("/bench/piece", {
    ticket: "T-1",
    description: "",
    method: "hung",
    claim: "",
    key: "piece-1",
  });
  let text = "";
  for await (const chunk of stream.body ?? []) {
    text += Buffer.from(chunk).toString();
    if (text.includes('"ticket":"T-1"') && /"state":"reading"/.test(text)) break;
  }
  ended.abort();
  const events = [...text.matchAll(/^data: (.*)\n\n/gm)].map(([, data = ""]) => JSON.parse(data));
  for (const event of events) expect(asPublished(event)).toEqual([]);
  expect(asPublished((await get("/api/live", token)).json())).toEqual([]);
  expect(asPublished({ balance: 3 })).not.toEqual([]);
});

test("computing needs no token, since it shows and stores nothing", async () => {
  const before = await at.ledger.head();
  const answer = await at.app.inject({
    method: "POST",
    url: "/api/compute",
    headers: { host },
    payload: { id: "a", method: "hung" },
  });
  expect(answer.statusCode).toBe(422);
  // brackets so deep that walking into them ends the program's stack
  const headers = { host, "content-type": "application/json" };
  const deep = `${"[".repeat(40_000)}${"]".repeat(40_000)}`;
  const nested = await at.app.inject({ method: "POST", url: "/api/compute", headers, payload: deep });
  expect([nested.statusCode, nested.json().error.message]).toEqual([
    422,
    tell(message("compute.too-deep", { most: 32 }), "en"),
  ]);
  expect(await at.ledger.head()).toEqual(before);
});
