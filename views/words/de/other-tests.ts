import type { Words } from "../en/index.ts";

/** Andere Prüfungen des Stücks an der Waage. */
export const otherTests: Words["otherTests"] = {
  heading: "Andere Prüfungen dieses Stücks",
  struckOut: (names, more) =>
    more === 0
      ? `Durch sie ausgeschlossen: ${names}.`
      : `Durch sie ausgeschlossen: ${names} und ${more} weitere.`,
  holes: (names) => `Nicht gemacht, also Lücken: ${names}.`,
  noHoles: "Jede Art von Prüfung wurde gemacht.",
  next: "Als Nächstes:",
  enter: "Eine Prüfung eintragen oder zurückstellen",
};
