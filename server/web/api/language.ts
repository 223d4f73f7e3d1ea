import type { FastifyRequest } from "fastify";
import { type Locale, localeFrom } from "../../../views/messages/language.ts";

/** The published document is written once, in the language of its keys. */
export const documentLanguage: Locale = "en";

/** The language an answer of the API is told in: what the request asks for first, else English. */
export function languageOf({ headers }: FastifyRequest): Locale {
  return localeFrom(headers["accept-language"]);
}
