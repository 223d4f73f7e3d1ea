import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openTestRoom, passphrase, type TestRoom } from "../../room.ts";

let bench: TestRoom;
beforeAll(async () => {
  bench = await openTestRoom({ publicAddress: new URL("https://bench.example") });
}, 60_000);
afterAll(() => bench?.close());

const proxied = { forwarded: "for=192.0.2.9;proto=https;host=bench.example" };

describe("behind a proxy", () => {
  test("nothing is seen without a session, whatever the headers say", async () => {
    const answer = await bench.ask({ path: "/records", headers: proxied });
    expect([answer.status, answer.headers.location]).toEqual([303, "/sign-in"]);
    for (const host of ["localhost", "127.0.0.1", `localhost:${bench.herePort}`])
      expect((await bench.ask({ path: "/records", headers: { ...proxied, host } })).headers.location).toBe(
        "/sign-in",
      );
  });

  test.each([
    ["no word of who asked", {}],
    ["plain http before the proxy", { forwarded: "for=192.0.2.9;proto=http;host=bench.example" }],
    ["another host", { forwarded: "for=192.0.2.9;host=evil.example" }],
    [
      "a host smuggled before that of the proxy",
      { forwarded: "for=1.2.3.4;host=bench.example, for=192.0.2.9;host=evil.example" },
    ],
    ["both ways of telling", { ...proxied, "x-forwarded-for": "198.51.100.1" }],
    ["a foreign origin", { ...proxied, origin: "https://evil.example" }],
    ["the origin of plain http", { ...proxied, origin: "http://bench.example" }],
  ] as const)("refused: %s", async (_, headers) => {
    expect((await bench.ask({ path: "/sign-in/code", headers })).status).toBe(403);
  });

  test("tries are counted and written down by the address that the proxy adds, not by one that was sent along", async () => {
    const page = await bench.ask({ path: "/sign-in/code", headers: proxied });
    const token = /name="_csrf" value="([^"]+)"/.exec(page.body)?.[1] ?? "";
    const post = (fields: Record<string, string>, made: string) =>
      bench.ask({
        method: "POST",
        path: "/sign-in/code",
        headers: {
          forwarded: `for=${made}, for=192.0.2.9;proto=https;host=bench.example`,
          origin: "https://bench.example",
          cookie: page.cookies.join("; "),
        },
        fields: { _csrf: token, name: "Ada", initials: "AB", passphrase, ...fields },
      });
    for (let tries = 0; tries < 5; tries += 1)
      expect((await post({ code: "WRONG" }, `198.51.100.${tries}`)).status).toBe(401);
    const code = bench.access.codes.first?.code ?? "";
    expect((await post({ code }, "203.0.113.5")).status).toBe(429);
    const refused = await bench.at.ledger.entries({ kind: "sign-in-refused" });
    expect(refused.map(({ body }) => "from" in body && body.from)).toEqual(Array(6).fill("192.0.2.9"));
  });
});
