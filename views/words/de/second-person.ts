import type { Words } from "../en/index.ts";

/** Getippte Ablesungen eines Stücks über einer Grenze, von einer zweiten Person bestätigt. */
export const secondPerson: Words["secondPerson"] = {
  title: "Eine zweite Person liest ab",
  due: (above) =>
    `Dieses Stück liegt über ${above}, und seine Ablesungen wurden getippt. Eine zweite Person liest ab und tippt, bevor das Protokoll geschrieben wird, ohne zu sehen, was hier steht.`,
  handOver: "An eine zweite Person übergeben",
  lead: "Die Masse selbst ablesen: von der Anzeige, oder das Stück noch einmal wiegen. Was zuerst getippt wurde, wird hier nicht gezeigt.",
  piece: (ticket) => `Stück ${ticket}`,
  reading: (role) => `Ihre Ablesung: ${role}`,
  allDecimals: "alle Stellen, die die Waage zeigt, auch Nullen",
  unit: (role) => `Einheit der Ablesung: ${role}`,
  by: "Ihr Kürzel",
  typedBy: "Kürzel der Person, die zuerst getippt hat",
  typedByIs: (who) => `Die ersten Ablesungen hat ${who} getippt.`,
  send: "Beide gegeneinanderhalten",
  back: "Zurück, ohne abzulesen",
  differs: (by) =>
    `Was ${by} abgelesen hat, stimmt nicht überein. Beides bleibt stehen. Die falsche Ablesung mit Grund beiseitelegen und neu tippen; dann liest eine zweite Person noch einmal ab.`,
  differsBack: "Die Ablesungen auf dem Messplatz richtigstellen",
  confirmed: (by, when) => `Ablesungen getippt, bestätigt von ${by} am ${when}.`,
  heading: "Zweite Person",
  caption: "Was zuerst getippt wurde und was eine zweite Person ablas, ohne es zu sehen",
  columns: { what: "Ablesung", first: "Zuerst", second: "Zweite Person", state: "Gegeneinandergehalten" },
  agrees: (grams) => `stimmen überein auf ${grams} g`,
  unlike: (grams) => `weichen um mehr als ${grams} g ab`,
  readBy: (by, typedBy, when, above) =>
    `${by} las am ${when} ab, was ${typedBy} getippt hatte, da das Stück über ${above} liegt.`,
  settings: "Zweite Person",
  settingsLead:
    "Getippte Ablesungen eines Stücks über einer Grenze bestätigt eine zweite Person, bevor sein Protokoll geschrieben wird. In einer Partie mit festgelegtem Preis zählt, was das Stück zu diesem Preis wert ist, wenn es ist, als was es angegeben wurde, oder als Feinmetall, wo nichts angegeben ist; sonst seine trockene Masse, denn mehr ist vor dem Wiegen nicht bekannt.",
  massG: "Masse trocken über",
  worth: "In einer Partie mit festgelegtem Preis: wert mehr als",
  worthUnit: "in der Währung dieses Preises",
  never: "leer: nie",
};
