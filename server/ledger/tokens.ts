import { hash, timingSafeEqual } from "node:crypto";
import { type Message, message } from "../../calibration/message.ts";
import type { Entry } from "./entry.ts";
import { LedgerError } from "./error.ts";

/** What a token of the API may do. Each covers itself only: nothing is included silently. */
export const scopes = [
  "records:read",
  "lots:read",
  "checks:read",
  "live:read",
  "entries:read",
  "tickets:write",
  "metrics:read",
] as const;
export type Scope = (typeof scopes)[number];

/** A token as the ledger knows it: by its hash, never itself. */
export interface TokenStanding {
  name: string;
  tokenHash: string;
  scopes: Scope[];
  until: string | null;
  issuedAt: string;
  revoked: boolean;
}

export type TokenAnswer = { may: true; name: string } | { may: false; status: 401 | 403; message: Message };

const prefix = "uht_";

/** A fresh token from 32 random bytes, to be shown once, and the hash to keep of it. */
export function newToken(random32: Uint8Array): { token: string; tokenHash: string } {
  if (random32.length !== 32) throw new TypeError(`a token of ${random32.length} bytes`);
  const token = prefix + Buffer.from(random32).toString("base64url");
  return { token, tokenHash: hashOfToken(token) };
}

/** SHA-256 of the token, hex. The token is 256 random bits, so a slow hash would add nothing. */
function hashOfToken(token: string): string {
  return hash("sha256", token, "hex");
}

/** True for the name of a scope; a ledger may hold names that another version gave out, and they open nothing here. */
function isScope(name: string): name is Scope {
  return scopes.some((scope) => scope === name);
}

/** Scopes from their names. Throws LedgerError that lists the known ones for an unknown name or none at all. */
export function scopesOf(names: readonly string[]): Scope[] {
  const unknown = names.filter((name) => !isScope(name));
  if (names.length > 0 && unknown.length === 0) return names as Scope[];
  const known = scopes;
  throw unknown.length > 0
    ? new LedgerError("ledger.token.unknown-scope", { scopes: unknown, known }, "refused")
    : new LedgerError("ledger.token.no-scope", { known }, "refused");
}

/** The tokens that follow from the entries "token-issued" and "token-revoked". */
export function tokensFrom(entries: readonly Entry[]): TokenStanding[] {
  const tokens = new Map<string, TokenStanding>();
  for (const entry of entries) {
    if (entry.kind === "token-issued") {
      const { name, tokenHash, until = null } = entry.body;
      const known = entry.body.scopes.filter(isScope);
      tokens.set(tokenHash, { name, tokenHash, scopes: known, until, revoked: false, issuedAt: entry.at });
    }
    if (entry.kind === "token-revoked") {
      const token = tokens.get(entry.body.tokenHash);
      if (token) token.revoked = true;
    }
  }
  return [...tokens.values()];
}

/**
 * Whether a request with this Authorization header may do what needs the scope at this moment. 401: no such token, or
 * no longer; 403: the token is good but does not cover it.
 */
export function mayWith(
  authorization: string | undefined,
  scope: Scope,
  tokens: readonly TokenStanding[],
  now: Date,
): TokenAnswer {
  const given = tokenIn(authorization);
  if (given === undefined)
    return {
      may: false,
      status: 401,
      message: message("ledger.token.none"),
    };
  const token = standingOf(given, tokens);
  if (!token || token.revoked)
    return {
      may: false,
      status: 401,
      message: message("ledger.token.unknown"),
    };
  if (isOver(token, now))
    return {
      may: false,
      status: 401,
      message: message("ledger.token.over", { name: token.name, until: token.until ?? "" }),
    };
  if (!token.scopes.includes(scope))
    return {
      may: false,
      status: 403,
      message: message("ledger.token.other-scope", { name: token.name, covers: token.scopes, scope }),
    };
  return { may: true, name: token.name };
}

/** Whether a request with this Authorization header holds a token that is good at this moment, whatever it covers. */
export function isToken(
  authorization: string | undefined,
  tokens: readonly TokenStanding[],
  now: Date,
): boolean {
  const token = standingOf(tokenIn(authorization) ?? "", tokens);
  return token !== undefined && !token.revoked && !isOver(token, now);
}

function tokenIn(authorization: string | undefined): string | undefined {
  return /^Bearer ([A-Za-z0-9_-]{20,200})$/.exec(authorization ?? "")?.[1];
}

function standingOf(given: string, tokens: readonly TokenStanding[]): TokenStanding | undefined {
  const given32 = Buffer.from(hashOfToken(given), "hex");
  return tokens.find(({ tokenHash }) => timingSafeEqual(Buffer.from(tokenHash, "hex"), given32));
}

const isOver = ({ until }: TokenStanding, now: Date): boolean =>
  until !== null && now.getTime() >= Date.parse(until);
