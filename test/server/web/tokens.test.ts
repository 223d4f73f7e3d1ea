import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const wanted = { name: "stock system", "records:read": "yes", "live:read": "yes", by: "K", step: "step-1" };
const listWith = async (token: string) =>
  (await at.app.inject({ url: "/api/records", headers: { host, authorization: `Bearer ${token}` } }))
    .statusCode;

async function made(fields: Record<string, string> = wanted): Promise<string> {
  const answer = await at.post("/settings/tokens", fields);
  expect(answer.headers["cache-control"]).toBe("no-store");
  return /uht_[\w-]+/.exec(answer.body)?.[0] ?? "";
}

test("a token is made on its page, shown once, opens what was ticked, and is in the ledger as a hash alone", async () => {
  const token = await made();
  expect(await listWith(token)).toBe(200);
  const page = await at.app.inject({ url: "/settings/tokens", headers: { host } });
  expect(page.body).not.toContain(token);
  expect(wordsOf(page.body)).toMatch(
    /stock system read records and the entries they rest on; listen to the live reading .* until revoked/,
  );
  expect(JSON.stringify(await at.ledger.entries())).not.toContain(token);
});

test("a revoked token opens nothing any more, and its reason is asked for and kept", async () => {
  const token = await made();
  const [issued] = await at.ledger.entries({ kind: "token-issued" });
  const tokenHash = issued?.kind === "token-issued" ? issued.body.tokenHash : "";
  const without = await at.post(`/settings/tokens/${tokenHash}/revocation`, { reason: " " });
  expect([without.statusCode, await listWith(token)]).toEqual([422, 200]);
  await at.post(`/settings/tokens/${tokenHash}/revocation`, { reason: "contract ended" });
  expect(await listWith(token)).toBe(401);
  expect(await textOf(at, "/settings/tokens")).toMatch(/stock system .* revoked/);
  const [revoked] = await at.ledger.entries({ kind: "token-revoked" });
  expect(revoked?.body).toMatchObject({ reason: "contract ended" });
});

test("a form that lacks name, scope or a day to come makes no token and says what would be right", async () => {
  const answer = await at.post("/settings/tokens", { name: " ", until: "2020-01-01" });
  expect(answer.statusCode).toBe(422);
  const text = wordsOf(answer.body);
  for (const part of ["The name is empty", "Nothing is ticked", "“2020-01-01” is no day to come"])
    expect(text).toContain(part);
  expect(await at.ledger.entries({ kind: "token-issued" })).toEqual([]);
});

test("the same form sent twice makes one token", async () => {
  const token = await made();
  const again = await at.post("/settings/tokens", wanted);
  expect(again.statusCode).toBe(422);
  expect(await listWith(token)).toBe(200);
  expect(await at.ledger.entries({ kind: "token-issued" })).toHaveLength(1);
});
