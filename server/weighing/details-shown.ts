import type { Details } from "./details.ts";

/** The details as the form shows them again, by field. */
export function fieldsOfDetails(details: Details): Record<string, string> {
  const { added, hanger, liquid, air, steps, flask } = details;
  const [body] = added ?? [];
  const measured = liquid?.kind === "measured" ? liquid : undefined;
  const stated = liquid?.kind === "stated" ? liquid : undefined;
  const weighed = measured?.weighed;
  const all: Record<string, string | undefined> = {
    pieces: details.pieces?.toString(),
    "odd-density": details.odd_g_cm3,
    "added-name": body?.name,
    "added-mass": body?.mass_g,
    "added-mass-u": body?.u_mass_g,
    "added-density": body?.density_g_cm3,
    "added-density-u": body?.u_density_g_cm3,
    wire: hanger?.wire_mm,
    "hanger-in-liquid": hanger?.in_liquid?.text,
    "hanger-in-air": hanger?.in_air?.text,
    liquid: liquid?.kind,
    "liquid-name": liquid?.name,
    "liquid-lot": liquid?.lot,
    "liquid-expansion": liquid?.expansion_per_c,
    "liquid-density": stated?.density_g_cm3,
    "liquid-density-u": stated?.u_g_cm3,
    "liquid-stated-at": stated?.stated_at_c,
    "body-volume": measured?.volume_cm3,
    "body-volume-u": measured?.u_volume_cm3,
    "body-dry": weighed && "dry" in weighed ? weighed.dry.text : undefined,
    "body-immersed": weighed && "dry" in weighed ? weighed.immersed.text : undefined,
    "body-rise": weighed && "rise" in weighed ? weighed.rise.text : undefined,
    "wetting-agent": details.wetting_agent && "yes",
    gradient: details.gradient_c,
    "air-temperature": air?.temperature_c,
    "air-pressure": air?.pressure_hpa,
    "air-humidity": air?.humidity_pct,
    "step-dry": steps?.dry_g,
    "step-wet": steps?.wet_g,
    drift: details.drift_fit,
    paired: details.paired && "yes",
    "flask-liquid": flask?.liquid_g,
    "flask-warmer": flask?.warmer_c,
    "flask-warmer-u": flask?.warmer_u_c,
  };
  return Object.fromEntries(Object.entries(all).filter((entry): entry is [string, string] => !!entry[1]));
}
