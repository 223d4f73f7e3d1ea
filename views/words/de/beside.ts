/** Mehrere Waagen zugleich, und was die Seite der Waagen sonst vom Finden und Behalten sagt. */
export const beside = {
  heading: "Daneben gehört",
  caption: "Waagen, die offen sind, während von der obigen abgelesen wird",
  balance: "Waage",
  now: "Jetzt",
  inWords: "In Worten",
  none: "Keine weitere Waage ist offen.",
  hear: "Mithören",
  state: "mitgehört",
  take: (balance: string) => `Ablesen von: ${balance}`,
  end: (balance: string) => `Schließen: ${balance}`,
  keptFor: "Komma, Anfrage und Profil gelten für",
  listeningAt: (line: string, tried: number) =>
    `Jetzt mit ${line}; ${tried === 1 ? "eine Einstellung" : `${tried} Einstellungen`} davor versucht.`,
  profileFile: "Die exportierte Datei",
  profileText: "Oder der ganze Text der exportierten Datei",
  changeOver: "Die nächste Ablesung von einer anderen Waage nehmen",
};
