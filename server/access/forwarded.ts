import type { IncomingHttpHeaders } from "node:http";
import { isIP } from "node:net";
import { Refusal } from "../../calibration/refusal.ts";

/** What the proxy before the bench says of a request. */
export interface Forwarded {
  /** the address that asked the proxy */
  from: string;
  host: string | undefined;
  proto: string | undefined;
}

const older = ["x-forwarded-for", "x-forwarded-host", "x-forwarded-proto"] as const;

/** True when the request says that it came through a proxy. */
export const isForwarded = (headers: IncomingHttpHeaders): boolean =>
  headers.forwarded !== undefined || older.some((name) => headers[name] !== undefined);

/**
 * Reads `Forwarded` (RFC 7239) or the older X-Forwarded-*, of each the last element, which is the one that the proxy
 * itself added. Throws Refusal when both ways are used, for what one of them says may come from whoever asked; when
 * neither is; and for an address that is none.
 */
export function forwardedIn(headers: IncomingHttpHeaders): Forwarded {
  const hasOlder = older.some((name) => headers[name] !== undefined);
  if (hasOlder === (headers.forwarded !== undefined))
    throw new Refusal(hasOlder ? "access.forwarded.both" : "access.forwarded.none");
  const said = hasOlder
    ? {
        for: last(headers["x-forwarded-for"]),
        host: last(headers["x-forwarded-host"]),
        proto: last(headers["x-forwarded-proto"]),
      }
    : pairs(String(headers.forwarded));
  const from = addressIn(said.for ?? "");
  if (from === undefined) throw new Refusal("access.forwarded.address", { said: said.for ?? "" });
  return { from, host: said.host?.toLowerCase(), proto: said.proto?.toLowerCase() };
}

const last = (header: string | string[] | undefined): string | undefined =>
  header === undefined ? undefined : String(header).split(",").at(-1)?.trim();

/** The pairs of the last element; commas and semicolons inside quotes belong to their value. */
function pairs(header: string): Partial<Record<string, string>> {
  const [element = ""] = /(?:[^,"]|"(?:\\.|[^"\\])*")*$/.exec(header) ?? [];
  const found = [...element.matchAll(/([!#$%&'*+.^_`|~\w-]+)=(?:"((?:\\.|[^"\\])*)"|([^\s;,"]+))/g)];
  return Object.fromEntries(
    found.map(([, name = "", quoted, plain]) => [
      name.toLowerCase(),
      quoted?.replaceAll(/\\(.)/g, "$1") ?? plain,
    ]),
  );
}

/** An address without its port, of IPv6 without its brackets; undefined for a hidden or made-up one. */
function addressIn(said: string): string | undefined {
  const [, bracketed, plain] = /^(?:\[([^\]]+)\](?::\d+)?|([\d.]+)(?::\d+)?)$/.exec(said) ?? [];
  return [bracketed, plain, said].find((one) => one !== undefined && isIP(one) !== 0);
}
