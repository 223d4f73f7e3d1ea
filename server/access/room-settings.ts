import { isIP, isIPv6 } from "node:net";
import { Refusal } from "../../calibration/refusal.ts";

/** What a start is told about the address for the room. */
export interface RoomSettings {
  /** IP address; 0.0.0.0 or :: for all of this machine */
  address: string;
  /** 0 takes any free one */
  port: number;
  /** certificate and key in PEM; left out: one of the bench's own */
  given?: { certificate: string; key: string };
  /** where a proxy on this machine shows the bench: then the address is for that proxy alone, and speaks plain http to it */
  publicAddress?: URL;
}

interface StatedAccess {
  listen?: string | undefined;
  certificate?: string | undefined;
  key?: string | undefined;
  publicAddress?: string | undefined;
}

/**
 * Settings of the address for the room; undefined when none is asked for. Without a port it is the one after that of the
 * pages. Throws Refusal for what is no address, no port or no pair.
 */
export function roomSettings(stated: StatedAccess, pagesPort: number): RoomSettings | undefined {
  const { listen, certificate, key, publicAddress } = stated;
  if ((certificate === undefined) !== (key === undefined)) throw new Refusal("access.start.pair");
  if (listen === undefined && publicAddress === undefined) {
    if (certificate !== undefined) throw new Refusal("access.start.certificate-alone");
    return undefined;
  }
  const { address, port = pagesPort === 0 ? 0 : pagesPort + 1 } = placeOf(listen ?? "127.0.0.1");
  if (port > 65535) throw new Refusal("access.start.listen", { typed: listen ?? "" });
  const given = certificate === undefined || key === undefined ? undefined : { certificate, key };
  if (publicAddress === undefined) return { address, port, ...(given ? { given } : {}) };
  if (given) throw new Refusal("access.start.proxy-certificate");
  if (!isLoopback(address)) throw new Refusal("access.start.proxy-elsewhere", { address });
  return { address, port, publicAddress: publicOf(publicAddress) };
}

/** True for an address of this machine alone, as a socket tells it. */
export const isLoopback = (address: string): boolean =>
  /^(?:::ffff:)?127\.\d+\.\d+\.\d+$/i.test(address) || address === "::1";

function placeOf(typed: string): { address: string; port?: number } {
  const [, bracketed, plain, portText] = /^(?:\[(.+)\]|([^:]+))(?::(\d{1,5}))?$/.exec(typed) ?? [];
  const address = isIPv6(typed) ? typed : (bracketed ?? plain ?? "");
  if (isIP(address) === 0) throw new Refusal("access.start.listen", { typed });
  return { address, ...(portText === undefined ? {} : { port: Number(portText) }) };
}

function publicOf(typed: string): URL {
  const url = URL.canParse(typed) ? new URL(typed) : undefined;
  if (url?.protocol !== "https:" || url.href !== `${url.origin}/`)
    throw new Refusal("access.start.public-address", { typed });
  return url;
}
