import { connect } from "node:net";
import { Refusal } from "../calibration/refusal.ts";
import type { Balance } from "./balance.ts";
import { balanceName } from "./balance-name.ts";
import type { OpenCable } from "./cable.ts";
import { type CableOptions, createCabledBalance } from "./cabled-balance.ts";
import { errorFacts } from "./port-error.ts";

export interface NetworkBalanceOptions extends CableOptions {
  host: string;
  port: number;
}

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

/** A balance that sends its text lines over a TCP connection, by itself or through a serial converter. */
export function createNetworkBalance(options: NetworkBalanceOptions): Balance {
  return createCabledBalance({
    ...options,
    name: balanceName.network(`${options.host}:${options.port}`),
    lostSoon: "line.lost.network-soon",
    open: openNetworkCable(options.host, options.port),
  });
}

function openNetworkCable(host: string, port: number): OpenCable {
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
