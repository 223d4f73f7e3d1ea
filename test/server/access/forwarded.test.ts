import { describe, expect, test } from "vitest";
import { forwardedIn } from "../../../server/access/forwarded.ts";
import { refusalOf } from "../../refusal-of.ts";

describe("what a proxy says of a request", () => {
  // the examples of RFC 7239, sections 4 and 6
  test.each([
    ['For="[2001:db8:cafe::17]:4711"', "2001:db8:cafe::17"],
    ["for=192.0.2.60;proto=http;by=203.0.113.43", "192.0.2.60"],
    ["for=192.0.2.43, for=198.51.100.17", "198.51.100.17"],
    ['for=192.0.2.43,for="[2001:db8:cafe::17]",for=198.51.100.17', "198.51.100.17"],
    ['for="_a,b;c", for="192.0.2.43:80"; host="Bench.Example"', "192.0.2.43"],
  ])("%s", (forwarded, from) => {
    expect(forwardedIn({ forwarded }).from).toBe(from);
  });

  test("host and proto are read small, of the last element", () => {
    expect(
      forwardedIn({
        forwarded: 'for=192.0.2.1;host=evil.example, for=192.0.2.2;Host="Bench.Example:444";proto=HTTPS',
      }),
    ).toEqual({ from: "192.0.2.2", host: "bench.example:444", proto: "https" });
  });

  test("the older headers count from their end too", () => {
    const headers = { "x-forwarded-for": "10.0.0.1, 192.0.2.9", "x-forwarded-host": "bench.example" };
    expect(forwardedIn(headers)).toEqual({ from: "192.0.2.9", host: "bench.example", proto: undefined });
  });

  test.each([
    ["access.forwarded.none", {}],
    ["access.forwarded.both", { forwarded: "for=192.0.2.1", "x-forwarded-proto": "https" }],
    ["access.forwarded.address", { forwarded: "for=_hidden" }],
    ["access.forwarded.address", { forwarded: "for=unknown" }],
    ["access.forwarded.address", { forwarded: "host=bench.example" }],
    ["access.forwarded.address", { "x-forwarded-for": "192.0.2.1, bench" }],
    ["access.forwarded.address", { "x-forwarded-for": "192.0.2.1," }],
    ["access.forwarded.address", { "x-forwarded-host": "bench.example" }],
  ] as const)("is refused: %s", (code, headers) => {
    expect(refusalOf(() => forwardedIn(headers))).toMatchObject({ code });
  });
});
