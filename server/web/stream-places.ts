import type { FastifyRequest } from "fastify";

/** A browser opens six connections to one address at most; its pages, forms and pictures need some of them. */
const mostOfBrowser = 4;
/** Pages and programs that listen at once. */
export const mostListening = 200;

interface Place {
  browser: string | undefined;
  giveUp: () => void;
}

/** The streams that are open, oldest first. */
const taken = new Set<Place>();

/**
 * Takes a place for a stream; null when all are taken. Where one browser holds too many, its oldest gives its place up and
 * comes back after a pause, so that its windows take turns and its forms always get through. Gives what leaves the place.
 */
export function takePlace(browser: string | undefined, giveUp: () => void): (() => void) | null {
  if (taken.size >= mostListening) return null;
  const place = { browser, giveUp };
  taken.add(place);
  const own = browser === undefined ? [] : [...taken].filter((one) => one.browser === browser);
  for (const oldest of own.slice(0, -mostOfBrowser)) {
    taken.delete(oldest);
    oldest.giveUp();
  }
  return () => void taken.delete(place);
}

/** What tells one browser from another: the cookie that its forms go by, else where it asks from. */
export function browserOf({ cookies, ip, headers }: FastifyRequest): string {
  return cookies._csrf ?? `${ip} ${headers["user-agent"] ?? ""}`;
}
