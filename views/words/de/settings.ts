import type { Words } from "../en/index.ts";

/** Die Einstellungen. */
export const settings: Words["settings"] = {
  title: "Einstellungen",
  problems: "Diese Eingaben bitte noch einmal ansehen; nichts wurde geändert",
  kept: {
    look: "Das Aussehen ist auf diesem Gerät gemerkt.",
    bench: "Gemerkt. Der Messplatz benutzt es ab jetzt.",
    house: "Gemerkt für die nächsten Berichte.",
  },
  storage: "Speicher",
  ledgerIs: (place) => `Das Buch dieses Messplatzes ist ${place}.`,
  backup: "Kopien macht der Befehl underhook backup, auch während der Messplatz läuft.",
  askAgain: "Die drei ersten Fragen noch einmal stellen",
  ownMetals: "Eigene Metalle",
  demoEnd: "Vorführung beenden",
  demoEndLead:
    "Die erfundenen Stücke und ihre Protokolle werden in einem eigenen Ordner beiseitegelegt, und ein echter Messplatz beginnt, leer, mit getippten Ablesungen. Nichts wird gelöscht.",
  beginReal: "Einen echten Messplatz beginnen",
  look: "Aussehen und Tasten",
  theme: "Hell oder dunkel",
  themes: { auto: "wie das Gerät", light: "hell", dark: "dunkel" },
  locale: "Sprache und Zahlen",
  keys: "Ein-Tasten-Kürzel am Messplatz",
  keep: "Merken",
  onReports: "Auf Berichten",
  house: "Name des Hauses",
  houseHint: "leer lassen, wenn nur für sich selbst gewogen wird",
  address: "Anschrift",
  contact: "Telefon oder Mail",
  contactHint: "wie ein Kunde Sie wegen eines Berichts erreicht",
  accreditedBy: "Für Dichte akkreditiert von",
  accreditedByHint:
    "leer lassen, wenn Sie nicht von einer Akkreditierungsstelle für diese Arbeit akkreditiert sind (ISO/IEC 17025); ohne sie bleiben die Wörter, die akkreditierten Laboren vorbehalten sind, aus jedem Bericht weg",
  accreditation: "Nummer der Akkreditierung",
  accreditationHalf:
    "Eine Akkreditierung hat eine Stelle und eine Nummer. Beide angeben oder beide leer lassen.",
  verifiedScale: "Geeichte Waage",
  verifiedScaleHint: "Nummer auf ihrem Siegel, für den Ankauf",
  verifiedUntil: "Siegel gültig bis",
  bench: "Wie dieser Messplatz wiegt",
  method: "Verfahren, mit dem ein neues Stück beginnt",
  methods: { displaced: "verdrängt", hung: "hängend", flask: "Kolben" },
  metal: "Hier meistens",
  metalHint: "die Liste der Angaben beginnt damit",
  metals: { silver: "Silber", gold: "Gold", platinum: "Platin und Palladium", any: "Alles Mögliche" },
  scaleStep: "Kleinster Schritt Ihrer Waage",
  scaleStepHint: "für die Planung; am Messplatz zeigen ihn die Ablesungen selbst",
  secondUnit: "Massen einer Partie neben Gramm",
  secondUnitHint: "Ablesungen behalten ihre Einheit; das Protokoll zählt in Gramm",
  secondUnits: { none: "nur Gramm", ozt: "Feinunzen (ozt)", dwt: "Pennyweight (dwt)" },
  scaleStepUnit: "Einheit des kleinsten Schritts",
  water: "Wasser",
  waters: { distilled: "destilliert", deionised: "entsalzt", boiled: "abgekocht", tap: "aus dem Hahn" },
  keepFromNow: "Ab jetzt merken",
  keepHint:
    "Gilt für das Stück auf dem Messplatz und jedes spätere, außer Entscheidungsregel und Vertrauen: die behält ein Stück, wie sie waren, als es auf den Messplatz kam. Schon geschriebene Protokolle ändern sich nicht.",
  numbers: {
    repeatabilityGrams: {
      label: "Wiederholbarkeit",
      hint: "Standardabweichung einer trockenen Ablesung; leer: zwei Drittel der letzten Stelle",
    },
    immersedRepeatabilityGrams: {
      label: "Wiederholbarkeit eingetaucht",
      hint: "leer: das Doppelte der trockenen",
    },
    linearityGrams: { label: "Linearität, plus oder minus", hint: "" },
    confidencePercent: { label: "Vertrauen des Befunds", hint: "" },
    thermometerHalfWidthCelsius: { label: "Thermometer stimmt auf, plus oder minus", hint: "" },
    dissolvedSolidsMgPerL: { label: "Gelöste Stoffe", hint: "" },
    altitudeMetres: { label: "Höhe über dem Meer", hint: "" },
    wireMillimetres: {
      label: "Dicke des Drahts, wo er ins Wasser tritt",
      hint: "0 lässt den Draht aus",
    },
    bubbleAllowanceMg: {
      label: "Zugeständnis für Blasen",
      hint: "eine Blase von 1 mm sind 0,5 mg, von 2 mm 4 mg",
    },
  },
};

/** Das Fenster zum Kunden. */
export const customer: Words["customer"] = {
  title: "Auf der Waage",
  demo: "Vorführung: eine erfundene Waage, nichts Echtes wird gewogen.",
  indication: "Anzeige des Geräts",
  scale: "Geeichte Waage",
  sealUntil: (number, until) => `${number}, Siegel gültig bis ${until}`,
  hint: "Die Masse ist, was das Gerät zeigt. Dichte und Feingehalt gehören nicht zum Kauf nach Gewicht.",
  piece: (piece) => `Stück: ${piece}`,
  noPiece: "keines auf dem Messplatz",
  steady: "in Ruhe",
  moving: "bewegt",
  "not-told": "das Gerät sagt nicht, ob es ruht",
  typed: "von Hand getippt vom Gerät neben Ihnen, das gilt",
  nothing: "Nichts ist auf der Waage. Ablesungen werden von Hand getippt; das Gerät neben Ihnen gilt.",
};
