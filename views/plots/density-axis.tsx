import type { ScaleLinear } from "d3-scale";
import type { Locale } from "../messages/language.ts";
import { inLocale } from "../numbers.ts";
import { wholeAxis } from "./density-domain.ts";
import { textWidth } from "./lanes.ts";

/** Rounded densities of elements at 20 °C, g/cm³, for orientation only, never for a finding. */
const elements = [
  { symbol: "Al", at: 2.7, always: true },
  { symbol: "Zn", at: 7.1, always: false },
  { symbol: "Cu", at: 8.9, always: true },
  { symbol: "Ag", at: 10.5, always: true },
  { symbol: "Pb", at: 11.3, always: false },
  { symbol: "Au", at: 19.3, always: true },
  { symbol: "Pt", at: 21.5, always: true },
] as const;

const rounded = (value: number) => Math.round(value * 10) / 10;

interface Ends {
  left: number;
  right: number;
}

/** The full axis 0–23 g/cm³ with a few elements, and a fan of two hairlines to the part below that matters. */
export function FullAxis({
  left,
  right,
  domain,
  foot,
}: Ends & { domain: readonly [number, number]; foot: number }) {
  const [from, to] = wholeAxis;
  const x = (at: number) => rounded(left + ((at - from) / (to - from)) * (right - left));
  const [low, high] = [x(domain[0]), x(Math.min(domain[1], to))];
  return (
    <>
      <line x1={left} x2={right} y1={20} y2={20} class="tick" />
      {elements
        .filter(({ always }) => always || right - left > 500)
        .map(({ symbol, at }) => (
          <g key={symbol}>
            <line x1={x(at)} x2={x(at)} y1={16} y2={20} class="tick" />
            <text x={x(at)} y={12} text-anchor="middle" class="faint">
              {symbol}
            </text>
          </g>
        ))}
      <rect x={low} y={17.5} width={Math.max(3, rounded(high - low))} height={5} class="here" />
      <path d={`M${low} 23L${left} ${foot}M${Math.max(low + 3, high)} 23L${right} ${foot}`} class="hair" />
    </>
  );
}

/** The part of the axis that matters, its ticks in figures and its unit at the end. */
export function PartAxis({
  scale,
  left,
  right,
  y,
  locale,
}: Ends & { scale: ScaleLinear<number, number>; y: number; locale: Locale }) {
  const ticks = scale.ticks(Math.max(3, Math.floor((right - left) / 95)));
  const form = scale.tickFormat(ticks.length);
  const unitFrom = right - textWidth("g/cm³");
  return (
    <>
      <line x1={left} x2={right} y1={y} y2={y} class="axis" />
      {ticks.map((at) => {
        const text = inLocale(form(at), locale);
        const here = rounded(scale(at));
        const half = textWidth(text) / 2;
        return (
          <g key={at}>
            <line x1={here} x2={here} y1={y} y2={y + 6} class="tick" />
            {here + half < unitFrom && (
              <text x={Math.max(left + half - 4, here)} y={y + 20} text-anchor="middle">
                {text}
              </text>
            )}
          </g>
        );
      })}
      <text x={right} y={y + 20} text-anchor="end" class="faint">
        g/cm³
      </text>
    </>
  );
}
