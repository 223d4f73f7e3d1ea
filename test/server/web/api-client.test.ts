import { execFile, execFileSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { promisify } from "node:util";
import openapiTS, { astToString } from "openapi-typescript";
import { afterAll, beforeAll, expect, test } from "vitest";
import { newToken, scopes } from "../../../server/ledger/tokens.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, recorded } from "./recorded.ts";

let at: TestBench;
let address: string;
let token: string;
const folder = mkdtempSync(join(tmpdir(), "underhook-client-"));
beforeAll(async () => {
  at = await buildTestBench();
  const made = newToken(randomBytes(32));
  token = made.token;
  const { tokenHash } = made;
  await at.ledger.append("token-issued", "tokens", { name: "stock", tokenHash, scopes: [...scopes] });
  await at.app.listen({ port: 0, host: "127.0.0.1" });
  const bound = at.app.server.address();
  address = `http://127.0.0.1:${typeof bound === "object" ? bound?.port : 0}`;
});
afterAll(async () => {
  await at.close();
  rmSync(folder, { recursive: true });
});

/** What somebody writes who has nothing of the project but the published document. */
const program = `
import createClient from "openapi-fetch";
import type { paths } from "./underhook.ts";

const [, , baseUrl = "", token = ""] = process.argv;
const bench = createClient<paths>({ baseUrl, headers: { authorization: \`Bearer \${token}\` } });

const told = await bench.POST("/api/tickets", {
  params: { header: { "idempotency-key": "order-7" } },
  body: { ticket: "S-7", description: "spoon", claim: "ag-925", mass_g: "52.10" },
});
if (told.error) throw new Error(told.error.detail);
const seq: number = told.data.seq;

const { data: list } = await bench.GET("/api/records", { params: { query: { size: 10, count: "exact" } } });
const first = list?.records[0];
const density: number | null | undefined = first?.density_g_cm3;

let after = 0;
const kinds: string[] = [];
for (let more = true; more; ) {
  const { data, error } = await bench.GET("/api/entries", { params: { query: { after, size: 3 } } });
  if (error) throw new Error(error.detail);
  kinds.push(...data.entries.map(({ kind }) => kind));
  ({ next: after, more } = data);
}

const { error: missing } = await bench.GET("/api/records/{id}", { params: { path: { id: "nobody" } } });
console.log(JSON.stringify({ seq, count: list?.count, density, kinds, after, code: missing?.code }));
`;

test("a client generated from the served document compiles under strict TypeScript and does its work", {
  timeout: 120_000,
}, async () => {
  await recorded(at, { id: "bar-1", ticket: "B-1", claim: "ag-999", dry: "31.1035", immersed: "28.1435" });
  const served = await at.app.inject({ url: "/api/openapi.json", headers: { host } });
  writeFileSync(join(folder, "underhook.ts"), astToString(await openapiTS(served.json())));
  writeFileSync(join(folder, "client.ts"), program);
  writeFileSync(join(folder, "package.json"), '{"type":"module"}');
  symlinkSync(resolve("node_modules"), join(folder, "node_modules"));
  const options =
    "--strict --exactOptionalPropertyTypes --noUncheckedIndexedAccess --skipLibCheck --target es2023 --module nodenext";
  const tsc = resolve("node_modules/typescript/bin/tsc");
  execFileSync(
    process.execPath,
    [tsc, ...options.split(" "), "--types", "node", "--rewriteRelativeImportExtensions", "client.ts"],
    { cwd: folder, stdio: "inherit" },
  );
  const { stdout } = await promisify(execFile)(process.execPath, ["client.js", address, token], {
    cwd: folder,
  });
  const head = await at.ledger.head();
  const entries = await at.ledger.entries();
  expect(JSON.parse(stdout)).toEqual({
    seq: head?.seq,
    count: 1,
    density: expect.closeTo(10.47, 1),
    kinds: entries.map(({ kind }) => kind),
    after: head?.seq,
    code: "api.refused.no-record",
  });
});

test("a ticket sent again under its key is announced once; another piece under that key is refused", async () => {
  const send = (payload: object, key: string | undefined = "order-8") =>
    at.app.inject({
      method: "POST",
      url: "/api/tickets",
      headers: {
        host,
        authorization: `Bearer ${token}`,
        ...(key === "" ? {} : { "idempotency-key": key }),
      },
      payload,
    });
  const once = await send({ ticket: "S-8", claim: "au-750" });
  const again = await send({ ticket: "S-8", claim: "au-750" });
  expect([once.statusCode, again.statusCode]).toEqual([201, 201]);
  expect(again.json()).toEqual(once.json());
  const page = await at.app.inject({ url: "/tickets", headers: { host } });
  expect(page.body.match(/S-8/g)?.length).toBeGreaterThan(0);
  const head = await at.ledger.head();
  const refused = await Promise.all([
    send({ ticket: "S-9" }),
    send({ ticket: "S-9" }, ""),
    send({ ticket: "S-9", claim: "unobtainium" }, "order-9"),
    send({ ticket: "" }, "order-10"),
    send({ ticket: "S-9", colour: "red" }, "order-11"),
    send({ ticket: "S-9", mass_g: "heavy" }, "order-12"),
  ]);
  expect(refused.map((one) => [one.statusCode, one.json().status])).toEqual(
    [409, 400, 422, 400, 400, 400].map((status) => [status, status]),
  );
  for (const one of refused) {
    expect(one.headers["content-type"]).toContain("application/problem+json");
    expect(one.json().detail).toBe(one.json().error.message);
  }
  expect(await at.ledger.head()).toEqual(head);
});

test("whoever watches the program sees whether it lives and can keep a record, and with a token its figures", async () => {
  const asked = (url: string, headers = {}) => at.app.inject({ url, headers: { host, ...headers } });
  expect((await asked("/health")).json()).toEqual({ status: "ok" });
  expect((await asked("/ready")).json()).toEqual({
    ...{ status: "ready", ledger: "stores" },
    ...{ balance: "none", shared_ledger: "none" },
  });
  expect((await asked("/api/metrics")).statusCode).toBe(401);
  const { headers, body } = await asked("/api/metrics", { authorization: `Bearer ${token}` });
  expect(headers["content-type"]).toMatch(/^text\/plain; version=0\.0\.4/);
  const entries = Number(/^underhook_ledger_entries (\d+)$/m.exec(body)?.[1]);
  expect(entries).toBe((await at.ledger.head())?.seq);
  expect(body).toMatch(/^process_resident_memory_bytes \d+$/m);
});

test("what has not changed is not sent again: an answer carries its tag", async () => {
  const headers = { host, authorization: `Bearer ${token}` };
  const first = await at.app.inject({ url: "/api/records/bar-1", headers });
  const { etag } = first.headers;
  const again = () =>
    at.app.inject({ url: "/api/records/bar-1", headers: { ...headers, "if-none-match": String(etag) } });
  expect([(await again()).statusCode, (await again()).body]).toEqual([304, ""]);
  await at.post("/records/bar-1/voiding", { by: "K", reason: "bubble" });
  expect((await again()).statusCode).toBe(200);
});
