/** Sources that many entries share. A: CRC Handbook; B: the second table; where they differ the entry's band spans both. */
export const handbooks =
  "CRC Handbook of Chemistry and Physics, 80th ed. (1999), as carried by periodictable 1.6.0; second table: pymatgen 2022.11.7";
export const soundTable = "longitudinal sound: ASTM E494 Table X3.1";
export const conductivityTables =
  "conductivity also: programmed-instruction tables 5.1 and 9.1 for eddy-current testing";
