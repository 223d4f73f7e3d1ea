import { describe, expect, test } from "vitest";
import { roomAt, roomNames } from "../../../server/access/room.ts";
import { roomSettings } from "../../../server/access/room-settings.ts";
import { refusalOf } from "../../refusal-of.ts";

describe("the address for the room", () => {
  test("is none unless it is asked for", () => expect(roomSettings({}, 4319)).toBeUndefined());

  test.each([
    ["0.0.0.0", { address: "0.0.0.0", port: 4320 }],
    ["192.0.2.7:8443", { address: "192.0.2.7", port: 8443 }],
    ["::", { address: "::", port: 4320 }],
    ["[2001:db8::7]:443", { address: "2001:db8::7", port: 443 }],
  ])("%s", (listen, settings) => expect(roomSettings({ listen }, 4319)).toEqual(settings));

  test.each(["", "bench.example", "localhost", "192.0.2.7:", "192.0.2.300", "192.0.2.7:70000", "*", "[::1"])(
    "“%s” is refused",
    (listen) =>
      expect(refusalOf(() => roomSettings({ listen }, 4319))).toMatchObject({ code: "access.start.listen" }),
  );

  test.each([
    ["access.start.pair", { listen: "0.0.0.0", certificate: "a.pem" }],
    ["access.start.pair", { key: "a.pem" }],
    ["access.start.certificate-alone", { certificate: "a.pem", key: "b.pem" }],
    ["access.start.proxy-elsewhere", { listen: "0.0.0.0", publicAddress: "https://bench.example" }],
    [
      "access.start.proxy-certificate",
      { publicAddress: "https://bench.example", certificate: "a", key: "b" },
    ],
    ["access.start.public-address", { publicAddress: "http://bench.example" }],
    ["access.start.public-address", { publicAddress: "https://bench.example/under" }],
    ["access.start.public-address", { publicAddress: "https://a:b@bench.example" }],
    ["access.start.public-address", { publicAddress: "*" }],
  ] as const)("%s", (code, told) =>
    expect(refusalOf(() => roomSettings(told, 4319))).toMatchObject({ code }),
  );

  test("is answered under each address and name of the machine, and no other", () => {
    const machine = () => ({ addresses: ["192.0.2.7", "2001:db8::7"], names: ["bench", "bench.local"] });
    const at = (address: string) => {
      const settings = { address, port: 4320 };
      return [...roomAt(settings, roomNames(settings, machine), 4320, undefined).hosts];
    };
    expect(at("0.0.0.0")).toEqual(["192.0.2.7:4320", "bench:4320", "bench.local:4320"]);
    expect(at("::")).toEqual(["192.0.2.7:4320", "[2001:db8::7]:4320", "bench:4320", "bench.local:4320"]);
    expect(at("192.0.2.7")).toEqual(["192.0.2.7:4320", "bench:4320", "bench.local:4320"]);
  });
});
