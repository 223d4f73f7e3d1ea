import type { Words } from "../en/index.ts";

/** Was zu einer einzelnen Wägung gesagt werden kann. */
export const weighing: Words["weighing"] = {
  heading: "Mehr zu dieser Wägung",
  lead: "Nur was von einer einfachen Wägung abweicht: ein Stück, im Wasser der Einstellungen, Aufhängung in ihrer Tiefe auf null gestellt. Alles davon geht in das Unsicherheitsbudget ein und bleibt in der Aufzeichnung.",
  save: "Das behalten",
  stated: "Für diese Wägung angegeben:",
  beside: {
    heading: "Nullpunkte, und noch einmal trocken",
    hung: "Die Waage ohne Last ablesen, Aufhängung im Wasser an ihrer Marke: davor und danach. Was der Nullpunkt gewandert ist, geht ins Budget ein.",
    displaced:
      "Den Becher ohne das Stück ablesen: davor, danach, und zweimal davor, wenn Wasser verdunstet. Ein Nullpunkt nach dem Herausheben ist um das mitgenommene Wasser zu klein; unten sagen, wie herausgehoben wurde, dann wird die Drift durch alle Blicke zur Zeit ihrer Eingabe gelegt.",
    flask: "Die leere Schale davor und danach ablesen.",
    dryAfter:
      "Das Stück trocknen und am Ende noch einmal wiegen: Wasser, das darin blieb, oder ein anderes Stück zeigt sich daran.",
  },
  groups: {
    pool: "Mehrere gleiche Stücke zusammen",
    added: "Ein bekannter Körper am Stück, etwa ein Stein",
    hanger: "Draht, und eine mitgewogene Aufhängung",
    stand: "Draht, und die Drift des Bechers",
    flask: "Die beiden Füllungen des Kolbens",
    liquid: "Eine andere Flüssigkeit als das Wasser der Bank",
    room: "Temperaturen und Luft",
    display: "Die Anzeige",
  },
  hints: {
    pool: "Die Dichte ist das Mittel aller; das Ergebnis sagt, wie viele fremde es verbergen würde. Jedes Stück muss Masse, Maß und Magnet für sich bestehen.",
    added:
      "Masse und Dichte mit ihren Standardunsicherheiten. Der Körper wird aus beiden Wägungen herausgerechnet.",
    hanger:
      "Die Ablesungen leer lassen, wenn die Waage mit der Aufhängung in ihrer Tiefe auf null gestellt wurde. Sonst die Aufhängung allein in dieser Tiefe wiegen; auch in Luft, wenn sie in den trockenen Ablesungen steckt. Ein Stück, das schwimmt, hält ein Senkkörper an der Aufhängung unter Wasser, der so gewogen wird.",
    stand: "Das Stück hängt am Draht von einem Stativ; die Waage trägt nur den Becher.",
    flask:
      "War eine Füllung wärmer, so fasste der Kolben weniger. Leer lassen, wenn beide gleich warm waren.",
    liquid:
      "Dichte mit ihrer Standardunsicherheit, von der Flasche oder ihrem Bericht; oder hier mit einem Körper bekannten Volumens gefunden. Die Temperatur wird bei ihrem Schritt eingegeben.",
    room: "Ein Unterschied zwischen Thermometer und Stück, und die Luft wie gemessen statt nach der Höhe.",
    display:
      "Ein Schritt der Anzeige, wo ihre Stellen ihn nicht verraten: Fünferschritte oder ein zweiter Bereich.",
  },
  fields: {
    pieces: "Zahl der Stücke",
    "odd-density": "Dichte eines fremden",
    "added-name": "Name des Körpers",
    "added-mass": "Masse des Körpers",
    "added-mass-u": "u dieser Masse",
    "added-density": "Dichte des Körpers",
    "added-density-u": "u dieser Dichte",
    wire: "Draht durch die Oberfläche",
    "wetting-agent": "Ein Tropfen Netzmittel im Wasser",
    "hanger-in-liquid": "Aufhängung allein in ihrer Tiefe",
    "hanger-in-air": "Aufhängung allein in Luft",
    drift: "Drift des Nullpunkts",
    "flask-liquid": "Flüssigkeit im vollen Kolben",
    "flask-warmer": "Voller Kolben wärmer um",
    "flask-warmer-u": "u dieses Unterschieds",
    liquid: "Flüssigkeit",
    "liquid-name": "Name der Flüssigkeit",
    "liquid-lot": "Charge auf der Flasche",
    "liquid-density": "Dichte der Flüssigkeit",
    "liquid-density-u": "u der Dichte der Flüssigkeit",
    "liquid-stated-at": "Angegeben bei",
    "liquid-expansion": "Ausdehnung je Grad",
    "body-volume": "Volumen des bekannten Körpers",
    "body-volume-u": "u dieses Volumens",
    "body-dry": "Bekannter Körper, trocken",
    "body-immersed": "Bekannter Körper, eingetaucht",
    "body-rise": "Bekannter Körper, Anstieg",
    gradient: "Wasser und Thermometer können abweichen um",
    "air-temperature": "Lufttemperatur",
    "air-pressure": "Luftdruck",
    "air-humidity": "Relative Feuchte",
    "step-dry": "Schritt der Anzeige, trocken",
    "step-wet": "Schritt der Anzeige, eingetaucht",
    paired: "Trockene und eingetauchte Wiederholungen gehören paarweise zusammen",
  },
  liquids: {
    water: "das Wasser der Bank",
    stated: "Dichte angegeben",
    measured: "hier mit bekanntem Körper gemessen",
  },
  drifts: {
    none: "nicht ausgeglichen",
    wet: "ausgeglichen; nass herausgehoben",
    dried: "ausgeglichen; Stück bei jedem Heben getrocknet",
    kept: "ausgeglichen; nichts mitgenommen",
  },
};
