/** Landmarks of the ruler: rounded densities of elements at 20 °C, for orientation only, never for a finding. */
const landmarks = [
  { symbol: "Al", at: 2.7 },
  { symbol: "Zn", at: 7.1 },
  { symbol: "Cu", at: 8.9 },
  { symbol: "Ag", at: 10.5 },
  { symbol: "Pb", at: 11.3 },
  { symbol: "Au", at: 19.3 },
  { symbol: "Pt", at: 21.5 },
];
const end = 23; // g/cm³, above osmium and iridium at 22.6

const percent = (density: number) => `${((density / end) * 100).toFixed(2)}%`;

/**
 * The density axis that runs through every page: 0 to 23 g/cm³ across the full width. Decoration and orientation;
 * hidden from a screen reader, since every place that states a density states it in words.
 */
export function AxisLine({ unit }: { unit: string }) {
  const ticks = Array.from({ length: end }, (_, index) => index).filter((at) => at > 0);
  return (
    <svg class="axis-line" aria-hidden="true" width="100%" height="3.1em">
      <line x1="0" x2="100%" y1="1.5em" y2="1.5em" class="rule" />
      {ticks.map((at) => (
        <line
          key={at}
          x1={percent(at)}
          x2={percent(at)}
          y1={at % 5 === 0 ? "0.85em" : "1.2em"}
          y2="1.5em"
          class="tick"
        />
      ))}
      {[5, 10, 15, 20].map((at) => (
        <text key={at} x={percent(at)} y="2.7em" text-anchor="middle">
          {at}
        </text>
      ))}
      {landmarks.map(({ symbol, at }) => (
        <g key={symbol} class="landmark">
          <line x1={percent(at)} x2={percent(at)} y1="1.5em" y2="1.9em" />
          <text x={percent(at)} y="0.75em" text-anchor="middle">
            {symbol}
          </text>
        </g>
      ))}
      <text x="4" y="2.7em">
        {unit}
      </text>
    </svg>
  );
}
