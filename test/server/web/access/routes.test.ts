import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Role, roles } from "../../../../server/access/role.ts";
import { newToken } from "../../../../server/ledger/tokens.ts";
import { codesIn } from "../../page-fields.ts";
import { type Answer, openTestRoom, type TestRoom, type Visitor } from "../../room.ts";

let bench: TestRoom;
let visitors: Record<Role, Visitor>;
/** every route of the application, with an address that leads to it */
let routes: { method: string; path: string; address: string }[];

beforeAll(async () => {
  bench = await openTestRoom();
  const signedIn = roles.map(async (role, place) => [role, await bench.signedIn(`P${place}`, role)] as const);
  visitors = Object.fromEntries(await Promise.all(signedIn)) as Record<Role, Visitor>;
  routes = bench.at.app.routeRights.map(({ method, path }) => ({
    method,
    path,
    address: path.replace("*", "tokens.css").replaceAll(/:\w+/g, "none"),
  }));
}, 60_000);
afterAll(() => bench?.close());

const isForm = ({ method }: { method: string }) => method === "POST";
/** A witness is asked by another bench, which has no page to take a token from; it keeps only what a known key signed. */
const isWitness = ({ path }: { path: string }) => path.startsWith("/witness/");
const isOpen = ({ path }: { path: string }) =>
  /^\/(sign-in|assets\/|manifest\.webmanifest$|service-worker\.js$|health$|ready$)/.test(path);
const isApi = ({ path }: { path: string }) => path.startsWith("/api/");

/** What the brief of the roles says, by nothing but method and path. */
function opened(role: Role, route: { method: string; path: string }): boolean {
  const { path } = route;
  if (isOpen(route) || path === "/sign-out") return true;
  if (role === "supervisor") return true;
  if (role === "customer-display") return !isForm(route) && /^\/customer(\/|$)/.test(path);
  if (role === "auditor") return !isForm(route);
  return !/^\/settings(\/|$)/.test(path) && !(isForm(route) && path === "/first-start");
}

/** A form without its token goes no further than that; so it is seen that it was let through, and nothing is done. */
const went = ({ status, body }: Answer) => (status === 403 ? codesIn(body).join() : status);

