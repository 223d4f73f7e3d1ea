import type { Words } from "../en/index.ts";

/** Wie lange Protokolle aufbewahrt werden. */
export const retention: Words["retention"] = {
  title: "Wie lange Protokolle aufbewahrt werden",
  standing: (years: number, since: string) =>
    `Aufbewahrt mindestens ${years} Jahre ab ihrem Datum, seit ${since}.`,
  standingNone: "Es gibt keine Festlegung: Jedes Protokoll wird auf Dauer aufbewahrt.",
  rules:
    "Eine längere Zeit gilt auch für Protokolle, die es schon gibt. Eine kürzere gilt nur für die, die von da an entstehen: Eine zugesagte Zeit wird nicht gekürzt. Protokolle von vor der ersten Festlegung werden auf Dauer aufbewahrt. Das Programm löscht nichts, weder vor noch nach dieser Zeit.",
  persons:
    "Wer ein Stück brachte, steht in seinem Protokoll und in der Kette und wird deshalb so lange aufbewahrt wie das Protokoll: Aus einem Eintrag allein lässt sich nichts entfernen. Dort einen Verweis des Hauses eintragen und Namen in einem Ankaufsbuch führen, das seinen eigenen Regeln folgt.",
  law: "Wie lange Protokolle aufbewahrt werden müssen und wann sie nicht länger aufbewahrt werden dürfen, regelt das örtliche Recht.",
  change: "Eine neue Festlegung",
  years: "Protokolle aufbewahren mindestens",
  yearsAfter: "Jahre",
  by: "Name oder Kürzel",
  reason: "Warum",
  reasonHint: "ein Gesetz, ein Vertrag, eine Regel des Hauses",
  keep: "Ab jetzt festlegen",
  refused: "Diese Angabe bitte noch einmal ansehen; nichts wurde geändert",
  wrong: (typed: string) =>
    `„${typed}“ ist keine Zahl von Jahren. Richtig: eine Zahl über 0 und bis 200, etwa 10.`,
  kept: "Festgelegt. Es gilt ab jetzt.",
  list: "Zeit abgelaufen, oder binnen eines Jahres abgelaufen",
  none: "Bei keinem Protokoll ist die Zeit binnen eines Jahres abgelaufen.",
  more: "Es sind mehr Protokolle als diese betroffen; die neuesten davon sind gezeigt.",
  columns: {
    ticket: "Beleg",
    measured: "Gemessen",
    until: "Aufbewahrt mindestens bis",
    standing: "Stand",
  },
  over: "Zeit ist abgelaufen; noch da",
  ending: "Zeit läuft ab",
  history: "Bisherige Festlegungen, älteste zuerst",
  historyColumns: { since: "Seit", years: "Jahre", by: "Von", reason: "Warum" },
};
