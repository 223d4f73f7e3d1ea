import type { ComponentChildren } from "preact";
import type { Locale } from "../messages/language.ts";
import { shortName, tellerOf } from "../messages/tell.ts";
import { fromTo } from "../numbers.ts";
import { shortened, textWidth } from "./lanes.ts";

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
  /** ends of the drawn axis in user units */
  left: number;
  right: number;
  /** y where the first row begins */
  top: number;
  /** names stand before the bars, or above them where there is no room */
  beside: boolean;
  measured?: { interval: readonly [number, number]; value: number };
  mostRows?: number;
  locale?: Locale;
}

/** Metals that the sentences name; where a scale tells little apart, the rest stands in the table. */
const mostNamed = 16;

const rowHeight = { beside: 25, above: 38 } as const;
const barHeight = 12;
/** how far a pointed end reaches in, for a band that goes on outside */
const point = 6;

type Kind = "claim" | "not-excluded" | "excluded" | "open";

/** Sign before the name, so that no band is known by its colour alone. */
const signs: Record<Exclude<Kind, "claim">, string> = { "not-excluded": "≈ ", excluded: "≠ ", open: "" };

/** The bands worth a row: the claim, what is not excluded in its own order, then the nearest of what is, without those off the axis. */
export function rowsOf({
  bands,
  claimId,
  domain,
  measured,
  mostRows = 12,
}: Pick<BandRowsParts, "bands" | "claimId" | "domain" | "measured" | "mostRows">): Band[] {
  const claim = bands.filter(({ id }) => id === claimId);
  const others = bands.filter((band) => band.id !== claimId && onAxis(band, domain));
  const left = others.filter(({ notExcluded }) => notExcluded === true);
  const out = nearest(
    others.filter(({ notExcluded }) => notExcluded === false),
    measured?.value,
  );
  const open = others.filter(({ notExcluded }) => notExcluded === undefined);
  // of what is excluded the nearest two are always seen, so that the eye finds what the measurement did tell apart
  const room = mostRows - claim.length;
  const kept = left.slice(0, Math.max(room - Math.min(2, out.length), 0));
  return [...claim, ...kept, ...out.slice(0, room - kept.length), ...open].slice(0, mostRows);
}

/**
 * Bands under the axis, one a row: the claim full, what is not excluded filled, what is excluded dashed, outlines before
 * anything was compared. What of a band lies inside the interval is dark, so that the eye sees why it fits.
 */
export function BandRows(parts: BandRowsParts): { height: number; content: ComponentChildren } {
  const { bands, claimId, domain, x, left, right, top, beside, measured, locale = "en" } = parts;
  const t = tellerOf(locale);
  const rows = rowsOf(parts);
  const height = beside ? rowHeight.beside : rowHeight.above;
  const drawn = rows.map((band, row) => {
    const kind = kindOf(band, claimId);
    const y = top + row * height + (beside ? 2 : 18);
    return (
      <g key={band.id}>
        <BandName band={band} kind={kind} y={top + row * height} {...{ beside, left, right, locale }} />
        {onAxis(band, domain) ? (
          <path d={outline(band, domain, x, y)} class={`band-${kind}`} />
        ) : (
          // What lies off the axis is told in words; a bar drawn at its end would lie.
          <text x={left} y={y + 10.5} class="faint">
            {t("plots.off-axis", { band: fromTo(band.low, band.high, locale) })}
          </text>
        )}
        {measured && kind !== "excluded" && (
          <Overlap {...{ band, domain, x, y }} interval={measured.interval} />
        )}
      </g>
    );
  });
  const hidden = bands.filter(({ notExcluded }) => notExcluded === true).length;
  const more = hidden - rows.filter(({ notExcluded }) => notExcluded === true).length;
  if (more === 0 || parts.mostRows !== undefined) return { height: rows.length * height, content: drawn };
  return {
    height: rows.length * height + 22,
    content: [
      ...drawn,
      <text key="more" x={left} y={top + rows.length * height + 15} class="faint">
        {t("plots.more-not-excluded", { count: more })}
      </text>,
    ],
  };
}

