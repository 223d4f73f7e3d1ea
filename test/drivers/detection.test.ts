import { expect, test } from "vitest";
import { detect } from "../../drivers/detection.ts";
import { baudRates, type LineSettings, lineSettingsText } from "../../drivers/line-settings.ts";
import { createSeededRandom } from "../../drivers/simulated/seeded-random.ts";
import { createHandClock } from "./hand-clock.ts";

const withParity = (text: string, parity: "even" | "odd") =>
  Uint8Array.from(text, (character) => {
    const code = character.charCodeAt(0);
    const ones = code.toString(2).replaceAll("0", "").length;
    return code | ((ones % 2 === 1) === (parity === "even") ? 0x80 : 0);
  });

/** A balance that talks at one setting and is noise at every other; notes what was sent to it. */
function balanceAt(settings: string, line: Uint8Array, { everyMs = 200, noise = true } = {}) {
  const clock = createHandClock();
  const random = createSeededRandom(1);
  const sent: number[] = [];
  const found = detect({
    path: "/dev/ttyUSB0",
    clock,
    open: (_path: string, set: LineSettings) => (ear) => {
      const right = lineSettingsText(set) === settings;
      let callOff = () => {};
      function send(): void {
        callOff = clock.after(everyMs, send);
        if (right) ear.bytes(line);
        else if (noise) ear.bytes(line.map(() => 0x80 + random.whole(128)));
      }
      callOff = clock.after(everyMs, send);
      return Promise.resolve({
        send: (bytes) => sent.push(...bytes),
        async close() {
          callOff();
        },
      });
    },
  });
  return { sent, found: played(found, clock) };
}

async function played<T>(result: Promise<T>, clock: ReturnType<typeof createHandClock>): Promise<T> {
  let done = false;
  void result.finally(() => {
    done = true;
  });
  for (let i = 0; i < 10_000 && !done; i += 1) {
    await new Promise((resolve) => setImmediate(resolve));
    clock.pass(100);
  }
  return result;
}

test("speed and shape are found by listening, and nothing is sent", async () => {
  const { found, sent } = balanceAt("4800-8n1", Buffer.from("stable +  31.1035 g\r\n"));
  expect(await found).toMatchObject({ line: "4800-8n1", shape: "token-before" });
  expect((await found).tried.map(({ line }) => line)).toEqual(["9600-8n1", "4800-8n1"]);
  expect(sent).toEqual([]);
});

test("seven bits with parity are recognised from their fingerprint, without trying them", async () => {
  for (const parity of ["even", "odd"] as const) {
    const { found } = balanceAt("2400-8n1", withParity("+   31.10 g   \r\n", parity));
    expect(await found).toMatchObject({ line: `2400-7${parity[0]}1`, shape: "sign-pinned-left" });
  }
});

test("eight bits with parity are tried after the speeds", async () => {
  const { found } = balanceAt("9600-8e1", Buffer.from("  31.10 g\r\n"));
  expect(await found).toMatchObject({ line: "9600-8e1", shape: "number-with-unit" });
});

test("readable lines of no known shape are offered for learning", async () => {
  const { found } = balanceAt("9600-8n1", Buffer.from("31.10/g/w7\r\n"));
  expect(await found).toMatchObject({
    line: "9600-8n1",
    shape: null,
    message: { code: "port.search.found.no-format", params: { settings: "9600-8n1" } },
  });
});

test("when all is silent, it says what was tried, what came back and what to do", async () => {
  const { found } = balanceAt("none", Buffer.from("31.10 g\r\n"), { noise: false });
  const { line, message, tried } = await found;
  expect(line).toBeNull();
  expect(tried).toHaveLength(baudRates.length + 8);
  expect(message.code).toBe("port.search.silent");
  expect(message.params?.tried).toMatchObject([
    { params: { settings: "9600-8n1", bytes: 0 } },
    ...tried.slice(1).map(({ line: settings }) => ({ params: { settings, bytes: 0 } })),
  ]);
});

test("when only noise comes, each try shows its first bytes", async () => {
  const { found } = balanceAt("none", Buffer.from("  31.10 g\r\n"));
  const { message, tried } = await found;
  expect(tried.every(({ first, bytes }) => first.startsWith("\\x") && bytes > 0)).toBe(true);
  expect(message.code).toBe("port.search.none");
});

test("columns between tabs are readable lines", async () => {
  const { found } = balanceAt("600-8n1", Buffer.from("31.10\tg\tw7\r\n"));
  expect(await found).toMatchObject({ line: "600-8n1", message: { code: "port.search.found.no-format" } });
});

test("frames of bytes that are no text are told with their length, and what to do", async () => {
  const frame = Uint8Array.from([0xaa, 0x55, 0x00, 0x01, 0xbf, 0x81, 0x07, 0x00]);
  const { found } = balanceAt("2400-8n1", frame);
  const { line, message } = await found;
  expect(line).toBeNull();
  expect(message).toMatchObject({
    code: "port.search.binary",
    params: { settings: "2400-8n1", bytes: 8, first: expect.stringContaining("\\xAAU") },
  });
});
