import type { Metal } from "./metal.ts";

const nothing = [0, 0] as const;

/** Mass share of a component, lowest and highest the composition allows, 0…1; 0 and 0 of one it does not hold. */
export function shareOf(
  { composition }: Pick<Metal, "composition">,
  component: string,
): readonly [number, number] {
  const fraction = composition[component];
  return fraction ? [fraction[1] ?? fraction[0], fraction[2] ?? fraction[0]] : nothing;
}

/** The component a metal holds most of. */
export function principal({ composition }: Pick<Metal, "composition">): string {
  return Object.keys(composition).reduce((most, one) =>
    composition[one]![0] > composition[most]![0] ? one : most,
  );
}
