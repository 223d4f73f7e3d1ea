import { createServer, type Socket } from "node:net";
import { afterEach, expect, test, vi } from "vitest";
import type { LineRecord } from "../../../drivers/reading.ts";
import type { SensorReading } from "../../../drivers/sensors/quantity.ts";
import { type SensorSettings, sensorAt } from "../../../drivers/sensors/sensor-at.ts";
import { createCable } from "../pty.ts";

const stops: (() => unknown)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0)) await stop();
});

function listenTo(settings: SensorSettings) {
  const records: LineRecord<SensorReading>[] = [];
  const sensor = sensorAt(settings);
  sensor.onLine((record) => records.push(record));
  sensor.start();
  stops.push(() => sensor.stop());
  const until = (kind: string) =>
    vi.waitFor(() => expect(records.map(({ event }) => event?.kind ?? "reading")).toContain(kind), {
      timeout: 5000,
      interval: 5,
    });
  return { records, until };
}

test("a thermometer on a serial line is read with its lines as they came", async () => {
  const cable = createCable();
  stops.push(cable.unplug);
  const { records, until } = listenTo({ address: cable.path, line: "1200-8n1" });
  await until("open");
  cable.send("1.4 °C\r\n21.40 °C\r\n");
  await until("reading");
  expect(records.find(({ reading }) => reading)).toMatchObject({
    reading: { values: [{ quantity: "temperature", text: "21.40", unit: "°C", value: 21.4 }] },
  });
});

test("a barometer on the network is read, a line of unknown words is an event", async () => {
  const sockets: Socket[] = [];
  const server = createServer((socket) => sockets.push(socket));
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  stops.push(() => {
    for (const socket of sockets) socket.destroy();
    server.close();
  });
  const place = server.address();
  if (place === null || typeof place === "string") throw new Error("no port");
  const { records, until } = listenTo({ address: `127.0.0.1:${place.port}` });
  await until("open");
  await vi.waitFor(() => expect(sockets).toHaveLength(1));
  sockets[0]?.write("\r\n1011.9 hPa\r\n1011.9 hPa FALLING\r\n");
  await until("unknown-line");
  expect(records.flatMap(({ reading }) => reading?.values ?? [])).toMatchObject([
    { quantity: "pressure", value: 1011.9 },
  ]);
});
