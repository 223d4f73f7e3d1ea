import { mkdtempSync, writeFileSync } from "node:fs";
import { createServer, type Server, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { phases } from "../../../drivers/learning/recording.ts";
import { exportProfile } from "../../../drivers/learning/samples.ts";
import { settingsFrom } from "../../../server/settings.ts";
import { BalanceInUse } from "../../../server/station/balance-in-use.ts";
import { profile } from "../../drivers/invented-profile.ts";
import { shown } from "../../shown.ts";
import { until } from "../../until.ts";
import { buildTestBench, newLedgerFile, type TestBench } from "../build.ts";
import { sendForm } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

/** Sends the form of a profile with its file. */
function sendFile(bytes: Uint8Array) {
  const file = new File([bytes as BlobPart], "profile.json", { type: "application/json" });
  return sendForm(at, { url: "/balances/profiles/import", from: "/balances" }, { file, text: "" });
}

const get = async (url: string) => (await at.app.inject({ url, headers: { host: "localhost:1" } })).body;
const learned = profile({ kind: "characters", hex: "0d0a" });

describe("a profile on the command line", () => {
  const file = join(mkdtempSync(join(tmpdir(), "underhook-")), "profile.json");

  test("is read whole, and its balance is listened to through it", () => {
    writeFileSync(file, exportProfile(learned));
    const { source } = settingsFrom({ balance: "192.0.2.7:4001", profile: file }, {});
    expect(source).toMatchObject({
      kind: "cable",
      choice: { address: "192.0.2.7:4001" },
      profile: { name: "invented balance" },
    });
  });

  test("that does not read its own sample lines is refused before anything starts", () => {
    const [sample] = learned.samples;
    writeFileSync(file, exportProfile({ ...learned, samples: [{ ...sample!, raw: "w.     31.11g\\r\\n" }] }));
    expect(() => settingsFrom({ balance: "/dev/ttyUSB0", profile: file }, {})).toThrow(
      expect.objectContaining({
        code: "profile.file",
        params: { path: file, because: expect.objectContaining({ code: "profile.samples" }) },
      }),
    );
  });

  test("that is not there is named, and so is a line setting that cannot be", () => {
    expect(() => settingsFrom({ balance: "/dev/ttyUSB0", profile: "/nowhere.json" }, {})).toThrow(
      expect.objectContaining({ code: "profile.unreadable" }),
    );
    expect(() => settingsFrom({ balance: "/dev/ttyUSB0", line: "9601-8n1" }, {})).toThrow(/"9601-8n1"/);
  });
});

describe("a balance on the network", () => {
  let server: Server;
  let port: number;
  const sockets: Socket[] = [];
  beforeEach(async () => {
    server = createServer((socket) => sockets.push(socket));
    await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
    port = (server.address() as { port: number }).port;
  });
  afterEach(() => {
    for (const socket of sockets.splice(0)) socket.destroy();
    server.close();
  });

  test("is chosen by host:port, its lines are shown escaped, and a restart goes on with it", async () => {
    const address = `127.0.0.1:${port}`;
    expect((await at.post("/balances/choice", { port: address })).statusCode).toBe(303);
    await until(() => sockets.length > 0, "the connection");
    sockets[0]?.write("12.3 g\r\n     31.10 g\r\n<b>no weight</b>\r\n");
    await until(() => (at.balance.stream?.recent().length ?? 0) >= 3, "the lines");
    const page = await get("/balances");
    expect(page).toContain("31.10 g\\r\\n");
    expect(page).toContain(
      shown("balance.reading", {
        reading: { decimal: "31.10" },
        unit: "g",
        stability: { code: "balance.stability.unknown" },
      }),
    );
    expect(page).toContain("&lt;b>no weight&lt;/b>");
    expect(page).not.toContain("<b>no weight");

    const { file } = at;
    await at.close();
    at = await buildTestBench(file);
    expect(at.balance.choice?.address).toBe(address);
    expect(at.bench.scale?.name).toContain(address);
  });
});

describe("the choice of a balance", () => {
  test("is refused in words when the address or the line cannot be, with what was typed still there", async () => {
    const nowhere = await at.post("/balances/choice", { port: "the blue one", line: "9600-8n1" });
    expect(nowhere.statusCode).toBe(422);
    expect(nowhere.body).toContain(shown("port.address", { address: "the blue one" }));
    expect(nowhere.body).toContain('value="the blue one"');
    const line = await at.post("/balances/choice", { port: "/dev/ttyUSB0", line: "9600-8x1" });
    expect(line.body).toContain("9600-8x1");
    expect(at.balance.choice).toBeUndefined();
  });

  test("a port that is not there is told in words on the page, and typing goes on when it is closed", async () => {
    await at.post("/balances/choice", { port: "/dev/underhook-none", line: "2400-7e1", flow: "xon-xoff" });
    expect(at.balance.choice?.line).toBe("2400-7e1-xon-xoff");
    await until(() => at.balance.stream?.error()?.event?.kind === "refused", "the trouble");
    expect(await get("/balances")).toContain(shown("line.refused.missing", { port: "/dev/underhook-none" }));
    await at.post("/balances/typed", {});
    expect(at.bench.scale).toBeUndefined();
    expect(await get("/balances")).toContain(shown("balance.now.typed"));
  });
});

describe("what was told about a balance", () => {
  test("belongs to the device and not to the number its port has today", async () => {
    const names: Record<string, string> = { "/dev/ttyUSB0": "/dev/serial/by-id/adapter-A113" };
    const balance = new BalanceInUse(at.ledger, at.profiles, (address) => names[address] ?? address);
    await balance.choose({ address: "/dev/ttyUSB0", line: "2400-7e1", comma: "decimal" });
    expect(balance.choice?.address).toBe("/dev/serial/by-id/adapter-A113");
    // Plugged in again it is another number, and a second adapter has taken the old one.
    names["/dev/ttyUSB1"] = "/dev/serial/by-id/adapter-A113";
    names["/dev/ttyUSB0"] = "/dev/serial/by-id/adapter-B7";
    expect(balance.choiceAt("/dev/ttyUSB1")).toMatchObject({ comma: "decimal", line: "2400-7e1" });
    expect(balance.choiceAt("/dev/ttyUSB0")).toBeUndefined();
    await balance.close();
  });

  test("says what it is kept for, and why", async () => {
    await at.post("/balances/choice", { port: "/dev/underhook-none" });
    expect(await get("/balances")).toContain(shown("balance.kept-for.path"));
  });
});

describe("a learned profile", () => {
  test("comes from a file only when it reads its own lines, and goes out as it came in", async () => {
    const refused = await at.post("/balances/profiles/import", { text: "{}" });
    expect(refused.statusCode).toBe(422);
    expect(refused.body).toContain(shown("profile.format", { format: "–" }));
    const text = exportProfile(learned);
    const taken = await at.post("/balances/profiles/import", { text });
    expect(taken.headers.location).toBe("/balances/profiles/invented%20balance");
    expect(await get("/balances/profiles/invented%20balance/export")).toBe(text);
    const { file } = at;
    await at.close();
    at = await buildTestBench(file);
    expect(at.profiles.named("invented balance")?.version).toBe(1);
  });

  test("is taken over from a chosen file as from a pasted text; a file that is no text is refused in words", async () => {
    const taken = await sendFile(Buffer.from(exportProfile(learned)));
    expect(taken.headers.location).toBe("/balances/profiles/invented%20balance");
    expect(at.profiles.named("invented balance")?.profile).toEqual(learned);
    expect((await sendFile(Buffer.from([0xff, 0xfe, 0x00]))).body).toContain(shown("profile.not-text"));
    expect((await at.post("/balances/profiles/import", { text: "" })).body).toContain(
      shown("profile.no-file"),
    );
  });

  test("is learned from pasted lines whose moments were marked by hand", async () => {
    const lines = (grams: number, spread: number, mark: string) =>
      Array.from({ length: 8 }, (_, place) => {
        const digits = (grams + ((place * 37) % 11) * spread).toFixed(2);
        return `z${mark}${digits.padStart(10)} g`;
      });
    const text = [
      ["# empty", ...lines(0, 0, "=")],
      ["# putting-on", ...lines(80, 1.7, "~")],
      ["# loaded", ...lines(128.41, 0, "="), "# displayed 128.41 g"],
      ["# touched", ...lines(120, 0.9, "~")],
      ["# at-rest", ...lines(128.41, 0, "=")],
      ["# taking-off", ...lines(60, 1.3, "~")],
      ["# empty", ...lines(0, 0, "=")],
    ]
      .flat()
      .join("\n");
    const unmarked = await at.post("/balances/learning/pasted", { text: "z= 0.00 g" });
    expect(unmarked.statusCode).toBe(422);
    expect(unmarked.body).toContain(
      shown("learn.recording.unmarked", { right: phases.map((one) => `# ${one}`) }),
    );
    await at.post("/balances/learning/pasted", { text });
    // nothing below zero was typed, so the owner is asked how a minus is written
    expect(await get("/balances/learning")).toContain(shown("learn.answer.minus-before"));
    await at.post("/balances/learning/answers", { "below-zero": "minus-before" });
    const page = await get("/balances/learning");
    expect(page).toContain(shown("balances.was-learned"));
    const line = "z=    128.41 g\\n";
    expect(page).toContain(shown("learn.number", { line, reading: { decimal: "128.41" }, unit: "g" }));
    await at.post("/balances/profiles", { name: "pasted", confirmed: "yes" });
    expect(at.profiles.named("pasted")?.profile.samples.length).toBeGreaterThan(3);
  });
});

describe.each(["de", "es"] as const)("in %s", (locale) => {
  const read = async (url: string) =>
    (await at.app.inject({ url, headers: { host: "localhost:1", "accept-language": locale } })).body;

  test("a port and a request pass through the page and the ledger as they were typed", async () => {
    const address = "/dev/serial/by-path/pci-0000:00:14.0-usb-0:1.2";
    const request = "W 1.5 and counter\\r\\n";
    await at.post("/balances/choice", { port: address });
    await at.post("/balances/asking", { request, when: "timer", every: "0.5", consent: "yes" });
    await until(() => at.balance.stream?.error()?.event?.kind === "refused", "the refusal");
    const page = await read("/balances");
    expect(page).toContain(shown("line.refused.missing", { port: address }, locale));
    expect(page).toContain(shown("balance.name.serial", { port: address }, locale));
    expect(page).toContain(`<code>${request}</code>`);
    expect(await read("/balances/asking")).toContain(`value="${request}"`);
    const scale = { code: "balance.name.serial", params: { port: address } } as const;
    expect(await read("/")).toContain(shown("bench.now-on", { scale }, locale));
    expect(await at.balance.kept()).toMatchObject({ choice: { address, ask: { request } } });
  });
});

test("a demonstration shows its simulated balance and takes no real one", async () => {
  const demo = await buildTestBench(newLedgerFile(), { demo: true });
  const refused = await demo.post("/balances/choice", { port: "/dev/ttyUSB0" });
  expect(refused.statusCode).toBe(422);
  expect(refused.body).toContain(shown("balance.demo"));
  await demo.close();
});
