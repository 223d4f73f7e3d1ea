import { type BalanceEvent, type EventCode, lineEvent, type Stability } from "./reading.ts";

/**
 * Words a person would read on a display, in English, German, Spanish, French, Italian and Portuguese [common words of
 * these languages]; anything else has to be learned from the balance or told by its owner.
 */
const stabilityWords: ReadonlyMap<string, Stability> = new Map([
  ...wordsOf("stable steady settled stabil ruhig estable stabile estável estavel", "stable" as const),
  ...wordsOf(
    "unstable moving motion unsteady dynamic instabil unruhig bewegt inestable instable instabile instável instavel",
    "moving" as const,
  ),
]);

/** Words that say that the number beside them, or the whole line, is no weight of what lies on the pan now. */
const eventWords: ReadonlyMap<string, EventCode> = new Map([
  ...wordsOf(
    "over overload overrange overcapacity überlast ueberlast sobrecarga surcharge sovraccarico excesso",
    "line.overload.word" as const,
  ),
  ...wordsOf(
    "under underload underrange unterlast subcarga souscharge sottocarico infracarga",
    "line.underload.word" as const,
  ),
  ...wordsOf(
    "err error fault fail failure fehler störung stoerung defekt fallo erreur défaut defaut panne errore guasto erro falha alarm alarme alarma allarme",
    "line.error.fault" as const,
  ),
  ...wordsOf(
    "wait busy warten bitte esperar espere attendre attendez attendere aguarde",
    "line.error.busy" as const,
  ),
  ...wordsOf(
    "adjusting adjusted adjustment calibrating calibrated calibration justieren justiert justierung kalibrieren kalibriert ajustando ajustado ajuste ajustage ajusté regolazione regolata calibrazione",
    "line.notice.adjusted" as const,
  ),
  ...wordsOf(
    // hold
    "hold held halten gehalten retener retenido tenu maintien gel mantenere tenuta reter retido freeze " +
      // tare
      "tare pt tara tarar tarieren tarar tarage preset vorgabe " +
      // statistics
      "sd mean avg average sum total max min maximum minimum range count cnt mittel mittelwert summe anzahl spanne media promedio suma rango moyenne somme total écart ecart nombre somma scarto numero média soma desvio desviación desviacion deviation std dev rsd diff stückzahl " +
      // limits and classes
      "limit low high lo hi ok ng pass accept reject grenze gut límite limite alto bajo haut bas basso baixo tol target soll ziel objetivo cible " +
      // other modes
      "peak spitze pico pic picco percent prozent pieces pcs stück pièces piezas pezzi peças density dichte densidad densité densità densidade animal test demo cal ref reference referenz capacity kapazität cap store memory print time date",
    "line.not-a-weight.word" as const,
  ),
]);

function wordsOf<T>(words: string, meaning: T): [string, T][] {
  return words.split(/\s+/).map((word) => [word, meaning]);
}

/** One word beside a number, in the letters of six languages, as part of a regular expression. */
export const besidePattern = "[A-Za-z\\u00c0-\\u017f]{1,16}";

/** What a token beside a number says about rest; null for a word that is not plain, which nobody may pass over. */
export function stabilityWord(token: string): Stability | null {
  return stabilityWords.get(token.toLowerCase()) ?? null;
}

/** The event of a line whose number stands beside such a word; null for a word that is no such word. */
export function besideWord(token: string, line: string): { event: BalanceEvent } | null {
  const code = eventWords.get(token.toLowerCase());
  if (code === undefined) return null;
  return lineEvent(code, code === "line.not-a-weight.word" ? { line, word: token } : { word: line });
}

const phrases: readonly [RegExp, EventCode][] = [
  [/^over[ -]?(load|range|capacity)?$/i, "line.overload.word"],
  [/^under[ -]?(load|range)?$/i, "line.underload.word"],
  [/^(err(or)?|fault)[ .:]*\w{0,6}$/i, "line.error.fault"],
  [/^(low|weak)[ -]?bat(t(ery)?)?$|^bat(t(ery)?)?[ -]?low$/i, "line.error.battery"],
  [/^(warm(ing)?[ -]?up|please wait|bitte warten)$/i, "line.error.busy"],
  // what stands in the place of a number that cannot be shown
  [/^[-=_*.^]{3,}( ?[a-z%]{1,4})?$/i, "line.not-a-weight.dashes"],
];

/** A whole line of such a word says that a key was pressed on the balance: what it shows from now on is counted from elsewhere. */
const keyWords: ReadonlyMap<string, EventCode> = new Map([
  ...wordsOf("tare tared tara tariert tarado taré tarato", "line.notice.tared" as const),
  ...wordsOf("zero zeroed rezero null nullen genullt cero zéro azzerato", "line.notice.zeroed" as const),
]);

/** An event for a whole line that is plain words, or null. */
export function wordsMeaning(line: string): { event: BalanceEvent } | null {
  const word = line.replace(/[\x00-\x1f]/g, " ").trim();
  const key = keyWords.get(word.toLowerCase());
  if (key) return lineEvent(key, { word });
  const found = phrases.find(([pattern]) => pattern.test(word));
  return found ? lineEvent(found[1], { word }) : besideWord(word, word);
}
