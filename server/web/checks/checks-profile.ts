import { inLocale } from "../../../views/numbers.ts";
import { type Locale, words } from "../../../views/words/index.ts";
import { massWords } from "../../checks/amounts.ts";
import type { BalanceProfile } from "../../checks/balance-profile.ts";
import type { ProfileNumber } from "../../checks/number-in-force.ts";

/** From here on the factor of 95.45 % is within 0.1 % of the normal law's, and more digits tell nothing. */
const manyDof = 1000;

/** What the checks say of a balance and its thermometer, line by line: the number, its check, who and when. */
export function profileLines(profile: BalanceProfile, locale: Locale): (readonly [string, string])[] {
  const say = words(locale).checks.profile;
  const degrees = (dof: number | null) => {
    if (dof === null) return "";
    return dof < manyDof ? say.dof(String(+dof.toFixed(1))) : say.manyDof;
  };
  const line = (name: string, number: ProfileNumber | undefined, value: (of: number) => string) => {
    if (number === undefined || !("check" in number.origin)) return [];
    const { at, by, passed } = number.origin;
    const text = `${value(number.value)}${degrees(number.dof)}, ${say.from(at.slice(0, 10), by)}${passed ? "" : say.ofFailed}`;
    return [[name, inLocale(text, locale)] as const];
  };
  const { thermometer } = profile;
  return [
    ...line(say.dry, profile.repeatability, (s) => `s = ${massWords(s)}`),
    ...line(say.immersed, profile.immersedRepeatability, (s) => `s = ${massWords(s)}`),
    ...line(say.linearity, profile.linearity, (a) => `±${massWords(a)}`),
    ...line(say.offCentre, profile.eccentricityPerGram, (u) => `u = ${massWords(100 * u)}`),
    ...line(say.thermometer, thermometer?.uCelsius, (u) =>
      say.corrected((thermometer?.correctionCelsius ?? 0).toFixed(2), u.toFixed(2)),
    ),
  ];
}
