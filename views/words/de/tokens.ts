import type { Words } from "../en/index.ts";

/** Zugangsschlüssel der Schnittstelle. */
export const tokens: Words["tokens"] = {
  title: "Zugangsschlüssel für Laborsysteme",
  lead: "Ein Laborsystem liest diesen Messplatz über seine Schnittstelle und braucht dazu einen Zugangsschlüssel. Er öffnet, was angekreuzt ist, und sonst nichts. Die Seiten selbst brauchen keinen: Wer an diesem Rechner sitzt, dem wird vertraut.",
  document: "Was die Schnittstelle bietet, als OpenAPI",
  made: "Der neue Zugangsschlüssel. Er wird dieses eine Mal gezeigt und nirgends aufbewahrt: jetzt kopieren.",
  header: "Das Laborsystem schickt ihn mit jeder Anfrage:",
  newOne: "Ein neuer Zugangsschlüssel",
  name: "Name",
  nameHint: "das System, das ihn benutzen wird",
  may: "Er darf",
  scopes: {
    "records:read": "Protokolle lesen und die Einträge, auf denen sie ruhen",
    "lots:read": "Partien und ihre Stücke lesen",
    "checks:read": "Prüfungen des Messplatzes lesen",
    "live:read": "die laufende Anzeige mithören",
  },
  until: "Gültig bis",
  untilHint: "leer: bis er widerrufen wird",
  by: "Name oder Kürzel",
  make: "Schlüssel ausstellen",
  refused: "Diese Angabe bitte noch einmal ansehen; es wurde kein Schlüssel ausgestellt",
  nameMissing: "Der Name ist leer. Richtig: das System, das ihn benutzen wird, etwa: Lagersystem.",
  nothingTicked:
    "Nichts ist angekreuzt, der Schlüssel würde nichts öffnen. Bitte mindestens eines ankreuzen.",
  untilWrong: (typed: string) =>
    `„${typed}“ ist kein kommender Tag. Richtig: ein Tag nach heute, oder nichts.`,
  list: "Zugangsschlüssel dieses Messplatzes",
  none: "Noch wurde kein Schlüssel ausgestellt.",
  columns: { name: "Name", opens: "Öffnet", made: "Ausgestellt", until: "Gültig bis", standing: "Stand" },
  standing: { good: "gültig", revoked: "widerrufen", over: "abgelaufen" },
  noEnd: "bis zum Widerruf",
  revoke: "Widerrufen",
  why: "Warum er widerrufen wird",
  whyShort: "Vertrag beendet",
  whyMissing: "Der Widerruf braucht einen Grund, etwa: Vertrag beendet.",
  revoked: "Der Schlüssel ist widerrufen; er öffnet ab jetzt nichts mehr.",
};
