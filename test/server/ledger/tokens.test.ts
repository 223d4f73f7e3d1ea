import { randomBytes } from "node:crypto";
import { expect, test } from "vitest";
import { mayWith, newToken, scopesOf, tokensFrom } from "../../../server/ledger/tokens.ts";
import { testLedger } from "./bench-ledger.ts";

const now = new Date("2026-03-02T09:00:00.000Z");

test("a token does what its scopes say, nothing else, and not after its end or its revocation", async () => {
  const ledger = await testLedger();
  const { token, tokenHash } = newToken(randomBytes(32));
  const until = "2026-06-01T00:00:00.000Z";
  await ledger.append("token-issued", "tokens", {
    name: "laboratory system",
    tokenHash,
    scopes: ["records:read"],
    until,
  });
  const may = async (scope: "records:read" | "lots:read", at = now, header = `Bearer ${token}`) =>
    mayWith(header, scope, tokensFrom(await ledger.entries({ kind: ["token-issued", "token-revoked"] })), at);

  expect(await may("records:read")).toEqual({ may: true, name: "laboratory system" });
  expect(await may("lots:read")).toMatchObject({
    status: 403,
    message: { code: "ledger.token.other-scope", params: { covers: ["records:read"], scope: "lots:read" } },
  });
  expect(await may("records:read", new Date(until))).toMatchObject({ status: 401 });
  expect(await may("records:read", now, `Bearer ${newToken(randomBytes(32)).token}`)).toMatchObject({
    status: 401,
  });
  for (const header of ["", "Bearer", `Basic ${token}`, `Bearer ${tokenHash}`, `Bearer ${token}x`])
    expect(await may("records:read", now, header)).toMatchObject({ may: false, status: 401 });
  await ledger.append("token-revoked", "tokens", { tokenHash, reason: "contract ended" });
  expect(await may("records:read")).toMatchObject({ status: 401, message: { code: "ledger.token.unknown" } });
});

test("the ledger keeps the hash of a token, never the token", async () => {
  const ledger = await testLedger();
  const { token, tokenHash } = newToken(randomBytes(32));
  await ledger.append("token-issued", "tokens", { name: "x", tokenHash, scopes: ["live:read"] });
  expect(JSON.stringify(await ledger.entries())).not.toContain(token);
});

test("an unknown scope is refused with the list of known ones", () => {
  expect(() => scopesOf(["records:read", "everything"])).toThrow(
    expect.objectContaining({
      code: "ledger.token.unknown-scope",
      params: { scopes: ["everything"], known: expect.arrayContaining(["records:read", "lots:read"]) },
    }),
  );
  expect(() => scopesOf([])).toThrow(expect.objectContaining({ code: "ledger.token.no-scope" }));
});
