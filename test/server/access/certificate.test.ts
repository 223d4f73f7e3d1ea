import { execFileSync } from "node:child_process";
import { chmodSync, mkdtempSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { givenCertificate, ownCertificate } from "../../../server/access/certificate.ts";
import { refusalOf } from "../../refusal-of.ts";

const now = new Date("2026-03-02T08:00:00Z");
const days = (count: number) => new Date(now.getTime() + count * 24 * 3_600_000);
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "underhook-"));
});

/** Read by OpenSSL, which shares nothing with what made it. */
const openssl = (...args: string[]) =>
  execFileSync("openssl", args, { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] });

describe("the bench's own certificate", () => {
  test("names every address and name, is read by OpenSSL alike, and its key is its owner's alone", async () => {
    const names = ["192.0.2.7", "2001:db8::7", "bench", "bench.local"];
    const made = await ownCertificate(folder, names, now);
    const file = join(folder, "room-certificate.pem");
    const said = openssl(
      "x509",
      "-in",
      file,
      "-noout",
      "-ext",
      "subjectAltName,extendedKeyUsage,basicConstraints",
    );
    for (const part of [
      "IP Address:192.0.2.7",
      "IP Address:2001:DB8:0:0:0:0:0:7",
      "DNS:bench",
      "DNS:bench.local",
    ])
      expect(said).toContain(part);
    expect(said).toContain("TLS Web Server Authentication");
    expect(said).toContain("CA:FALSE");
    const [, hex = ""] = openssl("x509", "-in", file, "-noout", "-fingerprint", "-sha256").split("=");
    expect(made.fingerprint.replaceAll(" ", "")).toBe(hex.trim().replaceAll(":", ""));
    expect(made.fingerprint).toMatch(/^([0-9A-F]{4} ){15}[0-9A-F]{4}$/);
    for (const name of ["room-key.pem", "room-certificate.pem"])
      expect(statSync(join(folder, name)).mode & 0o777).toBe(0o600);
    expect(made).toMatchObject({ own: true, renewed: false });
  });

  test("stays while it serves, and is made anew when it ends soon or an address is new", async () => {
    const first = await ownCertificate(folder, ["192.0.2.7"], now);
    const again = await ownCertificate(folder, ["192.0.2.7"], days(300));
    expect(again.fingerprint).toBe(first.fingerprint);
    const moved = await ownCertificate(folder, ["192.0.2.8"], days(1));
    expect(moved.fingerprint).not.toBe(first.fingerprint);
    expect(moved.renewed).toBe(true);
    expect((await ownCertificate(folder, ["192.0.2.8"], days(380))).renewed).toBe(true);
  });

  test("is not used when others can read its key", async () => {
    await ownCertificate(folder, ["192.0.2.7"], now);
    chmodSync(join(folder, "room-key.pem"), 0o644);
    const refused = await ownCertificate(folder, ["192.0.2.7"], now).catch((error) => error);
    expect(refused).toMatchObject({ code: "access.file-readable", params: { mode: "644" } });
  });
});

describe("a given certificate", () => {
  /** Made by OpenSSL for thirty days from this moment on. */
  function given(name: string) {
    const files = { certificate: join(folder, `${name}.pem`), key: join(folder, `${name}-key.pem`) };
    openssl(
      ..."req -x509 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -days 30 -subj /CN=bench.example".split(
        " ",
      ),
      ...[
        "-addext",
        "subjectAltName=DNS:bench.example,DNS:*.example",
        "-keyout",
        files.key,
        "-out",
        files.certificate,
      ],
    );
    return files;
  }
  const inDays = (count: number) => new Date(Date.now() + count * 24 * 3_600_000);

  test("is taken with its names, a wildcard left out", () => {
    expect(givenCertificate(given("one"), inDays(1))).toMatchObject({ names: ["bench.example"], own: false });
  });

  test.each([
    ["access.certificate.over", () => ({ files: given("one"), at: inDays(31) })],
    ["access.certificate.not-yet", () => ({ files: given("one"), at: inDays(-1) })],
    [
      "access.certificate.other-key",
      () => ({ files: { ...given("one"), key: given("two").key }, at: inDays(1) }),
    ],
    [
      "access.certificate.unreadable",
      () => ({
        files: { certificate: join(folder, "none.pem"), key: join(folder, "none.pem") },
        at: inDays(1),
      }),
    ],
    [
      "access.certificate.none",
      () => {
        const files = given("one");
        writeFileSync(files.certificate, "no certificate");
        return { files, at: inDays(1) };
      },
    ],
    [
      "access.certificate.no-key",
      () => {
        const files = given("one");
        writeFileSync(files.key, readFileSync(files.certificate));
        return { files, at: inDays(1) };
      },
    ],
  ] as const)("is refused with the reason: %s", (code, make) => {
    const { files, at } = make();
    expect(refusalOf(() => givenCertificate(files, at))).toMatchObject({ code });
  });
});
