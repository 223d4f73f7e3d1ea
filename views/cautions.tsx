import { Caution } from "./sheet.tsx";
import { useWords } from "./words/spoken.ts";

/** Shown before the first immersion: pieces that water harms. */
export function WettingCaution() {
  const say = useWords().cautions;
  return (
    <Caution title={say.wetting}>
      <p>{say.wettingLead}</p>
      <ul>
        {say.notToBeWetted.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </Caution>
  );
}

/** Shown beside other evidence: acids and magnets. */
export function TestingCaution() {
  const say = useWords().cautions;
  return (
    <Caution title={say.testing}>
      <p>{say.acid}</p>
      <p>{say.magnet}</p>
    </Caution>
  );
}

/** Shown where weights become money. */
export function BuyingCaution() {
  const say = useWords().cautions;
  return (
    <Caution title={say.buying}>
      <p>{say.buyingWhat}</p>
    </Caution>
  );
}
