import { connect } from "node:net";
import type { Balance } from "./balance.ts";
import type { OpenCable } from "./cable.ts";
import { type CableOptions, createCabledBalance } from "./cabled-balance.ts";

export interface NetworkBalanceOptions extends CableOptions {
  host: string;
  port: number;
}

/** How long a connection may take to stand, ms; a balance on the bench's own network answers in a few. */
const connectingMs = 3000;

/** "host:port", as an owner types it. Throws RangeError that says what would be right. */
export function parseNetworkAddress(text: string): { host: string; port: number } {
  const match = /^(?:tcp:\/\/)?(\[[0-9a-fA-F:.]+\]|[\w.-]+):(\d{1,5})$/.exec(text);
  const port = Number(match?.[2]);
  if (!match || port < 1 || port > 65535)
    throw new RangeError(
      `"${text}" is no network address of a balance. Right: host and port, such as 192.0.2.7:4001 or tcp://balance.example:4001.`,
    );
  return { host: match[1]!.replace(/^\[|\]$/g, ""), port };
}

/** A balance that sends its text lines over a TCP connection, by itself or through a serial converter. */
export function createNetworkBalance(options: NetworkBalanceOptions): Balance {
  const at = `${options.host}:${options.port}`;
  return createCabledBalance({
    ...options,
    name: `balance at ${at}`,
    openSays: `Listening to the balance at ${at}.`,
    lostSoonSays:
      "It was lost within seconds: many converters serve one program at a time. Close the other one.",
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
        if (!open) reject(new Error(inWords(host, port, error)));
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

function inWords(host: string, port: number, error: NodeJS.ErrnoException): string {
  const at = `${host}:${port}`;
  if (error.code === "ECONNREFUSED")
    return `${at} answers, but nothing listens on port ${port} there. Check the port number in the balance's network menu.`;
  if (error.code === "ENOTFOUND" || error.code === "EAI_AGAIN")
    return `There is no machine called ${host} on this network. Check the name, or use the number the balance shows.`;
  return `${at} cannot be reached: ${error.message}. Check cable and switch; it is tried again by itself.`;
}