describe("every route of the application at the address for the room", () => {
  test("there are more than a hundred, and each has a right", () => {
    expect(routes.length).toBeGreaterThan(100);
    expect(bench.at.app.routeRights.filter(({ right }) => right === undefined)).toEqual([]);
    expect(new Set(routes.map(({ method }) => method))).toEqual(new Set(["GET", "HEAD", "POST"]));
  });

  test("without a session shows the sign-in and nothing else", async () => {
    for (const route of routes) {
      const { method, address } = route;
      const headers = isForm(route) ? { origin: `https://${bench.host}` } : {};
      const answer = await bench.ask({ method, path: address, headers });
      const seen = [method, address, answer.status, answer.headers.location];
      if (isOpen(route)) expect([200, 303, 403], seen.join()).toContain(answer.status);
      else if (method === "GET" && !isApi(route) && !address.endsWith("/live"))
        expect(seen).toEqual([method, address, 303, "/sign-in"]);
      else expect(seen).toEqual([method, address, 401, undefined]);
      expect(answer.cookies.filter((one) => one.startsWith("__Host-"))).toEqual([]);
    }
  }, 120_000);

  test.each(roles)(
    "%s: only what the role covers",
    async (role) => {
      const visitor = visitors[role];
      for (const route of routes) {
        const { method, address } = route;
        if (method === "HEAD" || address === "/sign-out") continue;
        const answer = isForm(route)
          ? await visitor.post(address, { _csrf: "none" })
          : await visitor.get(address);
        const seen = [method, address, went(answer), answer.headers.location].join(" ");
        if (isApi(route)) {
          // the session alone opens no more than the document and computing, which shows nothing of the ledger
          const free = /openapi\.json$/.test(address) || address === "/api/compute";
          const may = free && opened(role, route);
          expect(seen).toMatch(may ? / (200|422) / : / (401|)? ?/);
          if (!may) expect([401, 403]).toContain(answer.status);
          continue;
        }
        expect(answer.headers.location, seen).not.toBe("/sign-in");
        if (!opened(role, route)) {
          const display = role === "customer-display" && method === "GET" && address === "/";
          expect(seen).toBe(display ? "GET / 303 /customer" : `${method} ${address} access.not-your-role `);
        } else if (isWitness(route)) expect(answer.status).toBe(400);
        else if (isForm(route)) expect(seen).toBe(`${method} ${address} refusal.form-too-old `);
        else expect([200, 302, 303, 404, 422], seen).toContain(answer.status);
      }
    },
    120_000,
  );

  test("under another name or from another page is refused, for the best of sessions", async () => {
    const { get, post } = visitors.supervisor;
    for (const route of routes) {
      const { address } = route;
      for (const host of [
        "bench.example",
        `evil.${bench.host}`,
        `localhost:${bench.herePort}`,
        "127.0.0.1",
      ]) {
        const answer = isForm(route) ? await post(address, {}, { host }) : await get(address, { host });
        expect([address, host, answer.status]).toEqual([address, host, 403]);
      }
      for (const origin of ["https://bench.example", `http://${bench.host}`, "null"]) {
        const answer = isForm(route) ? await post(address, {}, { origin }) : await get(address, { origin });
        expect([address, origin, answer.status]).toEqual([address, origin, 403]);
      }
    }
  }, 240_000);

  test("a form that does not say where it comes from is refused", async () => {
    const { cookie, token } = visitors.supervisor;
    for (const { address } of routes.filter(isForm)) {
      const answer = await bench.ask({
        method: "POST",
        path: address,
        headers: { cookie },
        fields: { _csrf: token },
      });
      expect([address, answer.status]).toEqual([address, 403]);
    }
  });

  test("a path that no route has shows nothing without a session", async () => {
    for (const path of ["/nothing", "/records/../settings", "//records", "/%2e%2e/records"]) {
      const answer = await bench.ask({ path });
      expect([path, answer.status, answer.headers.location]).toEqual([path, 303, "/sign-in"]);
    }
    // the files of the style sheets end at their folder
    for (const path of ["/assets/../records", "/assets/%2e%2e/%2e%2e/package.json", "/assets//etc/passwd"])
      expect([403, 404]).toContain((await bench.ask({ path })).status);
    for (const method of ["PUT", "DELETE", "OPTIONS", "PATCH"]) {
      const answer = await bench.ask({
        method,
        path: "/records",
        headers: { origin: `https://${bench.host}` },
      });
      expect([method, answer.status]).toEqual([method, 401]);
    }
  });
});

describe("a program with a token", () => {
  test("reads over TLS what its token covers, without a session and without an origin", async () => {
    const { token, tokenHash } = newToken(new Uint8Array(32).fill(7));
    await bench.at.ledger.append("token-issued", "tokens", {
      name: "laboratory",
      tokenHash,
      scopes: ["records:read"],
    });
    const headers = { authorization: `Bearer ${token}` };
    const status = async (path: string, with_ = headers) =>
      (await bench.ask({ path, headers: with_ })).status;
    expect(await status("/api/records")).toBe(200);
    expect(await status("/api/lots")).toBe(403);
    expect(await status("/api/openapi.json")).toBe(200);
    expect(await status("/api/records", { authorization: `Bearer uht_${"x".repeat(43)}` })).toBe(401);
    // it opens no page
    const page = await bench.ask({ path: "/records", headers });
    expect([page.status, page.headers.location]).toEqual([303, "/sign-in"]);
    await bench.at.ledger.append("token-revoked", "tokens", { tokenHash, reason: "test" });
    expect(await status("/api/records")).toBe(401);
    expect(await status("/api/openapi.json")).toBe(401);
  });
});

describe("the machine's own address", () => {
  test("asks for no sign-in, and has none to offer", async () => {
    expect((await bench.askHere({ path: "/records" })).status).toBe(200);
    const answer = await bench.askHere({ path: "/sign-in" });
    expect([answer.status, answer.headers.location]).toEqual([303, "/"]);
  });

  test("refuses what came through a proxy", async () => {
    for (const name of ["forwarded", "x-forwarded-for", "x-forwarded-host", "x-forwarded-proto"])
      expect((await bench.askHere({ path: "/", headers: { [name]: "for=192.0.2.1" } })).status).toBe(403);
  });
});