function kindOf({ id, notExcluded }: Band, claimId: string | undefined): Kind {
  if (id === claimId) return "claim";
  return notExcluded === undefined ? "open" : notExcluded ? "not-excluded" : "excluded";
}

interface NameParts extends Pick<BandRowsParts, "left" | "right" | "beside"> {
  band: Band;
  kind: Kind;
  y: number;
  locale: Locale;
}

function BandName({ band, kind, y, left, right, beside, locale }: NameParts) {
  const label = bandLabel(band, kind, locale);
  const weight = kind === "excluded" ? "faint" : "strong";
  if (!beside)
    return (
      <text x={left} y={y + 13} class={weight}>
        {shortened(label, right - left)}
      </text>
    );
  return (
    <text x={left - 14} y={y + 12.5} text-anchor="end" class={weight}>
      {shortened(label, left - 14)}
    </text>
  );
}

function bandLabel(band: Band, kind: Kind, locale: Locale): string {
  const t = tellerOf(locale);
  const name = shortName(band.name);
  if (kind !== "claim") return `${signs[kind]}${name}`;
  return t(band.notExcluded === false ? "plots.band-claimed-out" : "plots.band-claimed", { name });
}

/** Room the widest name of these bands needs before the bars, user units. */
export function nameWidth(bands: readonly Band[], claimId: string | undefined, locale: Locale): number {
  return Math.max(0, ...bands.map((band) => textWidth(bandLabel(band, kindOf(band, claimId), locale))));
}

/** A bar with a pointed end where its band goes on outside the axis. */
function outline(
  { low, high }: Band,
  [from, to]: readonly [number, number],
  x: (at: number) => number,
  y: number,
): string {
  const middle = y + barHeight / 2;
  const start = x(Math.max(low, from));
  const end = Math.max(start + 3, x(Math.min(high, to)));
  const first = low < from ? `M${start + point} ${y}` : `M${start} ${y}`;
  const right =
    high > to
      ? `H${end - point}L${end} ${middle}L${end - point} ${y + barHeight}`
      : `H${end}V${y + barHeight}`;
  const last = low < from ? `H${start + point}L${start} ${middle}Z` : `H${start}Z`;
  return first + right + last;
}

function Overlap({
  band,
  domain,
  x,
  y,
  interval,
}: {
  band: Band;
  domain: readonly [number, number];
  x(at: number): number;
  y: number;
  interval: readonly [number, number];
}) {
  const low = Math.max(band.low, interval[0], domain[0]);
  const high = Math.min(band.high, interval[1], domain[1]);
  if (high <= low) return null;
  const width = Math.round(10 * (x(high) - x(low))) / 10;
  return <rect x={x(low)} y={y} width={Math.max(1, width)} height={barHeight} class="band-overlap" />;
}

/** Bands by their distance from a value, nearest first; in their own order without one. */
export function nearest(bands: readonly Band[], value: number | undefined): Band[] {
  if (value === undefined) return [...bands];
  const away = ({ low, high }: Band) => Math.max(low - value, value - high);
  return [...bands].sort((a, b) => away(a) - away(b));
}

/** The bands not excluded that are nearest to a value, in their own order, and how many more there are. */
export function notExcludedInSight(
  bands: readonly Band[],
  value: number | undefined,
): { shown: Band[]; hidden: number } {
  const left = bands.filter((band) => band.notExcluded === true);
  const near = new Set(nearest(left, value).slice(0, mostNamed));
  return { shown: left.filter((band) => near.has(band)), hidden: left.length - near.size };
}

function onAxis({ low, high }: Band, [from, to]: readonly [number, number]): boolean {
  return high > from && low < to;
}
