import type { ComponentChildren } from "preact";
import type { Locale } from "../messages/language.ts";
import { tellerOf } from "../messages/tell.ts";
import { fromTo } from "../numbers.ts";
import { clampLabel, lanes, textWidth } from "./lanes.ts";

/** The density band of one metal, g/cm³ at 20 °C. */
export interface Band {
  id: string;
  name: string;
  low: number;
  high: number;
  /** true: not excluded; false: ruled out; left out: nothing was compared */
  notExcluded?: boolean;
}

interface BandRowsParts {
  bands: readonly Band[];
  claimId?: string;
  x(at: number): number;
  domain: readonly [number, number];
  width: number;
  /** y where the first row begins */
  top: number;
  id: string;
  measured?: { value: number };
  locale?: Locale;
}

/** Metals not excluded that are drawn and named in the sentences; where a scale tells little apart, the rest stands in the table. */
const mostShown = 16;

const rowHeight = 33;
const headHeight = 22;

/**
 * Bands as labelled bars in lanes, grouped under the words "said to be", "not excluded" and "ruled out". The groups,
 * the hatching of the claim, the full bars and the dashed empty bars say the same as the words.
 */
export function BandRows(parts: BandRowsParts): { height: number; content: ComponentChildren } {
  const { bands, claimId, width, domain, locale = "en", measured, top, id } = parts;
  const t = tellerOf(locale);
  const claim = bands.filter((band) => band.id === claimId);
  const others = bands.filter((band) => band.id !== claimId);
  const excluded = nearest(
    others.filter((band) => band.notExcluded === false),
    measured?.value,
  );
  const shown = excluded.slice(0, width < 500 ? 6 : 12).filter((band) => onAxis(band, domain));
  const left = notExcludedInSight(others, measured?.value);
  const more: { count: number; code: "plots.more-not-excluded" | "plots.more-excluded" }[] = [
    { count: left.hidden, code: "plots.more-not-excluded" },
    { count: excluded.length - shown.length, code: "plots.more-excluded" },
  ];
  const groups = [
    {
      word: claim[0]?.notExcluded === false ? t("plots.claimed-out") : t("plots.claimed"),
      kind: "claim",
      bands: claim,
    },
    { word: t("plots.not-excluded"), kind: "not-excluded", bands: left.shown },
    { word: t("plots.excluded"), kind: "excluded", bands: shown },
    {
      word: t("plots.metals"),
      kind: "plain",
      bands: others.filter((band) => band.notExcluded === undefined),
    },
  ];
  let y = top;
  const drawn: ComponentChildren[] = [
    <pattern
      key="hatch"
      id={`${id}-hatch`}
      width="7"
      height="7"
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <line x1="0" x2="0" y1="0" y2="7" class="hatch" />
    </pattern>,
  ];
  for (const group of groups) {
    if (group.bands.length === 0) continue;
    const placed = place(group.bands, parts);
    drawn.push(
      <g key={group.kind}>
        <text x={0} y={y + 12} class="head">
          {group.word}
        </text>
        {placed.map((one) => (
          <g key={one.band.id} transform={`translate(0 ${y + headHeight + one.lane * rowHeight})`}>
            <text x={one.labelAt} y={9}>
              {one.label}
            </text>
            {onAxis(one.band, domain) && (
              <rect
                x={one.left}
                y={14}
                width={Math.round(10 * (one.right - one.left)) / 10}
                height={11}
                class={`band-${group.kind}`}
                {...(group.kind === "claim" ? { fill: `url(#${id}-hatch)` } : {})}
              />
            )}
          </g>
        ))}
      </g>,
    );
    y += headHeight + (1 + Math.max(...placed.map(({ lane }) => lane))) * rowHeight + 6;
  }
  for (const { count, code } of more) {
    if (count === 0) continue;
    drawn.push(
      <text key={code} x={0} y={y + 12} class="faint">
        {t(code, { count })}
      </text>,
    );
    y += headHeight;
  }
  return { height: y - top, content: drawn };
}

/** Bands by their distance from a value, nearest first; from low to high without one. */
export function nearest(bands: readonly Band[], value: number | undefined): Band[] {
  const away = ({ low, high }: Band) => (value === undefined ? low : Math.max(low - value, value - high));
  return [...bands].sort((a, b) => away(a) - away(b));
}

/** The living bands nearest to a value, in their own order, and how many more there are. */
export function notExcludedInSight(
  bands: readonly Band[],
  value: number | undefined,
): { shown: Band[]; hidden: number } {
  const left = bands.filter((band) => band.notExcluded === true);
  const near = new Set(nearest(left, value).slice(0, mostShown));
  return { shown: left.filter((band) => near.has(band)), hidden: left.length - near.size };
}

function onAxis({ low, high }: Band, [from, to]: readonly [number, number]): boolean {
  return high > from && low < to;
}

function place(bands: readonly Band[], { x, width, domain, locale = "en" }: BandRowsParts) {
  const t = tellerOf(locale);
  const entries = bands.map((band) => {
    const left = Math.max(0, Math.min(width - 3, x(band.low)));
    const right = Math.min(width, Math.max(left + 3, x(band.high)));
    // What lies off the axis is told in words at its end; a bar drawn there would lie.
    const label = onAxis(band, domain)
      ? band.name
      : t("plots.off-axis", { name: band.name, band: fromTo(band.low, band.high, locale) });
    const labelAt = clampLabel(left, textWidth(label), 0, width);
    return { band, label, left, right, labelAt };
  });
  const rows = lanes(
    entries.map(({ label, left, right, labelAt }) => ({
      left: Math.min(left, labelAt),
      right: Math.max(right, labelAt + textWidth(label)),
    })),
  );
  return entries.map((entry, index) => ({ ...entry, lane: rows[index] ?? 0 }));
}
