import type { Expression, Input, Inputs } from "./input.ts";
import { inputQuantity, type Quantity, quantities } from "./quantity.ts";

/** What one input does to the result. */
export interface BudgetRow {
  input: Input;
  /** ∂result/∂input, result unit per input unit */
  sensitivity: number;
  /** sensitivity · u, signed, in the result's unit */
  contribution: number;
  /** part of the variance, 0…1; correlated inputs share their common term */
  share: number;
}

/** First-order GUM result. */
export interface Propagated {
  value: number;
  u: number;
  /** effective degrees of freedom (Welch–Satterthwaite), Infinity when every input's u is taken as known */
  dof: number;
  rows: BudgetRow[];
}

/** The inputs as quantities, each with its own partial: `model(quantities, asQuantities(inputs))`. */
export function asQuantities(inputs: Inputs): (input: Input) => Quantity {
  const of = inputs.all.map((input) => inputQuantity(input.value, input.index, inputs.all.length));
  return (input) => of[input.index]!;
}

/** Law of propagation for a model; see propagated. */
export function propagate(model: Expression, inputs: Inputs): Propagated {
  return propagated(model(quantities, asQuantities(inputs)), inputs);
}

/**
 * Law of propagation of uncertainty with correlations, JCGM 100:2008 eq. (13), and effective degrees of freedom, (G.2b).
 * Correlated inputs come from repeats read together: their sum is one set of repeats, so it enters (G.2b) as one term
 * with the dof of the set (the formula itself does not hold for correlated inputs one by one).
 */
export function propagated({ value, partials }: Quantity, inputs: Inputs): Propagated {
  const contribution = inputs.all.map((input, i) => (partials[i] ?? 0) * input.u);
  const variances = contribution.map((c) => c * c);
  // the first input of each set that was read together
  const first = inputs.all.map((_, i) => i);
  for (const { a, b, r } of inputs.correlations) {
    const common = r * contribution[a.index]! * contribution[b.index]!;
    variances[a.index]! += common;
    variances[b.index]! += common;
    const [from, to] = [first[b.index]!, first[a.index]!];
    first.forEach((f, i) => {
      if (f === from) first[i] = to;
    });
  }
  const variance = variances.reduce((total, v) => total + v, 0);
  const together = new Map<number, number>();
  variances.forEach((v, i) => {
    together.set(first[i]!, (together.get(first[i]!) ?? 0) + v);
  });
  let loss = 0;
  for (const [i, v] of together) loss += (v * v) / inputs.all[i]!.dof;
  return {
    value,
    u: Math.sqrt(Math.max(0, variance)),
    dof: loss === 0 ? Number.POSITIVE_INFINITY : (variance * variance) / loss,
    rows: inputs.all.map((input, i) => ({
      input,
      sensitivity: partials[i] ?? 0,
      contribution: contribution[i]!,
      share: variance === 0 ? 0 : variances[i]! / variance,
    })),
  };
}

/** Standard uncertainty alone, for quantities of which nobody needs the budget. */
export function uOf({ partials }: Quantity, inputs: Inputs): number {
  const c = (input: Input) => (partials[input.index] ?? 0) * input.u;
  let variance = 0;
  for (const input of inputs.all) variance += c(input) ** 2;
  for (const { a, b, r } of inputs.correlations) variance += 2 * r * c(a) * c(b);
  return Math.sqrt(Math.max(0, variance));
}

/**
 * Standard uncertainty with the second-order terms of JCGM 100:2008, 5.1.2 note, added:
 * Σij [½(∂²f/∂xi∂xj)² + ∂f/∂xi · ∂³f/∂xi∂xj²] u²(xi) u²(xj). Second and third derivatives come from exact gradients a
 * standard uncertainty to either side. When it differs from the first-order u, the model is not straight enough.
 */
export function secondOrderU(model: Expression, inputs: Inputs): number {
  // only the uncertain inputs need partials, and of each a derivative per u
  const active = inputs.all.filter((input) => input.u > 0);
  const place = new Map(active.map((input, i) => [input.index, i]));
  const gradient = (shifted?: Input, by = 0) => {
    const of = inputs.all.map((input) => {
      const i = place.get(input.index);
      if (i === undefined) return quantities.of(input.value);
      const quantity = inputQuantity(input.value + (input === shifted ? by : 0), i, active.length);
      quantity.partials[i] = input.u;
      return quantity;
    });
    return model(quantities, (input) => of[input.index]!).partials;
  };
  const centre = gradient();
  let variance = propagate(model, inputs).u ** 2;
  for (const j of active) {
    const up = gradient(j, j.u);
    const down = gradient(j, -j.u);
    for (let i = 0; i < active.length; i++) {
      const slopes = [down[i] ?? 0, centre[i] ?? 0, up[i] ?? 0] as const;
      const second = (slopes[2] - slopes[0]) / 2;
      const third = slopes[2] - 2 * slopes[1] + slopes[0];
      variance += 0.5 * second * second + slopes[1] * third;
    }
  }
  return Math.sqrt(Math.max(0, variance));
}
