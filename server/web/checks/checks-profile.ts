import { tell, tellerOf } from "../../../views/messages/tell.ts";
import { mass } from "../../checks/amounts.ts";
import type { BalanceProfile } from "../../checks/balance-profile.ts";
import type { ProfileNumber } from "../../checks/current-number.ts";
import { dayOf, type Manner } from "../when.ts";

/** From here on the factor of 95.45 % is within 0.1 % of the normal law's, and more digits tell nothing. */
const manyDof = 1000;

/** What the checks say of a balance and its thermometer, line by line: the number, its check, who and when. */
export function profileLines(
  profile: BalanceProfile,
  { locale, zone }: Manner,
): (readonly [string, string])[] {
  const t = tellerOf(locale);
  const degrees = (dof: number | null) => {
    if (dof === null) return "";
    return dof < manyDof ? t("checks-page.profile.dof", { count: dof }) : t("checks-page.profile.many-dof");
  };
  const shown = (grams: number) => tell(mass(grams), locale);
  const line = (name: string, number: ProfileNumber | undefined, value: (of: number) => string) => {
    if (number === undefined || !("check" in number.origin)) return [];
    const { at, by, passed } = number.origin;
    const text = `${value(number.value)}${degrees(number.dof)}, ${t("checks-page.profile.from", { day: dayOf(at, zone), by })}${passed ? "" : t("checks-page.profile.of-failed")}`;
    return [[name, text] as const];
  };
  const { thermometer = [] } = profile;
  return [
    ...line(t("checks-page.profile.dry"), profile.repeatability, (s) => `s = ${shown(s)}`),
    ...line(t("checks-page.profile.immersed"), profile.immersedRepeatability, (s) => `s = ${shown(s)}`),
    ...line(t("checks-page.profile.linearity"), profile.linearity, (a) => `±${shown(a)}`),
    ...line(t("checks-page.profile.off-centre"), profile.eccentricityPerGram, (u) => `u = ${shown(100 * u)}`),
    ...line(t("checks-page.profile.span"), profile.span, (u) =>
      t("checks-page.profile.relative", { percent: 100 * u }),
    ),
    ...thermometer.flatMap(({ atCelsius, correctionCelsius, uCelsius }) =>
      line(t("checks-page.profile.thermometer-at", { celsius: atCelsius }), uCelsius, (u) =>
        t("checks-page.profile.corrected", { celsius: correctionCelsius, u_celsius: u }),
      ),
    ),
  ];
}
