import { BuyingCaution } from "../cautions.tsx";
import { Csrf, Field, type FieldError, Problems, Select } from "../forms.tsx";
import { Facts, Rows, Sheet } from "../sheet.tsx";

/** One metal of the lot on the worksheet; low and high follow the interval of the fine mass. */
export interface PayoutRow {
  what: string;
  net: string;
  fineness: string;
  /** who says so: stamp, density, laboratory */
  finenessFrom: "stamp" | "density" | "laboratory" | "customer";
  fineLow: string;
  fineHigh: string;
  payLow: string;
  payHigh: string;
}

export interface PayoutView {
  lotId: string;
  lotName: string;
  values: Readonly<
    Record<"metal" | "price" | "currency" | "per" | "source" | "at" | "rate" | "fee" | "rounding", string>
  >;
  problems: readonly { fieldId: string; error: FieldError }[];
  /** set once a price is locked */
  sheet?: {
    facts: readonly (readonly [name: string, value: string])[];
    rows: readonly PayoutRow[];
    totalLow: string;
    totalHigh: string;
    /** fineness comes from density somewhere: what the two ends mean */
    says: string;
  };
  csrfToken: string;
  stepKey: string;
}

/** The worksheet from fine mass to money, with both ends; a price is locked with its time and source. */
export function Payout(view: PayoutView) {
  const { values } = view;
  const errorOf = (fieldId: string) => {
    const error = view.problems.find((one) => one.fieldId === fieldId)?.error;
    return error === undefined ? {} : { error };
  };
  return (
    <>
      <BuyingCaution />
      <Problems heading="These entries need another look" problems={view.problems} />
      <form method="post" action={`/lots/${view.lotId}/payout`} class="sheet">
        <h2>Price</h2>
        <Csrf token={view.csrfToken} />
        <input type="hidden" name="step" value={view.stepKey} />
        <div class="row">
          <Select
            name="metal"
            label="Metal"
            value={values.metal}
            options={[
              { value: "gold", label: "gold" },
              { value: "silver", label: "silver" },
            ]}
          />
          <Field
            kind="decimal"
            name="price"
            label="Price of fine metal"
            value={values.price}
            required
            {...errorOf("price")}
          />
          <Field
            name="currency"
            label="Currency"
            hint="three letters"
            value={values.currency}
            required
            {...errorOf("currency")}
          />
          <Select
            name="per"
            label="per"
            value={values.per}
            options={[
              { value: "ozt", label: "troy ounce" },
              { value: "g", label: "gram" },
              { value: "dwt", label: "pennyweight" },
            ]}
          />
        </div>
        <div class="row">
          <Field
            name="source"
            label="Source of the price"
            value={values.source}
            required
            {...errorOf("source")}
          />
          <Field
            name="at"
            label="Price as of"
            hint="date and time"
            value={values.at}
            required
            {...errorOf("at")}
          />
        </div>
        <div class="row">
          <Field
            kind="decimal"
            name="rate"
            label="Rate paid"
            after="%"
            value={values.rate}
            required
            {...errorOf("rate")}
          />
          <Field kind="decimal" name="fee" label="Fee, once" value={values.fee} {...errorOf("fee")} />
          <Select
            name="rounding"
            label="Rounding"
            value={values.rounding}
            options={[
              { value: "down", label: "down, to the buyer" },
              { value: "half-even", label: "to the nearest, half to even" },
              { value: "up", label: "up, to the seller" },
            ]}
          />
        </div>
        <button type="submit">Lock this price</button>{" "}
        <a href={`/lots/${view.lotId}`}>Back to {view.lotName}</a>
      </form>
      {view.sheet && (
        <Sheet id="worksheet" title={`Worksheet of ${view.lotName}`}>
          <Facts facts={view.sheet.facts} />
          <Rows
            caption="From net mass to pay"
            empty="No piece of this lot has a fineness yet."
            columns={[
              { head: "What" },
              { head: "Net", number: true },
              { head: "Fineness", number: true },
              { head: "said by" },
              { head: "Fine, low end", number: true },
              { head: "Fine, high end", number: true },
              { head: "Pay, low end", number: true },
              { head: "Pay, high end", number: true },
            ]}
            rows={view.sheet.rows.map((row) => ({
              key: row.what,
              cells: [
                row.what,
                row.net,
                row.fineness,
                row.finenessFrom,
                row.fineLow,
                row.fineHigh,
                row.payLow,
                row.payHigh,
              ],
            }))}
            foot={["Together", "", "", "", "", "", view.sheet.totalLow, view.sheet.totalHigh]}
          />
          <p>{view.sheet.says}</p>
        </Sheet>
      )}
    </>
  );
}
