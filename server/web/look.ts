import type { FastifyReply, FastifyRequest } from "fastify";
import { type Locale, localeFrom, locales } from "../../views/messages/language.ts";
import { decimalMark } from "../../views/numbers.ts";
import type { Frame, Theme } from "../../views/page.tsx";
import { assetVersion } from "./assets.ts";
import { personOf } from "./person.ts";
import type { Manner } from "./when.ts";

declare module "fastify" {
  interface FastifyInstance {
    /** time zone of the place, of the IANA list */
    zone(): string;
  }
}

/** How pages look on one device; kept there, since the phone and the window to the customer may differ. */
export interface Appearance {
  theme: Theme;
  locale: Locale;
  /** one-key shortcuts */
  keys: boolean;
}

export const themes = ["auto", "light", "dark"] as const;

const cookieName = "underhook-look";
/** Browsers keep a cookie for at most 400 days, s. */
const longestSeconds = 400 * 24 * 3600;

/** The look this device has chosen; until it has, the language its browser asks for, the device's own light or dark, with shortcuts; and the clock of the place. */
export function lookOf(request: FastifyRequest): Appearance & Manner {
  const [theme, locale, keys] = (request.cookies[cookieName] ?? "").split(".");
  return {
    theme: themes.find((one) => one === theme) ?? "auto",
    locale: locales.find((one) => one === locale) ?? localeFrom(request.headers["accept-language"]),
    keys: keys !== "off",
    zone: request.server.zone(),
  };
}

/** The decimal mark of the language that a form was typed in. */
export const ownMark = (request: FastifyRequest) => decimalMark(lookOf(request).locale);

/** Keeps the look on the device that asked. */
export function keepLook(reply: FastifyReply, { theme, locale, keys }: Appearance): void {
  reply.setCookie(cookieName, `${theme}.${locale}.${keys ? "on" : "off"}`, {
    path: "/",
    httpOnly: true,
    sameSite: "strict",
    maxAge: longestSeconds,
  });
}

/** What every page needs around it: its place, the token of its forms, the look of the device. */
export function frameOf(
  request: FastifyRequest,
  reply: FastifyReply,
  { path, demo }: { path: string; demo: boolean },
): Omit<Frame, "title" | "main"> & Appearance & Manner & { csrfToken: string } {
  const person = personOf(request)?.initials;
  return {
    path,
    demo,
    csrfToken: reply.generateCsrf(),
    assetVersion,
    ...lookOf(request),
    ...(person === undefined ? {} : { person }),
  };
}
