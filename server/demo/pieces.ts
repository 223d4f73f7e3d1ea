import type { MethodName } from "../methods/index.ts";

/** An invented piece of the demonstration: what the ticket says, and what it really is. */
export interface DemoPiece {
  id: string;
  ticket: string;
  description: string;
  claim: string;
  method: MethodName;
  massGrams: number;
  /** what the simulated balance weighs */
  trueDensityGPerCm3: number;
  /** told on the bench only when the record is written */
  truth: string;
}

/** The counter of the demonstration. Town, tickets and pieces are invented; the densities are those of the metals. */
export const demoCounter = "Merrowhaven quay counter";

export const demoPieces: readonly DemoPiece[] = [
  {
    id: "gull-bar",
    ticket: "MQ-101",
    description: "Small poured bar with a gull, marked 999",
    claim: "ag-999",
    method: "hung",
    massGrams: 31.1274,
    trueDensityGPerCm3: 10.494,
    truth: "fine silver, as marked",
  },
  {
    id: "gull-bar-twin",
    ticket: "MQ-102",
    description: "The same bar again, same mark, from another seller",
    claim: "ag-999",
    method: "hung",
    massGrams: 31.1092,
    trueDensityGPerCm3: 8.531,
    truth: "brass under a silver skin",
  },
  {
    id: "seal-ring",
    ticket: "MQ-103",
    description: "Seal ring without stone, yellow, marked 750",
    claim: "au-750",
    method: "hung",
    massGrams: 8.4126,
    trueDensityGPerCm3: 15.46,
    truth: "gold 750, yellow",
  },
  {
    id: "guild-medal",
    ticket: "MQ-104",
    description: "Medal of the rope-makers, said to be fine gold",
    claim: "au-999",
    method: "hung",
    massGrams: 31.1049,
    trueDensityGPerCm3: 19.262,
    truth: "a tungsten core under gold: density alone cannot tell it from fine gold",
  },
  {
    id: "anchor-token",
    ticket: "MQ-105",
    description: "Anchor token, said to be 916 gold",
    claim: "au-916",
    method: "displaced",
    massGrams: 15.9811,
    trueDensityGPerCm3: 11.34,
    truth: "lead under gilding",
  },
  {
    id: "cup-handle",
    ticket: "MQ-106",
    description: "Handle of a cup, solid, marked 925",
    claim: "ag-925",
    method: "displaced",
    massGrams: 46.2983,
    trueDensityGPerCm3: 10.357,
    truth: "silver 925, as marked",
  },
  {
    id: "rope-band",
    ticket: "MQ-107",
    description: "Plain band, yellow, marked 585",
    claim: "au-585",
    method: "hung",
    massGrams: 4.2218,
    trueDensityGPerCm3: 13.02,
    truth: "gold 585, as marked",
  },
  {
    id: "ship-signet",
    ticket: "MQ-108",
    description: "Signet with a ship, yellow, marked 750",
    claim: "au-750",
    method: "hung",
    massGrams: 11.7731,
    trueDensityGPerCm3: 10.362,
    truth: "silver 925 under gilding",
  },
  {
    id: "galley-spoon",
    ticket: "MQ-109",
    description: "Short spoon from a galley, marked 800",
    claim: "ag-800",
    method: "hung",
    massGrams: 38.4507,
    trueDensityGPerCm3: 10.148,
    truth: "silver 800, as marked",
  },
  {
    id: "harbour-dollar",
    ticket: "MQ-110",
    description: "Harbour dollar, said to be silver 900",
    claim: "ag-900",
    method: "hung",
    massGrams: 26.7142,
    trueDensityGPerCm3: 8.938,
    truth: "white copper-nickel",
  },
  {
    id: "lighthouse-buckle",
    ticket: "MQ-111",
    description: "Cast buckle with a lighthouse, marked 925",
    claim: "ag-925",
    method: "displaced",
    massGrams: 22.9046,
    trueDensityGPerCm3: 9.742,
    truth: "silver 925, as marked, around a closed void: the density of the whole is not that of its metal",
  },
  {
    id: "pilot-ring",
    ticket: "MQ-112",
    description: "The pilot's heavy white ring, marked Pt 950",
    claim: "pt-950",
    method: "hung",
    massGrams: 6.3385,
    trueDensityGPerCm3: 20.68,
    truth: "platinum 950, as marked",
  },
];
