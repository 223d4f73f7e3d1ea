import { connect } from "node:net";
import { Refusal } from "../calibration/refusal.ts";
import { balanceName } from "./balance-name.ts";
import type { OpenCable } from "./cable.ts";
import { type CabledDeviceOptions, type CableOptions, createCabledDevice } from "./cabled-device.ts";
import type { Balance, Device } from "./device.ts";
import { errorFacts } from "./port-error.ts";
import type { Reading } from "./reading.ts";
import { readAnyShape } from "./shapes/index.ts";

export interface NetworkDeviceOptions<R> extends CableOptions<R> {
  /** what it is called in events; a balance at its address when left out */
  name?: string;
  host: string;
  port: number;
}

export type NetworkBalanceOptions = NetworkDeviceOptions<Reading>;

/** How long a connection may take to stand, ms; a balance on the bench's own network answers in a few. */
const connectingMs = 3000;

/** "host:port", as an owner types it. Throws Refusal that says what would be right. */
export function parseNetworkAddress(text: string): { host: string; port: number } {
  const match = /^(?:tcp:\/\/)?(\[[0-9a-fA-F:.]+\]|[\w.-]+):(\d{1,5})$/.exec(text);
  const port = Number(match?.[2]);
  if (!match || port < 1 || port > 65535)
    throw new Refusal("port.address.network", { address: text }, "port");
  return { host: match[1]!.replace(/^\[|\]$/g, ""), port };
}

/** A balance on the network; its lines are read by any line format unless told otherwise. */
export function createNetworkBalance(options: NetworkBalanceOptions): Balance {
  return createNetworkDevice({ read: () => readAnyShape(), ...options });
}

/** A device that sends its text lines over a TCP connection, by itself or through a serial converter. */
export function createNetworkDevice<R>(
  options: NetworkDeviceOptions<R> & Pick<CabledDeviceOptions<R>, "read">,
): Device<R> {
  return createCabledDevice<R>({
    ...options,
    name: options.name ?? balanceName.network(`${options.host}:${options.port}`),
    lostSoon: "line.lost.network-soon",
    open: openNetworkCable(options.host, options.port),
  });
}

function openNetworkCable<R>(host: string, port: number): OpenCable<R> {
  return (ear) =>
    new Promise((resolve, reject) => {
      const socket = connect({ host, port, noDelay: true, keepAlive: true, keepAliveInitialDelay: 5000 });
      let open = false;
      socket.setTimeout(connectingMs, () => {
        if (!open) socket.destroy(new Error("no answer"));
      });
      socket.on("data", (chunk) => ear.bytes(chunk));
      socket.on("error", (error) => {
        if (!open) reject(refused(host, port, error));
      });
      socket.on("close", () => {
        if (open) ear.lost();
      });
      socket.once("connect", () => {
        open = true;
        resolve({
          send: (bytes) => socket.write(bytes),
          async close() {
            open = false;
            socket.destroy();
          },
        });
      });
    });
}

function refused(host: string, port: number, error: Error): Refusal {
  const address = `${host}:${port}`;
  const { code, message } = errorFacts(error);
  if (code === "ECONNREFUSED") return new Refusal("line.refused.no-listener", { address, number: port });
  if (code === "ENOTFOUND" || code === "EAI_AGAIN") return new Refusal("line.refused.no-host", { host });
  return new Refusal("line.refused.unreachable", { address, reason: message });
}
