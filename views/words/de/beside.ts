/** Waagen, die mitgehört werden, während von einer anderen abgelesen wird. */
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
  changeOver: "Die nächste Ablesung von einer anderen Waage nehmen",
};
