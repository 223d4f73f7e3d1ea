import { roundedPair } from "../../calibration/rounding.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { metalTold } from "../messages/tell.ts";
import { inLocale } from "../numbers.ts";
import { DensityAxis } from "../plots/density.tsx";
import type { MetalBand } from "../result-parts.ts";
import { Sentence } from "../sentence.tsx";
import type { OtherTestsView } from "./other-tests.tsx";
import { EvidenceFold, ResultFold } from "./result-folds.tsx";
import type { AheadView, BenchView } from "./view.ts";

/** Outlines worth drawing before anything is measured. */
const mostBands = 6;

/** Before the answer: the claim on the axis, how wide the interval will be, and what it may be mistaken for. */
export function ExpectedPart({ view, tests }: { view: BenchView; tests: OtherTestsView | undefined }) {
  const locale = useLocale();
  const t = useTell();
  const claim = view.bands.find(({ id }) => id === view.claim);
  const ahead = view.beforeWetting;
  return (
    <>
      <p class="label">{t("bench.opening.claim")}</p>
      <h2 class="say">{claim ? metalTold(claim, locale) : t("bench.opening.no-claim")}</h2>
      {ahead?.expected ? (
        <p class="lead">
          {t("bench.decides", {
            half_g_cm3: inLocale(roundedPair(ahead.expected.value, ahead.expected.halfWidth).u, locale),
          })}
        </p>
      ) : (
        <p class="hint">{t("bench.density-later")}</p>
      )}
      {claim && (
        <DensityAxis
          id="density"
          captionUnseen
          mostRows={mostBands}
          bands={outlines(view.bands, claim, ahead?.leaves ?? []).map((band) => ({
            id: band.id,
            name: metalTold(band, locale),
            low: band.low,
            high: band.high,
          }))}
          claimId={claim.id}
          locale={locale}
          {...(ahead?.expected ? { expected: ahead.expected } : {})}
        />
      )}
      <div class="folds">
        {ahead && <WillTell ahead={ahead} />}
        <EvidenceFold tests={tests} />
      </div>
    </>
  );
}

/** The claim, then what this weighing will not exclude, then what lies nearest. */
function outlines(bands: readonly MetalBand[], claim: MetalBand, leaves: readonly string[]): MetalBand[] {
  const away = ({ low, high }: MetalBand) => Math.abs(low + high - claim.low - claim.high);
  const rank = ({ id }: MetalBand) => (leaves.includes(id) ? leaves.indexOf(id) : leaves.length);
  const others = bands
    .filter(({ id, claimable }) => id !== claim.id && (claimable || leaves.includes(id)))
    .sort((a, b) => rank(a) - rank(b) || away(a) - away(b));
  return [claim, ...others.slice(0, mostBands - 1)];
}

/** What this weighing will and will not tell, and the whole plan. */
function WillTell({ ahead: { message, weighing } }: { ahead: AheadView }) {
  const locale = useLocale();
  const t = useTell();
  const { claim, method, massG, readabilityG, pieces } = weighing;
  const number = (value: number) => inLocale(String(Number(value.toPrecision(8))), locale);
  const asked = new URLSearchParams({
    claim,
    method,
    mass: number(massG),
    massUnit: "g",
    readability: number(readabilityG),
    readabilityUnit: "g",
    pieces: String(pieces),
  });
  return (
    <ResultFold name="will-tell" title={t("bench.fold.will-tell")}>
      {message.map((one) => (
        <p key={one.code}>
          <Sentence message={one} />
        </p>
      ))}
      <p>
        <a href={`/plan?${asked}`}>{t("bench.steps.whole-plan")}</a>
      </p>
    </ResultFold>
  );
}
