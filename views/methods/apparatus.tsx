/** The table everything stands on. */
export function Bench({ y }: { y: number }) {
  return <path d={`M6 ${y}H254`} />;
}

/** A plain slab with a pan: a balance of no make. */
export function Slab({ x, y, width }: { x: number; y: number; width: number }) {
  return (
    <>
      <rect x={x} y={y} width={width} height={20} rx="3" />
      <path d={`M${x + 12} ${y - 6}H${x + width - 12}M${x + width / 2} ${y - 6}V${y}`} />
    </>
  );
}

/** A beaker with liquid in it. */
export function Beaker({ x, y, width, height }: { x: number; y: number; width: number; height: number }) {
  const surface = y + height * 0.28;
  return (
    <>
      <rect class="water" x={x + 1} y={surface} width={width - 2} height={y + height - surface - 1} />
      <path d={`M${x - 4} ${y}L${x} ${y + 4}V${y + height}H${x + width}V${y}`} />
      <path d={`M${x} ${surface}H${x + width}`} stroke-width="1" />
    </>
  );
}
