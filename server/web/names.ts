import type { Locale } from "../../views/messages/language.ts";
import { tellerOf } from "../../views/messages/tell.ts";
import { isNameReference } from "../ledger/customer-names.ts";
import type { Entry } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";

/** Entries as a page tells them: with the names of customers, which the ledger keeps apart. */
export function named({ names }: Pick<Ledger, "names">, entries: readonly Entry[], locale: Locale): Entry[] {
  return names ? names.named(entries, tellerOf(locale)("names.gone")) : [...entries];
}

/** Who brought something, as a list tells it: a name that is gone by that word. */
export const nameShown = (text: string, locale: Locale): string =>
  isNameReference(text) ? tellerOf(locale)("names.gone") : text;
