import type { ComponentChildren } from "preact";
import { useTell } from "../messages/spoken.ts";
import type { MethodName, Role } from "../methods/view.ts";

/** What stands on the bench at one step, within 140 × 150: balance, beaker, hanger, water level. */
const pan = (
  <>
    <path d="M26 118h88" />
    <path d="M70 118v8" />
    <path class="body" d="M22 126h96a4 4 0 0 1 4 4v14H18v-14a4 4 0 0 1 4-4z" />
    <path class="thin" d="M30 135h30" />
  </>
);
const beaker = (y: number) => (
  <g transform={`translate(0 ${y})`}>
    <path class="water" d="M43 22h54v46a6 6 0 0 1-6 6H49a6 6 0 0 1-6-6z" />
    <path d="M40 2l3 4v62a8 8 0 0 0 8 8h38a8 8 0 0 0 8-8V6l3-4M43 22h54" />
  </g>
);
const piece = (y: number) => <path class="metal" d={`M56 ${y}h28l-3 14H59z`} />;

const hungFrom = (
  <>
    <path class="body" d="M22 12h96a4 4 0 0 1 4 4v14H18V16a4 4 0 0 1 4-4z" />
    <path class="thin" d="M30 21h30M70 30v70" />
    <path d="M8 30h50M82 30h50M14 30v116M126 30v116M6 146h128M36 6h68M44 12V6M96 12V6" />
  </>
);
const stand = (
  <>
    <path d="M130 146V10H70M120 146h16" />
    <path class="thin" d="M70 10v80" />
  </>
);
const flask = (
  <>
    <path class="water" d="M62 30h16v26l20 44a8 8 0 0 1-8 10H50a8 8 0 0 1-8-10l20-44z" />
    <path d="M62 20v36l-20 44a8 8 0 0 0 8 10h40a8 8 0 0 0 8-10L78 56V20M58 20h24" />
    <path d="M64 20l1-12h10l1 12" />
  </>
);
const grains = [54, 62, 70, 78, 86, 66, 74].map((x, place) => (
  <circle key={x} class="metal" cx={x} cy={place < 5 ? 104 : 97} r="3.5" />
));
const thermometer = (
  <>
    <path d="M88 10v70M96 10v70M88 80a8 8 0 1 0 8 0M88 10a4 4 0 0 1 8 0" />
    <path class="thin" d="M92 40v42" />
  </>
);
const calliper = (
  <>
    <path d="M12 30h116v10H12zM26 40v56l16-8V40M98 40v48l16 8V40" />
    <rect class="metal" x="42" y="58" width="56" height="38" />
  </>
);

const drawings: Record<string, ComponentChildren> = {
  dry: (
    <>
      {pan}
      {piece(104)}
    </>
  ),
  immersed: (
    <>
      {beaker(68)}
      {hungFrom}
      {piece(106)}
    </>
  ),
  rise: (
    <>
      {pan}
      {beaker(42)}
      {stand}
      {piece(86)}
    </>
  ),
  "flask-full": (
    <>
      {pan}
      <g transform="translate(0 8)">{flask}</g>
    </>
  ),
  "flask-with-piece": (
    <>
      {pan}
      <g transform="translate(0 8)">
        {flask}
        {grains}
      </g>
    </>
  ),
  water: (
    <>
      {beaker(60)}
      {thermometer}
    </>
  ),
  stated: calliper,
};

/** A small drawing of the set-up of a step: what hangs where, and how high the water stands. */
export function StepDrawing({ method, role }: { method: MethodName; role?: Role | "water" | undefined }) {
  const t = useTell();
  const drawn = drawings[role ?? "stated"];
  if (drawn === undefined) return null;
  return (
    <svg class="drawing" viewBox="0 0 140 150" role="img" aria-label={t(`method.${method}.title`)}>
      {drawn}
    </svg>
  );
}
