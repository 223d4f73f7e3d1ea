import type { ToldPair } from "../../told-pair.ts";

/** Sätze der Entscheidungsregel. */
export const decision: readonly ToldPair[] = [
  [
    "Simple acceptance (JCGM 106, ILAC-G8): accepted when the value lies inside the limits, without a guard band.",
    "Einfache Annahme (JCGM 106, ILAC-G8): angenommen, wenn der Wert innerhalb der Grenzen liegt, ohne Sicherheitsabstand.",
  ],
  [
    "Guard band of {multiple} U (JCGM 106, ILAC-G8): accepted only when the value lies inside the limits by that much.",
    "Sicherheitsabstand von {multiple} U (JCGM 106, ILAC-G8): angenommen nur, wenn der Wert um so viel innerhalb der Grenzen liegt.",
  ],
  [
    "Pass and conditional (ILAC-G8), with a guard band of {multiple} U on both sides of each limit: pass, conditional pass, conditional fail or fail.",
    "Angenommen und bedingt (ILAC-G8), mit einem Sicherheitsabstand von {multiple} U beiderseits jeder Grenze: angenommen, bedingt angenommen, bedingt abgelehnt oder nicht angenommen.",
  ],
  [
    "Risk of the rule: none of acceptance, since it can accept nothing here.",
    "Risiko der Regel: keines der Annahme, denn sie kann hier nichts annehmen.",
  ],
  [
    "Risk of the rule: a piece it accepts can be outside the limits with a probability of up to {risk} %, at the worst accepted value.",
    "Risiko der Regel: Ein angenommenes Stück kann mit einer Wahrscheinlichkeit bis {risk} % außerhalb der Grenzen liegen, beim ungünstigsten angenommenen Wert.",
  ],
  [
    "Inside the limits under the agreed rule; probability that this is wrong: {risk} %.",
    "Innerhalb der Grenzen nach der vereinbarten Regel; Wahrscheinlichkeit, dass das falsch ist: {risk} %.",
  ],
  [
    "Inside the limits, but by less than the guard band; probability that this is wrong: {risk} %.",
    "Innerhalb der Grenzen, aber um weniger als den Sicherheitsabstand; Wahrscheinlichkeit, dass das falsch ist: {risk} %.",
  ],
  [
    "Outside the limits, but by less than the guard band; probability that this is wrong: {risk} %.",
    "Außerhalb der Grenzen, aber um weniger als den Sicherheitsabstand; Wahrscheinlichkeit, dass das falsch ist: {risk} %.",
  ],
  [
    "Not accepted under the agreed rule; probability that this is wrong: {risk} %.",
    "Nach der vereinbarten Regel nicht angenommen; Wahrscheinlichkeit, dass das falsch ist: {risk} %.",
  ],
  [
    "The guard bands leave no acceptance interval: under this rule nothing measured so coarsely can be accepted.",
    "Die Sicherheitsabstände lassen keinen Annahmebereich: Nach dieser Regel kann nichts so grob Gemessenes angenommen werden.",
  ],
];
