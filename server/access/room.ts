import { hostname, networkInterfaces } from "node:os";
import type { Certificate } from "./certificate.ts";
import type { RoomSettings } from "./room-settings.ts";

/** The address for the room, as its requests are held against it. */
export interface Room {
  /** what Host may say, port and all; nothing else is answered */
  hosts: ReadonlySet<string>;
  /** where a phone opens the bench, the likeliest first */
  urls: readonly string[];
  /** a proxy on this machine stands before it and tells who asked */
  proxied: boolean;
  /** undefined behind a proxy, which has one of its own */
  certificate?: Certificate;
}

/** The addresses and names under which the machine is reached in the room. */
export function roomNames({ address }: RoomSettings, own = namesOfMachine): readonly string[] {
  const everywhere = address === "0.0.0.0" || address === "::";
  const { addresses, names } = own();
  const fitting = addresses.filter((one) => address === "::" || !one.includes(":"));
  return [...(everywhere ? fitting : [address]), ...names];
}

/** What the machine says of itself: addresses in the network, its name, and its name in the local domain. */
function namesOfMachine(): { addresses: string[]; names: string[] } {
  const all = Object.values(networkInterfaces()).flatMap((one) => one ?? []);
  // addresses of one link need the name of the link, which no browser takes
  const addresses = all.filter(({ internal, address }) => !internal && !/^fe80:/i.test(address));
  const name = hostname().toLowerCase();
  const isName = /^[a-z0-9]([a-z0-9-]*[a-z0-9])?(\.[a-z0-9-]+)*$/.test(name);
  return {
    addresses: addresses.map(({ address }) => address),
    names: isName ? [name, ...(name.includes(".") ? [] : [`${name}.local`])] : [],
  };
}

/** The room as it is once it listens on this port. */
export function roomAt(
  { publicAddress }: RoomSettings,
  names: readonly string[],
  port: number,
  certificate: Certificate | undefined,
): Room {
  if (publicAddress)
    return { hosts: new Set([publicAddress.host]), urls: [publicAddress.href], proxied: true };
  // a given certificate names what people type; what it does not name would only bring warnings
  const shown = certificate && !certificate.own ? [...certificate.names, ...names] : names;
  const authorities = [...new Set(shown)].map((name) => new URL(`https://${bracketed(name)}:${port}/`));
  return {
    hosts: new Set(authorities.map(({ host }) => host)),
    urls: authorities.map(({ href }) => href),
    proxied: false,
    ...(certificate ? { certificate } : {}),
  };
}

const bracketed = (name: string) => (name.includes(":") ? `[${name}]` : name);
