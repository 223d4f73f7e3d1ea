/**
 * Density of air-free water, kg/m³, from another formulation than the measurement code's: IAPWS SR6-08(2011), liquid
 * water at 0.1 MPa, its specific volume and the slope of it with pressure. Coefficients from the Debian package
 * python3-iapws 1.5.3, checked in the test against the values of table 8 of the release.
 */
export function airFreeWater(celsius: number, pascals = 101_325): number {
  const kelvin = celsius + 273.15;
  const alpha = 10 / (593 - kelvin);
  const beta = 10 / (kelvin - 232);
  const sum = (terms: readonly (readonly [number, number])[], base: number) =>
    terms.reduce((total, [factor, power]) => total + factor * base ** power, 0);
  const volume =
    1.93763157e-2 +
    sum(
      [
        [6.74458446e3, 4],
        [-2.22521604e5, 5],
        [1.00231247e8, 7],
        [-1.63552118e9, 8],
        [8.32299658e9, 9],
      ],
      alpha,
    ) +
    sum(
      [
        [5.78545292e-3, 1],
        [-1.53195665e-2, 2],
        [3.11337859e-2, 3],
        [-4.23546241e-2, 4],
        [3.38713507e-2, 5],
        [-1.19946761e-2, 6],
      ],
      beta,
    );
  const slope =
    sum(
      [
        [-7.5245878e-6, 1],
        [-1.3767418e-2, 3],
        [1.0627293e1, 5],
        [-2.0457795e2, 6],
        [1.2037414e3, 7],
      ],
      alpha,
    ) +
    sum(
      [
        [-3.109147e-6, 1],
        [2.8964919e-5, 3],
        [-1.3112763e-4, 4],
        [3.0410453e-4, 5],
        [-3.9034594e-4, 6],
        [2.3403117e-4, 7],
        [-4.8510101e-5, 9],
      ],
      beta,
    );
  // R = 0.46151805 kJ/(kg K), 10 K, 0.1 MPa: m³/kg, and m³/kg per MPa
  const m3PerKg = (0.46151805 * 10 * volume) / 0.1 / 1000;
  const perMegapascal = (0.46151805 * 10 * slope) / 0.1 ** 2 / 1000;
  return 1 / (m3PerKg + perMegapascal * (pascals / 1e6 - 0.1));
}

/** What full saturation with air takes off, kg/m³: the two sets of Jones & Harris 1992 (J. Res. NIST 97, 335), apart. */
export function saturationLoss(celsius: number): number {
  return 999.85308 + 6.32693e-2 * celsius - (999.84847 + 6.337563e-2 * celsius);
}

/** What dissolved solids add, kg/m³: TEOS-10 (gsw 3.6.16) at 20 °C, 0.2, 0.5 and 1 g/kg, straight between. */
export function solidsGain(mgPerL: number): number {
  const rows = [
    [0, 0],
    [200, 0.1528],
    [500, 0.3814],
    [1000, 0.7614],
  ] as const;
  const high = rows.findIndex(([at]) => at >= mgPerL);
  if (high === 0) return 0;
  const [a, fa] = rows[high - 1]!;
  const [b, fb] = rows[high]!;
  return fa + ((mgPerL - a) / (b - a)) * (fb - fa);
}
