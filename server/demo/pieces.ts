import type { MethodName } from "../methods/index.ts";

/** An invented piece of the demonstration: what the ticket says, and what it really is. */
export interface DemoPiece {
  id: string;
  ticket: string;
  claim: string;
  method: MethodName;
  massGrams: number;
  /** what the simulated balance weighs */
  trueDensityGPerCm3: number;
}

/**
 * The pieces of the demonstration. Counter, town, tickets and pieces are invented; the densities are those of the
 * metals. What each looks like is told by `demo.pieces`, what it really is by `demo.truth`, on the bench only when the
 * record is written.
 */
export const demoPieces: readonly DemoPiece[] = [
  {
    id: "gull-bar",
    ticket: "MQ-101",
    claim: "ag-999",
    method: "hung",
    massGrams: 31.1274,
    trueDensityGPerCm3: 10.494,
  },
  {
    id: "gull-bar-twin",
    ticket: "MQ-102",
    claim: "ag-999",
    method: "hung",
    massGrams: 31.1092,
    trueDensityGPerCm3: 8.531,
  },
  {
    id: "seal-ring",
    ticket: "MQ-103",
    claim: "au-750",
    method: "hung",
    massGrams: 8.4126,
    trueDensityGPerCm3: 15.46,
  },
  {
    id: "guild-medal",
    ticket: "MQ-104",
    claim: "au-999",
    method: "hung",
    massGrams: 31.1049,
    trueDensityGPerCm3: 19.262,
  },
  {
    id: "anchor-token",
    ticket: "MQ-105",
    claim: "au-916",
    method: "displaced",
    massGrams: 15.9811,
    trueDensityGPerCm3: 11.34,
  },
  {
    id: "cup-handle",
    ticket: "MQ-106",
    claim: "ag-925",
    method: "displaced",
    massGrams: 46.2983,
    trueDensityGPerCm3: 10.357,
  },
  {
    id: "rope-band",
    ticket: "MQ-107",
    claim: "au-585",
    method: "hung",
    massGrams: 4.2218,
    trueDensityGPerCm3: 13.02,
  },
  {
    id: "ship-signet",
    ticket: "MQ-108",
    claim: "au-750",
    method: "hung",
    massGrams: 11.7731,
    trueDensityGPerCm3: 10.362,
  },
  {
    id: "galley-spoon",
    ticket: "MQ-109",
    claim: "ag-800",
    method: "hung",
    massGrams: 38.4507,
    trueDensityGPerCm3: 10.148,
  },
  {
    id: "harbour-dollar",
    ticket: "MQ-110",
    claim: "ag-900",
    method: "hung",
    massGrams: 26.7142,
    trueDensityGPerCm3: 8.938,
  },
  {
    id: "lighthouse-buckle",
    ticket: "MQ-111",
    claim: "ag-925",
    method: "displaced",
    massGrams: 22.9046,
    trueDensityGPerCm3: 9.742,
  },
  {
    id: "pilot-ring",
    ticket: "MQ-112",
    claim: "pt-950",
    method: "hung",
    massGrams: 6.3385,
    trueDensityGPerCm3: 20.68,
  },
];
